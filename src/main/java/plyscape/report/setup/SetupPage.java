package plyscape.report.setup;

import java.util.Comparator;
import java.util.List;
import plyscape.bend.TopReading;
import plyscape.layup.LeastFloor;
import plyscape.layup.PanelCorners;
import plyscape.layup.PlyDepth;
import plyscape.machine.Machine;
import plyscape.plan.MotionSpan;
import plyscape.plan.PanelPlan;
import plyscape.plan.ToolProgram;
import plyscape.plan.Version;
import plyscape.report.Cautions;
import plyscape.report.Html;
import plyscape.report.Resources;
import plyscape.text.Durations;
import plyscape.text.Markup;
import plyscape.text.Numbers;
import plyscape.text.Template;

/**
 * {@code setup.html}: what hangs at the machine while it runs. One sheet of A4 or US Letter in
 * black: the panel as it lies with zero, clamps and travel, the programs in cutting order with a
 * box to tick, the cautions (src/contract.md, section 14). Needs no script and loads nothing.
 */
public final class SetupPage {

  /** With more programs the drawing is smaller, so that one sheet holds all. */
  private static final int MANY = 3;

  private SetupPage() {}

  /** The page's text. */
  public static String text(PanelPlan plan) {
    Html page = new Html();
    String title = plan.job().title();
    page.raw("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
        .raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
        .raw("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none';")
        .raw(" style-src 'unsafe-inline'\">\n<title>Set-up: " + Markup.escape(title))
        .raw("</title>\n<style>\n" + Resources.text("setup.css") + "</style>\n</head>\n<body>\n")
        .raw("<main>\n<h1>Set-up: ")
        .text(title)
        .raw("</h1>\n<p class=\"sub\">")
        .text(plan.job().layup().name() + ". plyscape " + Version.TEXT)
        .raw("</p>\n<div class=\"top")
        .raw(plan.programs().size() > MANY ? " many" : "")
        .raw("\">\n<div id=\"drawing\">\n")
        .raw(SetupDrawing.svg(plan))
        .raw("</div>\n");
    facts(page, plan);
    page.raw("</div>\n");
    ticks(page, plan);
    SetupPrograms.write(page, plan);
    page.raw("<h2>Cautions</h2>\n<ul class=\"cautions\" id=\"cautions\">\n");
    for (String caution : Cautions.ALL) {
      page.raw("<li>").text(caution).raw("</li>\n");
    }
    return page.raw("</ul>\n</main>\n</body>\n</html>\n").toString();
  }

  private static void facts(Html page, PanelPlan plan) {
    Machine machine = plan.job().machine();
    Clearways clearways = Clearways.of(plan);
    page.raw("<dl id=\"facts\">\n");
    fact(page, "Stock", stock(plan));
    fact(page, "Up", up(plan));
    fact(page, "Zero", zero(plan, clearways));
    fact(page, "Way of the cutter", way(clearways, machine));
    fact(page, "Travel", travel(clearways.way(), machine));
    fact(page, "Clamps", clearways.clamps());
    fact(page, "Below", below(plan));
    fact(page, "Time", time(plan));
    page.raw("</dl>\n");
  }

  private static String way(Clearways clearways, Machine machine) {
    MotionSpan way = clearways.way();
    return Template.fill(
        "X %.1f to %.1f, Y %.1f to %.1f, Z %.2f to %.2f mm, from zero; safe height %.2t mm over the"
            + " face",
        clearways.programX(way.minX()),
        clearways.programX(way.maxX()),
        clearways.programY(way.minY()),
        clearways.programY(way.maxY()),
        clearways.programZ(way.maxDepth()),
        clearways.programZ(way.minDepth()),
        machine.safeHeightMm());
  }

  private static String travel(MotionSpan way, Machine machine) {
    return Template.fill(
        "needs X %.1f of %.1t, Y %.1f of %.1t, Z %.1f of %.1t mm",
        way.maxX() - way.minX(),
        machine.travelXMm(),
        way.maxY() - way.minY(),
        machine.travelYMm(),
        way.maxDepth() - way.minDepth(),
        machine.travelZMm());
  }

  private static String stock(PanelPlan plan) {
    double width = plan.job().panel().widthMm();
    double height = plan.job().panel().heightMm();
    double[] thick =
        PanelCorners.places(plan.depths(), width, height).stream()
            .mapToDouble(at -> plan.depths().thicknessMm(at))
            .sorted()
            .toArray();
    String least = Numbers.fixed(thick[0], 2);
    String most = Numbers.fixed(thick[thick.length - 1], 2);
    return Template.fill(
        "%.2t x %.2t mm, %s mm thick, %s plies",
        width,
        height,
        least.equals(most) ? least : least + " to " + most,
        plan.job().layup().plies().size());
  }

  private static String up(PanelPlan plan) {
    PlyDepth top = plan.depths().of(1);
    return Template.fill(
        "ply 1, %s; its grain %.1t\u00b0 from X", top.ply().name(), top.ply().grainDeg());
  }

  private static String zero(PanelPlan plan, Clearways clearways) {
    Machine machine = plan.job().machine();
    String corner =
        machine.zero() == Machine.Zero.CENTRE
            ? "the panel's centre"
            : "the panel's "
                + machine.zero().name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ')
                + " corner";
    return "X0 Y0 at "
        + corner
        + ", Z0 on "
        + (machine.zeroZ() == Machine.ZeroZ.TOP
            ? "its top face, where nothing was sanded" + touching(plan, clearways)
            : "the table under it");
  }

  /** On a face that isn't flat Z0 is where it was when it was probed: at which place to touch. */
  private static String touching(PanelPlan plan, Clearways clearways) {
    double face = plan.landscape().shape().faceMm();
    return plan.landscape()
        .shape()
        .topMap()
        .map(
            map -> {
              TopReading at =
                  map.readings().stream()
                      .min(Comparator.comparingDouble(r -> Math.abs(r.z() - face)))
                      .orElseThrow();
              return Template.fill(
                  ", as when it was probed: at X%.2t Y%.2t of the programs it stands at Z%.2f",
                  clearways.programX(at.x()), clearways.programY(at.y()), at.z());
            })
        .orElse("");
  }

  private static String below(PanelPlan plan) {
    double deepest =
        plan.programs().stream()
            .flatMap(program -> program.passes().stream())
            .mapToDouble(ToolProgram.PassSummary::depthMm)
            .max()
            .orElse(0);
    double left = plan.landscape().thicknessMm() - deepest;
    LeastFloor least = plan.landscape().leastFloor();
    if (left > 0 && plan.depths().byPlace()) {
      return Numbers.fixed(least.floorMm(), 2)
          + " mm of wood stay under the deepest cut, at "
          + least.at();
    }
    return left > 0
        ? Numbers.fixed(left, 2) + " mm of wood stay under the deepest cut"
        : "the deepest cut goes "
            + Numbers.fixed(-left, 2)
            + " mm into what lies under the panel: use a board that may be cut";
  }

  private static String time(PanelPlan plan) {
    double around =
        plan.programs().size()
            * (plan.job().machine().toolChangeS() + plan.job().machine().spinUpS());
    return Durations.text(plan.time().totalS())
        + " of running, "
        + Durations.text(plan.time().totalS() + around)
        + " with the cutters put in";
  }

  private static void fact(Html page, String name, String value) {
    page.raw("<dt>").text(name).raw("</dt><dd>").text(value).raw("</dd>\n");
  }

  private static void ticks(Html page, PanelPlan plan) {
    boolean probed = plan.landscape().shape().topMap().isPresent();
    List<String> before =
        List.of(
            probed
                ? "Panel clamped just as when it was probed, and not moved since"
                : "Panel as drawn, flat on the table over its whole face, and held",
            "Clamps outside the hatched field, lower than the safe height",
            "X0 Y0 set; all four corners of the panel reached by hand",
            "Each program run in the air, well above the panel",
            "Eyes, ears, mask; dust extraction on; stop button known",
            plan.programs().size() > 1
                ? "With every new cutter: Z0 set again"
                    + (probed ? " at the same place" : "")
                    + ", X0 Y0 left alone"
                : "Z0 set with this cutter");
    page.raw("<h2>Before the first cut</h2>\n<ul class=\"ticks\" id=\"ticks\">\n");
    for (String line : before) {
      page.raw("<li><span class=\"box\"></span>").text(line).raw("</li>\n");
    }
    page.raw("</ul>\n");
  }
}
