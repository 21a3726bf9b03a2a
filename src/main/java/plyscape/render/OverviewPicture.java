package plyscape.render;

import plyscape.job.Job;
import plyscape.plan.Plan;

/**
 * The top view of a landscape over several panels, with the seams between them and each panel's
 * name.
 */
public final class OverviewPicture {

  private static final double SEAM_PX = 2;
  private static final double NAME_PX = 11;

  private OverviewPicture() {}

  /** A PNG file of a plan with tiles. */
  public static byte[] png(Plan whole) {
    return PreviewPicture.png(whole, (canvas, pxPerMm) -> seams(canvas, pxPerMm, whole));
  }

  private static void seams(Canvas canvas, double pxPerMm, Plan whole) {
    for (Plan.Tile tile : whole.tiles()) {
      Job.PanelSpec panel = tile.plan().job().panel();
      double left = (tile.column() - 1) * panel.widthMm() * pxPerMm;
      double bottom = canvas.height() - (tile.row() - 1) * panel.heightMm() * pxPerMm;
      double top = bottom - panel.heightMm() * pxPerMm;
      if (tile.column() > 1) {
        canvas.line(left, top, left, bottom, SEAM_PX, Colours.INK);
      }
      if (tile.row() > 1) {
        canvas.line(left, bottom, left + panel.widthMm() * pxPerMm, bottom, SEAM_PX, Colours.INK);
      }
    }
    for (Plan.Tile tile : whole.tiles()) {
      Job.PanelSpec panel = tile.plan().job().panel();
      double left = (tile.column() - 1) * panel.widthMm() * pxPerMm;
      double top = canvas.height() - tile.row() * panel.heightMm() * pxPerMm;
      double width = StrokeFont.width(tile.name()) * NAME_PX / StrokeFont.CAP_UNITS;
      canvas.fill(
          (int) left + 6, (int) top + 6, (int) width + 14, (int) NAME_PX + 12, Colours.PAPER);
      canvas.text(left + 13, top + 12 + NAME_PX, NAME_PX, Colours.INK, tile.name());
    }
  }
}
