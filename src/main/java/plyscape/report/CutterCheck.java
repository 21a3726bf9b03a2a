package plyscape.report;

import java.util.ArrayList;
import java.util.List;
import plyscape.job.Job;
import plyscape.machine.Machine;
import plyscape.machine.Tool;
import plyscape.plan.PanelPlan;
import plyscape.plan.ToolProgram;
import plyscape.text.Template;

/**
 * Each cutter's chip load (feed / (rpm x flutes)), stepdown and flute length, and the machine's
 * travel. The ranges for carbide in wood are common practice, not from a standard: 0.03 to 0.08 mm
 * a tooth up to 3 mm, 0.08 to 0.20 at 6 mm, 0.2 to 0.4 at 12 mm, straight lines between; stepdown
 * at most one diameter.
 */
final class CutterCheck {

  private static final double[] DIAMETERS = {3, 6, 12};
  private static final double[] LEAST = {0.03, 0.08, 0.2};
  private static final double[] MOST = {0.08, 0.2, 0.4};

  private CutterCheck() {}

  static List<Finding> of(PanelPlan plan) {
    List<Finding> out = new ArrayList<>();
    for (Tool tool : plan.job().tools()) {
      double deepest = deepestMm(plan, tool);
      if (deepest == 0) {
        out.add(
            new Finding(
                true, tool.name() + " is left in the drawer: changing to it wouldn't pay."));
        continue;
      }
      out.addAll(of(tool, deepest));
    }
    out.add(travel(plan.job()));
    return List.copyOf(out);
  }

  private static List<Finding> of(Tool tool, double deepest) {
    List<Finding> out = new ArrayList<>();
    out.add(chipLoad(tool));
    if (!tool.spiralNote().isEmpty()) {
      out.add(new Finding(true, tool.name() + " is " + tool.spiralNote() + "."));
    }
    if (tool.stepdownMm() > tool.diameterMm()) {
      out.add(
          new Finding(
              false,
              Template.fill(
                  "%s takes %.3t mm at once, more than its diameter.",
                  tool.name(), tool.stepdownMm())));
    }
    out.add(
        new Finding(
            tool.fluteLengthMm() >= deepest,
            Template.fill(
                "%s: flutes of %.2t mm, its deepest cut %.2f mm.",
                tool.name(), tool.fluteLengthMm(), deepest)));
    return out;
  }

  private static Finding travel(Job job) {
    Machine machine = job.machine();
    return new Finding(
        machine.travelXMm() >= job.panel().widthMm()
            && machine.travelYMm() >= job.panel().heightMm(),
        Template.fill(
            "Travel %.1t x %.1t mm for a panel of %.1t x %.1t mm.",
            machine.travelXMm(),
            machine.travelYMm(),
            job.panel().widthMm(),
            job.panel().heightMm()));
  }

  /** Of this cutter: a short one may do its part. 0 when it isn't used. */
  private static double deepestMm(PanelPlan plan, Tool tool) {
    return plan.programs().stream()
        .filter(program -> program.tool().equals(tool))
        .flatMap(program -> program.passes().stream())
        .mapToDouble(ToolProgram.PassSummary::depthMm)
        .max()
        .orElse(0);
  }

  private static Finding chipLoad(Tool tool) {
    double load = tool.feedMmPerMin() / (tool.rpm() * tool.flutes());
    double least = between(LEAST, tool.diameterMm());
    double most = between(MOST, tool.diameterMm());
    String range = Template.fill("%.3f mm a tooth (usual %.2f to %.2f)", load, least, most);
    if (load < least * 0.5) {
      return new Finding(
          false,
          tool.name()
              + " takes "
              + range
              + ": it may rub and burn; more feed or fewer turns help.");
    }
    return load > most
        ? new Finding(
            false,
            tool.name() + " takes " + range + ": it may break; less feed or more turns help.")
        : new Finding(true, tool.name() + " takes " + range + ".");
  }

  private static double between(double[] values, double diameter) {
    if (diameter <= DIAMETERS[0]) {
      return values[0];
    }
    for (int i = 1; i < DIAMETERS.length; i++) {
      if (diameter <= DIAMETERS[i]) {
        double t = (diameter - DIAMETERS[i - 1]) / (DIAMETERS[i] - DIAMETERS[i - 1]);
        return values[i - 1] + t * (values[i] - values[i - 1]);
      }
    }
    return values[values.length - 1];
  }
}
