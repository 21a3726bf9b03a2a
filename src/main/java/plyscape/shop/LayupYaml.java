package plyscape.shop;

import java.util.Locale;
import java.util.stream.Collectors;
import plyscape.layup.Layup;
import plyscape.layup.Measured;
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
    measured(out, layup.measured());
    number(out, "flatness", layup.flatnessMm());
    out.append("plies:\n");
    layup.plies().forEach(ply -> out.append(ply(ply)));
    return out.toString();
  }

  private static void measured(StringBuilder out, Measured measured) {
    if (measured.thicknessMm() != null) {
      number(out, "measured_thickness", measured.thicknessMm());
      number(out, "measured_thickness_tolerance", measured.thicknessToleranceMm());
    }
    if (!measured.bottomsMm().isEmpty()) {
      String map =
          measured.bottomsMm().entrySet().stream()
              .map(e -> e.getKey() + ": " + Numbers.trimmed(e.getValue(), 6))
              .collect(Collectors.joining(", "));
      out.append("measured_bottoms: {").append(map).append("}\n");
      number(out, "measured_bottoms_tolerance", measured.bottomsToleranceMm());
    }
    if (measured.at() != null) {
      out.append(
          Template.fill("measured_at: [%.3t, %.3t]\n", measured.at().xMm(), measured.at().yMm()));
    }
    if (!measured.places().isEmpty()) {
      out.append("measured_places: ").append(LayupRewrite.list(measured.places())).append('\n');
    }
    if (measured.pressTaper() != null) {
      number(out, "press_taper", measured.pressTaper());
    }
    if (measured.pressBow() > 0) {
      number(out, "press_bow", measured.pressBow());
    }
  }

  private static String ply(Ply ply) {
    return Template.fill(
        "  - {name: %s, colour: \"%s\", thickness: %.6t, tolerance: %.6t, grain: %.3t%s}\n",
        quoted(ply.name()),
        ply.colour(),
        ply.thicknessMm(),
        ply.toleranceMm(),
        ply.grainDeg(),
        ply.wood().isBlank() ? "" : ", wood: " + quoted(ply.wood()));
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
