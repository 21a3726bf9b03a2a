package plyscape.report;

import java.util.List;
import plyscape.plan.Landscape;
import plyscape.plan.PanelPlan;
import plyscape.plan.Version;
import plyscape.render.PreviewPicture;
import plyscape.text.Markup;
import plyscape.text.Template;

/**
 * {@code report.html}: one self-contained page for a person. Warnings come first, then a summary,
 * the panel to point at, a section along a line that the reader drags, the panel as a solid that
 * turns, and the tables. Loads nothing from anywhere.
 */
public final class HtmlReport {

  /** The page's scripts in their order; the first gives the others the data. */
  static final List<String> SCRIPTS =
      List.of(
          "page.js",
          "overlay.js",
          "readout.js",
          "section.js",
          "earcut.js",
          "solid-mesh.js",
          "solid-light.js",
          "solid-gl.js",
          "solid-flat.js",
          "solid.js");

  private HtmlReport() {}

  /** The picture of the panel that the page shows, PNG: before any path is planned. */
  public static byte[] picture(Landscape plan) {
    return PreviewPicture.panelPng(plan, PanelPart.LONGEST_PX);
  }

  /**
   * The page's text with a picture drawn before.
   *
   * @param picture as {@link #picture} gives it for the same regions
   */
  public static String text(PanelPlan plan, byte[] picture) {
    Html page = new Html();
    head(page, plan);
    SummaryPart.write(page, plan);
    PanelPart.write(page, plan.landscape(), picture);
    TopPart.write(page, plan.landscape());
    PlyPart.write(page, plan.landscape());
    ZonePart.write(page, plan.landscape());
    WeakMarks.list(page, plan.landscape());
    PassPart.write(page, plan);
    CheckPart.write(page, plan);
    foot(page, plan);
    return page.toString();
  }

  private static void head(Html page, PanelPlan plan) {
    String title = Markup.escape(plan.job().title());
    page.raw("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
        .raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
        // Whatever a name in the input might try, the page may load and send nothing.
        .raw(
            "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; img-src"
                + " data:; style-src 'unsafe-inline';")
        .raw(" script-src 'unsafe-inline'\">\n")
        .raw(
            Template.fill(
                "<title>%s - plyscape</title>\n<style>\n%s%s</style>\n</head>\n<body>\n",
                title, Resources.text("report.css"), Resources.text("print.css")))
        .raw("<header>\n<h1>" + title + "</h1>\n<p class=\"sub\">")
        .text(
            Template.fill(
                "%s on %s, plyscape %s",
                plan.job().name(), plan.landscape().terrain().file(), Version.TEXT))
        .raw(
            "</p>\n"
                + "<nav><a href=\"#panel\">Panel</a><a href=\"#section\">Section</a><a"
                + " href=\"#view3d\">Solid</a>")
        .raw(
            "<a href=\"#plies\">Plies</a><a href=\"#zones\">Zones</a><a"
                + " href=\"#passes\">Passes</a>")
        .raw("<a href=\"#checks\">Checks</a><a href=\"#cautions\">Cautions</a></nav>\n")
        .raw("</header>\n<main>\n");
  }

  private static void foot(Html page, PanelPlan plan) {
    page.raw("</main>\n<footer><p>plyscape ")
        .text(Version.TEXT)
        .raw(". Figures are those of plan.json, rounded.</p></footer>\n")
        .raw(
            "<script type=\"application/json\" id=\"plan-data\">"
                + PageData.json(plan.landscape())
                + "</script>\n");
    for (String script : SCRIPTS) {
      page.raw("<script>\n").raw(Resources.text(script)).raw("</script>\n");
    }
    page.raw("</body>\n</html>\n");
  }
}
