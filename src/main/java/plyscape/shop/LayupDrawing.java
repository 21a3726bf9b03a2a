package plyscape.shop;

import plyscape.layup.CutAllowance;
import plyscape.layup.Depths;
import plyscape.layup.Layup;
import plyscape.layup.PlyDepth;
import plyscape.text.Numbers;
import plyscape.text.Template;

/**
 * A layup's section as an SVG page: plies and glue lines to scale in depth, each target as a step
 * of the cut and the finished face after sanding, needed clearance as bars beside what is there.
 */
public final class LayupDrawing {

  private static final double WIDTH = 210;
  private static final double TOP = 24;

  /**
   * Room for a label beside a ply; plies that are thinner than this on paper get their labels
   * spread out.
   */
  private static final double LABEL = 5.2;

  private static final double STACK_LEFT = 14;
  private static final double STACK_RIGHT = 92;
  private static final double TEXT = 2.9;

  private LayupDrawing() {}

  /** The drawing; A4 wide, as long as it needs. */
  public static String svg(Layup layup, Depths depths, CutAllowance allowance) {
    double panel = depths.of(depths.plies()).bottomMm();
    double height = Math.max(depths.plies() * LABEL * 1.35, 90);
    double scale = height / panel;
    double page = TOP + height + 24;
    SvgPage svg = new SvgPage(WIDTH, page, layup.name());
    head(svg, layup.name(), scale, panel);
    svg.rectangle(STACK_LEFT, TOP, STACK_RIGHT - STACK_LEFT, height, "#3a3027", "none");
    double step = (STACK_RIGHT - STACK_LEFT - 6) / depths.plies();
    for (PlyDepth d : depths) {
      layer(svg, d, scale);
    }
    for (int i = 0; i < depths.plies(); i++) {
      step(svg, depths.of(i + 1), scale, STACK_LEFT + 3 + i * step, step, allowance.sandingMm());
    }
    labels(svg, depths, scale, height);
    svg.left(STACK_LEFT, TOP + height + 8, TEXT, clearance(layup, allowance));
    return svg.text();
  }

  private static void head(SvgPage svg, String name, double scale, double panel) {
    svg.bold(STACK_LEFT, 9, 4.6, SvgPage.fitted(name, WIDTH - 2 * STACK_LEFT, 4.6));
    svg.left(
        STACK_LEFT,
        14.5,
        TEXT,
        Template.fill(
            "Depths in mm below the top face, drawn %.1t times as deep as they are. Panel %.3f mm.",
            scale, panel));
    svg.left(
        STACK_LEFT,
        18.5,
        TEXT,
        "Steps: how deep each ply is cut; thin line: finished face after sanding; dark bands:"
            + " needed clearance at the edges.");
  }

  private static String clearance(Layup layup, CutAllowance allowance) {
    return Template.fill(
        "Clearance asked for: at least %.3t; flatness %.3t, Z error %.3t, sanding %.3t +-%.3t,"
            + " tolerances added by %s.",
        allowance.minimumMm(),
        layup.flatnessMm(),
        allowance.zErrorMm(),
        allowance.sandingMm(),
        allowance.sandingToleranceMm(),
        allowance.method().name().toLowerCase(java.util.Locale.ROOT));
  }

  private static void layer(SvgPage svg, PlyDepth d, double scale) {
    double y = TOP + d.topMm() * scale;
    double thick = (d.bottomMm() - d.topMm()) * scale;
    double width = STACK_RIGHT - STACK_LEFT;
    svg.rectangle(STACK_LEFT, y, width, thick, d.ply().colour(), "none");
    // Bars at the right end: what is needed at either edge; where they meet, the ply is too thin.
    double upper = Math.min(d.neededTopMm() * scale, thick);
    double lower = Math.min(d.neededBottomMm() * scale, thick);
    svg.rectangle(STACK_RIGHT, y, 1.6, upper, d.reliable() ? "#555555" : "#c00000", "none");
    svg.rectangle(
        STACK_RIGHT, y + thick - lower, 1.6, lower, d.reliable() ? "#555555" : "#c00000", "none");
  }

  private static void step(
      SvgPage svg, PlyDepth d, double scale, double x, double width, double sandingMm) {
    double cut = d.targetMm() * scale;
    if (cut > 0) {
      // A little wider than the step, so that no seam is seen between two.
      svg.rectangle(x, TOP, width + 0.1, cut, "#ffffff", "none");
    }
    double face = TOP + (d.targetMm() + sandingMm) * scale;
    svg.line(x, face, x + width, face, "#000000", 0.2);
  }

  private static void labels(SvgPage svg, Depths depths, double scale, double height) {
    svg.bold(STACK_RIGHT + 10, TOP - 1.5, TEXT, "ply");
    String[] heads = {"top", "bottom", "target", "needed", "there"};
    for (int c = 0; c < heads.length; c++) {
      svg.right(146 + c * 13.0, TOP - 1.5, TEXT, heads[c]);
    }
    double room = height / depths.plies();
    for (int i = 0; i < depths.plies(); i++) {
      PlyDepth d = depths.of(i + 1);
      double y = TOP + (i + 0.5) * room + TEXT * 0.35;
      svg.line(
          STACK_RIGHT + 1.6,
          TOP + d.midMm() * scale,
          STACK_RIGHT + 9,
          y - TEXT * 0.35,
          "#999999",
          0.15);
      svg.left(
          STACK_RIGHT + 10,
          y,
          TEXT,
          SvgPage.fitted(d.ply().number() + " " + d.ply().name(), 32, TEXT));
      double[] values = {d.topMm(), d.bottomMm(), d.targetMm(), d.neededMm(), d.availableMm()};
      for (int c = 0; c < values.length; c++) {
        svg.right(146 + c * 13.0, y, TEXT, Numbers.fixed(values[c], 3));
      }
      if (!d.reliable()) {
        svg.ink(200, y, TEXT, "thin", "#c00000");
      }
    }
  }
}
