package plyscape.terrain;

import plyscape.fault.JobFault;
import plyscape.grid.Box;
import plyscape.job.Job;

/** Fits a ground box into the panel less its border: as large as it goes, aspect kept, centred, on the 0.001 mm grid. */
final class PanelFit {

  /** Files carry three places of a millimetre, and the carved area must be the same in all of them. */
  private static final double PLACES = 1000;

  private PanelFit() {}

  /** The carved area, panel mm. Its aspect is the ground's to within the rounding of its edges. */
  static Box carved(Box ground, Job.PanelSpec panel) {
    Box free = free(panel);
    double scale = Math.min(free.width() / ground.width(), free.height() / ground.height());
    return centred(ground, panel, scale);
  }

  /** What of the panel may be carved. */
  static Box free(Job.PanelSpec panel) {
    double width = panel.widthMm() - 2 * panel.borderMm();
    double height = panel.heightMm() - 2 * panel.borderMm();
    if (!(width > 0) || !(height > 0)) {
      throw new JobFault(
          "the border of " + panel.borderMm() + " mm leaves nothing of the panel", "make panel.border smaller");
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
