package plyscape.render;

import java.text.Normalizer;
import java.util.Locale;
import plyscape.layup.Ply;

/** File names of layers: the ply's number, so that no two are alike, and what of its name is safe on every system. */
final class LayerName {

  private static final int LONGEST = 40;

  private LayerName() {}

  /** Such as {@code 02-wood}: lower case ASCII letters, digits and hyphens only. */
  static String of(Ply ply) {
    String plain =
        Normalizer.normalize(ply.name(), Normalizer.Form.NFD)
            .replaceAll("\\p{M}+", "")
            .replace("ß", "ss")
            .toLowerCase(Locale.ROOT)
            .replaceAll("[^a-z0-9]+", "-");
    plain = plain.substring(0, Math.min(plain.length(), LONGEST)).replaceAll("^-+|-+$", "");
    return (ply.number() < 10 ? "0" : "") + ply.number() + "-" + (plain.isEmpty() ? "ply" : plain);
  }
}
