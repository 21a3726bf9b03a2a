package plyscape.terrain;

import plyscape.fault.JobFault;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.job.Job;
import plyscape.text.Template;

/**
 * Fits a ground box into the panel less its border, centred, aspect kept, on the 0.001 mm grid: as
 * large as it goes, or at a map scale.
 */
final class PanelFit {

  /**
   * Files carry three places of a millimetre, and the carved area must be the same in all of them.
   */
  private static final double PLACES = 1000;

  /** A margin wider than this, mm, that takes more than a share of the panel is worth a word. */
  private static final double WIDE_MM = 5;

  private static final double WIDE_SHARE = 0.25;

  private PanelFit() {}

  /**
   * The carved area, panel mm. Its aspect is the ground's to within the rounding of its edges.
   *
   * @param ground in CRS units
   * @param metresPerUnit length of such a unit
   * @param scale map scale's denominator, or null for as large as it goes
   */
  static Box carved(Box ground, double metresPerUnit, Job.PanelSpec panel, Double scale) {
    Box free = free(panel);
    double fit = Math.min(free.width() / ground.width(), free.height() / ground.height());
    double mmPerUnit = scale == null ? fit : 1000 * metresPerUnit / scale;
    // Half of the last place is lost in rounding anyway.
    if (mmPerUnit > fit * (1 + 1e-6)) {
      throw new JobFault(
          Template.fill(
              "at 1:%.0f the ground is %.1f x %.1f mm, but the panel has room for %.1f x %.1f mm",
              scale,
              ground.width() * mmPerUnit,
              ground.height() * mmPerUnit,
              free.width(),
              free.height()),
          Template.fill(
              "crop it, set terrain.centre, or take 1:%.0f",
              Math.ceil(1000 * metresPerUnit / fit)));
    }
    return centred(ground, panel, Math.min(mmPerUnit, fit));
  }

  /** Says what margin stays where the ground is of another shape than the panel. */
  static void hint(Box carved, Job.PanelSpec panel, Warnings warnings) {
    Box free = free(panel);
    double across = (free.width() - carved.width()) / 2;
    double along = (free.height() - carved.height()) / 2;
    if (Math.max(across, along) > WIDE_MM && 1 - carved.area() / free.area() > WIDE_SHARE) {
      boolean wide = along > across;
      warnings.add(
          "panel-margin",
          Template.fill(
              "the ground is %.2f times as wide as high, the panel's inner area %.2f times: %.1f mm"
                  + " stay uncarved %s it; crop the ground, or set panel.%s: %.0f",
              carved.width() / carved.height(),
              free.width() / free.height(),
              Math.max(across, along),
              wide ? "above and below" : "left and right of",
              wide ? "height" : "width",
              (wide ? carved.height() : carved.width()) + 2 * panel.borderMm()),
          "panel");
    }
  }

  /** What of the panel may be carved. */
  static Box free(Job.PanelSpec panel) {
    double width = panel.widthMm() - 2 * panel.borderMm();
    double height = panel.heightMm() - 2 * panel.borderMm();
    if (!(width > 0) || !(height > 0)) {
      throw new JobFault(
          "the border of " + panel.borderMm() + " mm leaves nothing of the panel",
          "make panel.border smaller");
    }
    return new Box(
        panel.borderMm(), panel.borderMm(), panel.borderMm() + width, panel.borderMm() + height);
  }

  private static Box centred(Box ground, Job.PanelSpec panel, double mmPerUnit) {
    double halfWidth = ground.width() * mmPerUnit / 2;
    double halfHeight = ground.height() * mmPerUnit / 2;
    double x = panel.widthMm() / 2;
    double y = panel.heightMm() / 2;
    double minX = round(x - halfWidth);
    double minY = round(y - halfHeight);
    double maxX = round(x + halfWidth);
    double maxY = round(y + halfHeight);
    if (!(maxX - minX >= 1) || !(maxY - minY >= 1)) {
      throw new JobFault(
          "the terrain is so narrow that it would be under 1 mm wide on the panel",
          "crop it to a shape more like the panel's");
    }
    return new Box(minX, minY, maxX, maxY);
  }

  private static double round(double mm) {
    return Math.rint(mm * PLACES) / PLACES;
  }
}
