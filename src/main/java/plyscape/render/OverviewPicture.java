package plyscape.render;

import plyscape.files.PlanFiles;
import plyscape.job.Job;
import plyscape.lettering.StrokeAlphabet;
import plyscape.plan.Landscape;

/**
 * The top view of a landscape over several panels, with the seams between them and each panel's
 * name.
 */
public final class OverviewPicture {

  private static final double SEAM_PX = 2;
  private static final double NAME_PX = 11;

  private OverviewPicture() {}

  /** A PNG file of all panels together. */
  public static byte[] png(Landscape whole, Job.PanelSpec panels) {
    return PreviewPicture.png(whole, (canvas, pxPerMm) -> seams(canvas, pxPerMm, panels));
  }

  private static void seams(Canvas canvas, double pxPerMm, Job.PanelSpec panels) {
    double width = panels.widthMm() * pxPerMm;
    double height = panels.heightMm() * pxPerMm;
    for (int column = 0; column < panels.columns(); column++) {
      for (int row = 0; row < panels.rows(); row++) {
        double left = column * width;
        double bottom = canvas.height() - row * height;
        if (column > 0) {
          canvas.line(left, bottom - height, left, bottom, SEAM_PX, Colours.INK);
        }
        if (row > 0) {
          canvas.line(left, bottom, left + width, bottom, SEAM_PX, Colours.INK);
        }
      }
    }
    for (int column = 1; column <= panels.columns(); column++) {
      for (int row = 1; row <= panels.rows(); row++) {
        double top = canvas.height() - row * height;
        name(canvas, (column - 1) * width, top, PlanFiles.tile(column, row));
      }
    }
  }

  private static void name(Canvas canvas, double left, double top, String name) {
    double width = StrokeAlphabet.width(name) * NAME_PX / StrokeAlphabet.CAP_UNITS;
    canvas.fill((int) left + 6, (int) top + 6, (int) width + 14, (int) NAME_PX + 12, Colours.PAPER);
    canvas.text(left + 13, top + 12 + NAME_PX, NAME_PX, Colours.INK, name);
  }
}
