package plyscape.job;

import java.util.stream.Stream;

/**
 * How wide lines of a map become: not at all, or by one of three rules. Immutable.
 *
 * @param mm full width on the panel, or null
 * @param groundM full width on the ground, metres, or null
 * @param by width from a property, or null
 */
public record LineWidth(Double mm, Double groundM, ZoneSpec.WidthBy by) {

  /** Lines have no width and aren't drawn. */
  public static final LineWidth NONE = new LineWidth(null, null, null);

  /** Checks that at most one rule is given, with a width above 0. */
  public LineWidth {
    if (Stream.of(mm != null, groundM != null, by != null).filter(given -> given).count() > 1) {
      throw new IllegalArgumentException("more than one width");
    }
    if (mm != null && !(mm > 0) || groundM != null && !(groundM > 0)) {
      throw new IllegalArgumentException("a width that isn't above 0");
    }
  }
}
