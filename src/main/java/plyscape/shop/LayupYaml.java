package plyscape.shop;

import java.util.Locale;
import java.util.Map;
import plyscape.layup.Layup;
import plyscape.layup.PanelPoint;
import plyscape.layup.Ply;
import plyscape.text.Numbers;
import plyscape.text.Template;

/**
 * A layup as the text of a layup file (src/contract.md, section 5). Reading it back gives the same
 * layup, to 1e-6 mm.
 */
public final class LayupYaml {

  private LayupYaml() {}

  /**
   * The file's text, LF.
   *
   * @param head a comment for the first line, without the hash
   */
  public static String text(Layup layup, String head) {
    StringBuilder out = new StringBuilder();
    out.append("# ").append(head.replace('\n', ' ')).append('\n');
    if (!layup.name().isBlank()) {
      out.append("name: ").append(quoted(layup.name())).append('\n');
    }
    number(out, "glue_line", layup.glueLine().thicknessMm());
    number(out, "glue_line_tolerance", layup.glueLine().toleranceMm());
    if (layup.measured().thicknessMm() != null) {
      number(out, "measured_thickness", layup.measured().thicknessMm());
      number(out, "measured_thickness_tolerance", layup.measured().thicknessToleranceMm());
    }
    if (!layup.measured().bottomsMm().isEmpty()) {
      StringBuilder map = new StringBuilder();
      for (Map.Entry<Integer, Double> entry : layup.measured().bottomsMm().entrySet()) {
        map.append(map.length() == 0 ? "" : ", ").append(entry.getKey()).append(": ");
        map.append(Numbers.trimmed(entry.getValue(), 6));
      }
      out.append("measured_bottoms: {").append(map).append("}\n");
      number(out, "measured_bottoms_tolerance", layup.measured().bottomsToleranceMm());
    }
    if (layup.measured().at() != null) {
      PanelPoint at = layup.measured().at();
      out.append("measured_at: [").append(Numbers.trimmed(at.xMm(), 3)).append(", ");
      out.append(Numbers.trimmed(at.yMm(), 3)).append("]\n");
    }
    if (!layup.measured().places().isEmpty()) {
      out.append("measured_places: ").append(LayupRewrite.list(layup.measured().places()));
      out.append('\n');
    }
    if (layup.measured().pressTaper() != null) {
      number(out, "press_taper", layup.measured().pressTaper());
    }
    if (layup.measured().pressBow() > 0) {
      number(out, "press_bow", layup.measured().pressBow());
    }
    number(out, "flatness", layup.flatnessMm());
    out.append("plies:\n");
    for (Ply ply : layup.plies()) {
      out.append(Template.fill("  - {name: %s, colour: \"%s", quoted(ply.name()), ply.colour()));
      out.append("\", thickness: ").append(Numbers.trimmed(ply.thicknessMm(), 6));
      out.append(", tolerance: ").append(Numbers.trimmed(ply.toleranceMm(), 6));
      out.append(", grain: ").append(Numbers.trimmed(ply.grainDeg(), 3));
      out.append(ply.wood().isBlank() ? "" : ", wood: " + quoted(ply.wood())).append("}\n");
    }
    return out.toString();
  }

  private static void number(StringBuilder out, String key, double value) {
    out.append(key).append(": ").append(Numbers.trimmed(value, 6)).append('\n');
  }

  /**
   * A YAML double-quoted scalar; everything beyond printable ASCII is escaped where it could be
   * misread.
   */
  private static String quoted(String text) {
    StringBuilder out = new StringBuilder("\"");
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '"' || c == '\\') {
        out.append('\\').append(c);
      } else if (c < ' '
          || (c >= 0x7f && c < 0xa1)
          || c == '\u2028'
          || c == '\u2029'
          || c == '\ufeff') {
        out.append(String.format(Locale.ROOT, "\\u%04x", (int) c));
      } else {
        out.append(c);
      }
    }
    return out.append('"').toString();
  }
}
