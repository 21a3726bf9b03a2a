package plyscape.recheck;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import plyscape.gcode.HeadReader;
import plyscape.gcode.Program;
import plyscape.machine.Tool;
import plyscape.report.json.PlanFigures;
import plyscape.text.Template;

/**
 * Looks at what programs say rather than at what they cut: words outside the dialect, a head that
 * names another cutter, speed or feed than plan.json, speeds and feeds in the text that aren't
 * those of the cutter.
 */
final class TextCheck {

  /** Heads have three decimals. */
  private static final double ROUNDING = 0.0006;

  private final WrittenPlan plan;
  private final List<TextFault> found = new ArrayList<>();

  private TextCheck(WrittenPlan plan) {
    this.plan = plan;
  }

  /** What is wrong in the texts of a plan's programs, file by file. */
  static List<TextFault> of(WrittenPlan plan) {
    TextCheck check = new TextCheck(plan);
    for (WrittenPlan.WrittenProgram program : plan.programs()) {
      for (Program.Problem p : program.program().problems()) {
        check.found.add(new TextFault(program.file(), p.line(), p.column(), p.message()));
      }
      check
          .figures(program)
          .ifPresent(
              tool -> {
                check.head(program, tool);
                check.speeds(program, tool.cutting());
                check.feeds(program, tool.cutting());
              });
    }
    return List.copyOf(check.found);
  }

  /** What plan.json says of the program's tool, if it says how it is run. */
  private Optional<PlanFigures.ToolFigures> figures(WrittenPlan.WrittenProgram program) {
    return plan.plan().tools().stream()
        .filter(t -> t.cutting() != null && t.name().equals(program.tool().name()))
        .findFirst();
  }

  private void head(WrittenPlan.WrittenProgram program, PlanFigures.ToolFigures planned) {
    Tool head = HeadReader.read(program.text()).tool().orElse(null);
    if (head == null) {
      return;
    }
    PlanFigures.RunFigures run = planned.cutting();
    if (!head.shape().name().equalsIgnoreCase(planned.shape())) {
      found.add(
          new TextFault(
              program.file(),
              1,
              0,
              "the head says "
                  + head.shape().name().toLowerCase(Locale.ROOT)
                  + ", plan.json "
                  + planned.shape()));
    }
    differs(program, "diameter", head.diameterMm(), planned.diameterMm());
    differs(program, "feed", head.feedMmPerMin(), run.feed());
    differs(program, "plunge", head.plungeMmPerMin(), run.plunge());
    differs(program, "stepdown", head.stepdownMm(), run.stepdownMm());
  }

  private void differs(
      WrittenPlan.WrittenProgram program, String what, double said, double planned) {
    if (Math.abs(said - planned) > ROUNDING) {
      found.add(
          new TextFault(
              program.file(),
              1,
              0,
              Template.fill("the head says %s %.3t, plan.json %.3t", what, said, planned)));
    }
  }

  private void speeds(WrittenPlan.WrittenProgram program, PlanFigures.RunFigures run) {
    for (Program.Speed speed : program.program().speeds()) {
      if (Math.abs(speed.rpm() - run.rpm()) > ROUNDING) {
        found.add(
            new TextFault(
                program.file(),
                speed.line(),
                0,
                Template.fill("S%.3t, the cutter's speed is %.3t", speed.rpm(), run.rpm())));
        return;
      }
    }
  }

  private void feeds(WrittenPlan.WrittenProgram program, PlanFigures.RunFigures run) {
    double most = Math.max(run.plunge(), Math.max(run.feed(), run.thinFeed()));
    for (Program.Block block : program.program().blocks()) {
      if (block.move().feedMmPerMin() > most + ROUNDING) {
        found.add(
            new TextFault(
                program.file(),
                block.line(),
                0,
                Template.fill(
                    "F%.3t, the cutter's greatest feed is %.3t",
                    block.move().feedMmPerMin(), most)));
        return;
      }
    }
  }
}
