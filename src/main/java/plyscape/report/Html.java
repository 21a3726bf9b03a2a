package plyscape.report;

import plyscape.layup.Ply;
import plyscape.text.Contrast;
import plyscape.text.Markup;
import plyscape.text.Template;

/** A page that grows: raw markup of ours, and text from anywhere, which is escaped. */
public final class Html {

  private final StringBuilder out = new StringBuilder(1 << 18);

  /** Adds markup as it stands. */
  public Html raw(String markup) {
    out.append(markup);
    return this;
  }

  /** Adds text, escaped. */
  public Html text(String text) {
    out.append(Markup.escape(text));
    return this;
  }

  /** Opens a table: head cells; one that begins with {@code #} is set to the right. */
  Html table(String... heads) {
    raw("<div class=\"scroll\"><table>\n<thead><tr>");
    for (String head : heads) {
      boolean right = head.startsWith("#");
      raw(right ? "<th class=\"num\">" : "<th>")
          .text(right ? head.substring(1) : head)
          .raw("</th>");
    }
    return raw("</tr></thead>\n<tbody>\n");
  }

  /** Adds a cell of text. */
  Html cell(String text) {
    return raw("<td>").text(text).raw("</td>");
  }

  /** Adds a cell of a number already in text. */
  public Html number(String text) {
    return raw("<td class=\"num\">").text(text).raw("</td>");
  }

  /** Closes a table. */
  Html endTable() {
    return raw("</tbody></table></div>\n");
  }

  /** Adds a ply's swatch with its number on it, and its name. */
  Html ply(Ply ply) {
    return raw(swatch(ply)).text(ply.name());
  }

  /** A ply's number on its colour. */
  static String swatch(Ply ply) {
    return Template.fill(
        "<span class=\"swatch\" style=\"background:%s;color:%s\">%s</span>",
        ply.colour(), inkOn(ply.rgb()), ply.number());
  }

  /** Black or white, whichever reads better on a colour. */
  static String inkOn(int rgb) {
    return Contrast.blackOn(rgb) ? "#000" : "#fff";
  }

  @Override
  public String toString() {
    return out.toString();
  }
}
