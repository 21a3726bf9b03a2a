package plyscape.text;

import java.text.Normalizer;
import java.util.Locale;

/** File name parts from names that people chose. */
public final class Slug {

  private static final int LONGEST = 40;

  private Slug() {}

  /**
   * Lower case ASCII letters, digits and single hyphens, at most 40 characters; accents are
   * dropped, anything else becomes a hyphen. Never empty, never a path: {@code "End mill 1.5"}
   * gives {@code end-mill-1-5}; a name with nothing to keep gives {@code unnamed}. Different names
   * may give the same slug, so callers number their files.
   */
  public static String of(String name) {
    String plain =
        Normalizer.normalize(name, Normalizer.Form.NFD)
            .replaceAll("\\p{M}+", "")
            .toLowerCase(Locale.ROOT);
    String slug = plain.replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
    if (slug.length() > LONGEST) {
      slug = slug.substring(0, LONGEST).replaceAll("-$", "");
    }
    return slug.isEmpty() ? "unnamed" : slug;
  }
}
