package plyscape.report;

import java.util.Base64;
import plyscape.layup.PlyDepth;
import plyscape.plan.Plan;
import plyscape.render.PreviewPicture;
import plyscape.text.Markup;
import plyscape.text.Numbers;

/** {@code report.html}: one self-contained page for a person. */
public final class HtmlReport {

  private HtmlReport() {}

  /** The page. */
  public static String text(Plan plan) {
    StringBuilder out = new StringBuilder(1 << 16);
    out.append("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>")
        .append(Markup.escape(plan.job().layup().name()))
        .append("</title><style>body{font:16px/1.5 sans-serif;margin:2rem;max-width:75rem}img{max-width:100%}"
            + "td,th{padding:.2rem .6rem;text-align:left}</style></head><body>\n<h1>")
        .append(Markup.escape(plan.job().layup().name())).append("</h1>\n<ul id=\"warnings\">");
    plan.warnings().forEach(w -> out.append("<li>").append(Markup.escape(w.message())).append("</li>"));
    out.append("</ul>\n<img alt=\"The finished panel from above\" src=\"data:image/png;base64,")
        .append(Base64.getEncoder().encodeToString(PreviewPicture.png(plan)))
        .append("\">\n<table><tr><th>ply<th>name<th>cut to, mm<th>share</tr>\n");
    for (PlyDepth depth : plan.depths()) {
      var area = plan.tiling().exposed().get(depth.ply().number());
      out.append("<tr><td>").append(depth.ply().number()).append("<td>").append(Markup.escape(depth.ply().name()))
          .append("<td>").append(Numbers.fixed(depth.targetMm(), 3)).append("<td>")
          .append(Numbers.fixed(area == null ? 0 : 100 * area.getArea() / plan.tiling().carved().area(), 1))
          .append(" %</tr>\n");
    }
    return out.append("</table></body></html>\n").toString();
  }
}
