package plyscape.report;

import java.util.Base64;
import plyscape.files.PlanFiles;
import plyscape.plan.Landscape;
import plyscape.plan.PanelFigures;
import plyscape.plan.PanelSummary;
import plyscape.plan.PlanTime;
import plyscape.plan.Tile;
import plyscape.plan.TiledPlan;
import plyscape.plan.Version;
import plyscape.render.PreviewPicture;
import plyscape.text.Durations;
import plyscape.text.Markup;
import plyscape.text.Template;

/**
 * {@code index.html} of a landscape over several panels: every panel's picture, where it hangs,
 * with its time and the way to its report and set-up sheet. Links only into its own folder.
 */
public final class IndexPage {

  private static final int LONGEST_PX = 420;

  private IndexPage() {}

  /** A panel's picture on the page, as a PNG file. */
  public static byte[] picture(Landscape panel) {
    return PreviewPicture.panelPng(panel, LONGEST_PX);
  }

  /** The page's text. */
  public static String text(TiledPlan plan) {
    Html page = new Html();
    int columns = plan.panels().columns();
    int rows = plan.panels().rows();
    head(page, plan);
    page.raw("<div class=\"panels\" style=\"grid-template-columns:repeat(" + columns)
        .raw(",minmax(0,1fr))\">\n");
    for (int row = rows; row >= 1; row--) {
      for (int column = 1; column <= columns; column++) {
        for (Tile<PanelSummary> tile : plan.tiles()) {
          if (tile.column() == column && tile.row() == row) {
            panel(page, tile);
          }
        }
      }
    }
    page.raw("</div>\n<p class=\"hint\">Seen from the front: ")
        .text(PlanFiles.tile(1, 1) + " is the lower left panel.")
        .raw("</p>\n</main>\n</body>\n</html>\n");
    return page.toString();
  }

  private static void head(Html page, TiledPlan plan) {
    String title = plan.job().title();
    page.raw("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
        .raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
        .raw("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none';")
        .raw(" img-src data:; style-src 'unsafe-inline'\">\n<title>")
        .text(title)
        .raw("</title>\n<style>\n" + Resources.text("report.css") + Resources.text("index.css"))
        .raw("</style>\n</head>\n<body>\n<main>\n<h1>")
        .text(title)
        .raw("</h1>\n<p class=\"sub\">")
        .text(
            Template.fill(
                "%s panels of %.1t x %.1t mm, %s across and %s up, %s of cutting in all. plyscape"
                    + " %s",
                plan.tiles().size(),
                plan.panels().widthMm(),
                plan.panels().heightMm(),
                plan.panels().columns(),
                plan.panels().rows(),
                Durations.text(plan.time().totalS()),
                Version.TEXT))
        .raw("</p>\n");
  }

  private static void panel(Html page, Tile<PanelSummary> tile) {
    PanelFigures figures = tile.plan().figures();
    PlanTime time = figures.time();
    int programs = figures.cutters().size();
    String report = Markup.escape(tile.name() + "/" + PlanFiles.REPORT);
    page.raw("<figure id=\"" + tile.name() + "\"><a href=\"" + report + "\"><img alt=\"")
        .text("The panel " + tile.name() + " from above")
        .raw("\" src=\"data:image/png;base64,")
        .raw(Base64.getEncoder().encodeToString(tile.plan().picture()))
        .raw("\"></a>\n<figcaption><strong>" + tile.name() + "</strong> ")
        .text(
            Durations.text(time.totalS())
                + ", "
                + programs
                + (programs == 1 ? " program" : " programs"))
        .raw("<br><a href=\"" + report + "\">report</a> <a href=\"")
        .raw(Markup.escape(tile.name() + "/" + PlanFiles.SETUP) + "\">set-up sheet</a>")
        .raw("</figcaption></figure>\n");
  }
}
