package plyscape.planner.cut;

import java.util.ArrayList;
import java.util.List;
import plyscape.bend.Bend;
import plyscape.bend.DepthPlane;
import plyscape.fault.Warnings;
import plyscape.job.OutlineSpec;
import plyscape.job.PinsSpec;
import plyscape.layup.PanelCorners;
import plyscape.layup.PanelPoint;
import plyscape.plan.Landscape;
import plyscape.plan.LyingPanel;
import plyscape.simulate.BentPanel;
import plyscape.text.Template;
import plyscape.toolpath.task.Pass;

/**
 * How deep pins and outline go at each place of a panel as it lies: what ends below the panel as
 * far below its bottom there, tabs as far above it, holes that end in the panel as far below its
 * top face. Immutable.
 */
final class CutoutDepths {

  private final Landscape panel;

  CutoutDepths(Landscape panel) {
    this.panel = panel;
  }

  /** How moves of pins or outline are bent; the panel must not be flat. */
  Bend bend(Pass.Kind kind) {
    List<DepthPlane> planes = new ArrayList<>();
    PinsSpec pins = panel.job().additions().pins();
    if (kind == Pass.Kind.OUTLINE) {
      double tab = panel.job().additions().outline().tabs().heightMm();
      if (tab < panel.thicknessMm()) {
        planes.add(bottom().lower(-tab));
      }
      planes.add(bottom());
    } else if (through(pins)) {
      planes.add(bottom());
    }
    return Bend.by(panel.shape().bend().top(), planes);
  }

  /** The most by which wood is stretched under outline and pins. */
  double stretch() {
    double width = panel.job().panel().widthMm();
    double height = panel.job().panel().heightMm();
    double most = 1;
    if (panel.job().additions().outline() != null) {
      most = bend(Pass.Kind.OUTLINE).stretch(width, height);
    }
    if (panel.job().additions().pins() != null) {
      most = Math.max(most, bend(Pass.Kind.PINS).stretch(width, height));
    }
    return most;
  }

  /** What the simulation holds the pins' holes against; null on a flat panel. */
  BentPanel.Level pins() {
    PinsSpec pins = panel.job().additions().pins();
    if (panel.shape().flat()) {
      return null;
    }
    return through(pins)
        ? LyingPanel.below(panel.depths(), pins.depthMm() - panel.thicknessMm())
        : new BentPanel.Level(pins.depthMm(), pins.depthMm(), 0, 0);
  }

  /** What the simulation holds the outline against; null on a flat panel. */
  BentPanel.Level outline() {
    OutlineSpec outline = panel.job().additions().outline();
    return panel.shape().flat() ? null : LyingPanel.below(panel.depths(), outline.throughMm());
  }

  /** Thickness of the panel where it is least or greatest, mm. */
  double thicknessMm(boolean greatest) {
    double out = panel.thicknessMm();
    for (PanelPoint corner : corners()) {
      double here = panel.depths().bottom(corner).bottomMm();
      out = greatest ? Math.max(out, here) : Math.min(out, here);
    }
    return out;
  }

  /**
   * Warns, with code {@code outline-shallow}, where the panel may be thicker than the outline is
   * deep: only readings by place tell that it differs from corner to corner.
   */
  void warnShallow(Warnings warnings) {
    double through = panel.job().additions().outline().throughMm();
    if (!panel.depths().byPlace()) {
      return;
    }
    double most = 0;
    PanelPoint worst = null;
    for (PanelPoint corner : corners()) {
      double tolerance =
          Math.hypot(
              panel.depths().bottom(corner).bottomToleranceMm(),
              panel.job().allowance().zErrorMm());
      if (tolerance > most) {
        most = tolerance;
        worst = corner;
      }
    }
    if (most > through) {
      warnings.add(
          "outline-shallow",
          Template.fill(
              "the panel's bottom is known to +-%.2f mm here, the outline goes %.2f mm below"
                  + " it: read the bottom there, or set outline.through",
              most, through),
          Template.fill("X%.0f Y%.0f", worst.xMm(), worst.yMm()));
    }
  }

  private List<PanelPoint> corners() {
    return PanelCorners.places(
        panel.depths(), panel.job().panel().widthMm(), panel.job().panel().heightMm());
  }

  private boolean through(PinsSpec pins) {
    return pins.depthMm() >= panel.thicknessMm();
  }

  private DepthPlane bottom() {
    return DepthPlane.through(
        panel.thicknessMm(),
        (x, y) -> panel.depths().thicknessMm(new PanelPoint(x, y)),
        panel.depths().bows(),
        0);
  }
}
