package plyscape.report;

import plyscape.bend.TopMap;
import plyscape.plan.Landscape;
import plyscape.render.TopContours;
import plyscape.text.Numbers;

/** How the panel lies: its top face in contours. Nothing for a flat panel. */
final class TopPart {

  private TopPart() {}

  static void write(Html page, Landscape plan) {
    if (plan.shape().topMap().isEmpty()) {
      return;
    }
    TopMap map = plan.shape().topMap().orElseThrow();
    page.raw("<section id=\"top-face\">\n<h2>The top face as it lies</h2>\n<p>")
        .text(TopContours.words(plan))
        .text(
            " Brown lies at or over Z0 of a flat panel, blue under it. Programs follow it: every"
                + " depth counts from the face at its place.")
        .raw("</p>\n")
        .raw(TopContours.svg(plan))
        .raw("<p class=\"hint\">");
    if (map.leftOutRmsMm().isPresent()) {
      page.text(
          "Each reading left out and told by its neighbours is off by "
              + Numbers.fixed(map.leftOutRmsMm().getAsDouble(), 3)
              + " mm (root mean square); with the readings' own +-"
              + Numbers.trimmed(map.toleranceMm(), 3)
              + " mm that takes the place of flatness in all clearances. Where that is much, probe"
              + " more places.");
    } else {
      page.text("No reading lies among others that could test it: probe more places.");
    }
    page.raw("</p>\n</section>\n");
  }
}
