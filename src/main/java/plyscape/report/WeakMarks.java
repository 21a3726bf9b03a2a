package plyscape.report;

import java.util.List;
import plyscape.plan.Landscape;
import plyscape.standing.WeakPart;
import plyscape.text.Numbers;
import plyscape.text.Template;

/** Marks on the page's panel where standing wood is likely to break, and their list. */
final class WeakMarks {

  /** More rows than this say nothing new; plan.json has them all. */
  private static final int LISTED = 20;

  private WeakMarks() {}

  /** Circles about weak parts, for the drawing over the picture: mm, Y down. */
  static void marks(Html page, Landscape plan) {
    double height = plan.job().panel().heightMm();
    double least = Math.max(height, plan.job().panel().widthMm()) * 0.006;
    page.raw("<g id=\"weak-marks\" fill=\"none\" stroke=\"#d00000\" stroke-width=\"0.5\">\n");
    for (WeakPart part : plan.standing().weak()) {
      page.raw("<circle cx=\"" + Numbers.trimmed(part.at().x, 2))
          .raw("\" cy=\"" + Numbers.trimmed(height - part.at().y, 2))
          .raw("\" r=\"" + Numbers.trimmed(Math.max(least, part.widthMm()), 2) + "\"><title>")
          .text(words(plan, part))
          .raw("</title></circle>\n");
    }
    page.raw("</g>\n");
  }

  /** The switch for the marks; nothing where there are none. */
  static void toggle(Html page, Landscape plan) {
    int count = plan.standing().weak().size();
    if (count > 0) {
      page.raw("<label><input type=\"checkbox\" id=\"weak\" checked> weak standing wood (")
          .raw(count + ")</label>");
    }
  }

  /** The slenderest of them as a table. */
  static void list(Html page, Landscape plan) {
    List<WeakPart> weak = plan.standing().weak();
    if (weak.isEmpty() && plan.standing().curedMm2() == 0) {
      return;
    }
    page.raw("<section id=\"standing\">\n<h2>What stands</h2>\n<p>");
    page.text(
        weak.size()
            + (weak.size() == 1 ? " fin or post" : " fins and posts")
            + " may break in the cut or under sandpaper, "
            + Numbers.fixed(plan.standing().areaMm2(), 1)
            + " mm2 in all."
            + (plan.standing().curedMm2() > 0
                ? " " + Numbers.fixed(plan.standing().curedMm2(), 1) + " mm2 were given up for it."
                : ""));
    page.raw("</p>\n");
    if (!weak.isEmpty()) {
      page.raw("<table><tr><th>ply</th><th>X</th><th>Y</th><th>width mm</th><th>height mm</th>")
          .raw("</tr>\n");
      weak.stream().limit(LISTED).forEach(part -> row(page, plan, part));
      page.raw("</table>\n");
    }
    page.raw("</section>\n");
  }

  private static void row(Html page, Landscape plan, WeakPart part) {
    page.raw("<tr><td>")
        .ply(plan.depths().of(part.ply()).ply())
        .raw("</td><td>" + Numbers.fixed(part.at().x, 1))
        .raw("</td><td>" + Numbers.fixed(part.at().y, 1))
        .raw("</td><td>" + Numbers.fixed(part.widthMm(), 2))
        .raw("</td><td>" + Numbers.fixed(part.heightMm(), 2) + "</td></tr>\n");
  }

  private static String words(Landscape plan, WeakPart part) {
    return Template.fill(
        "%s: %.2f mm wide, %.2f mm tall",
        plan.depths().of(part.ply()).ply().name(), part.widthMm(), part.heightMm());
  }
}
