package plyscape.lettering;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Geometry;

/**
 * Whether a cutter can cut text so that it can be read: stems must be as wide as the cutter, or
 * they aren't cut, and so must counters (the wood inside and beside the strokes of a letter), or
 * they are cut away. Measured on the letters' own areas, not by rules of thumb; the limits of what
 * still reads are common practice, no source.
 */
public final class Legibility {

  /** A letter that loses more of its stems than this share can't be read. */
  private static final double STEM_LOSS = 0.25;

  /** A counter that loses more than this share is as good as closed. */
  private static final double COUNTER_LOSS = 0.7;

  /** Places beside thin strokes smaller than this share of a letter's hull don't make it. */
  private static final double COUNTER_SHARE = 0.05;

  /** Beside thick strokes each that makes a letter must still have this share. */
  private static final double LEAST_SHARE = 0.02;

  /** At so many diameters of the cutter its strokes are thin. */
  private static final double THIN = 40;

  /** Letters are tried up to this height, mm. */
  private static final double GREATEST_MM = 200;

  private final Typeface face;
  private final double cutterMm;

  /** Letters of a typeface, by the smallest cutter's diameter. */
  public Legibility(Typeface face, double cutterMm) {
    this.face = face;
    this.cutterMm = cutterMm;
  }

  /** Whether all letters of a text can be read at a height. */
  public boolean readable(String text, double heightMm) {
    return text.codePoints()
        .filter(sign -> !Character.isWhitespace(sign))
        .distinct()
        .mapToObj(Character::toString)
        .allMatch(
            sign ->
                readable(face.line(sign, heightMm), counters(face.line(sign, THIN * cutterMm))));
  }

  /** How many counters make a letter. */
  private static int counters(Geometry letter) {
    Geometry hull = letter.convexHull();
    return large(hull.difference(letter), COUNTER_SHARE * hull.getArea()).size();
  }

  private static List<Geometry> large(Geometry parts, double leastMm2) {
    List<Geometry> out = new ArrayList<>();
    for (int i = 0; i < parts.getNumGeometries(); i++) {
      if (parts.getGeometryN(i).getArea() > leastMm2) {
        out.add(parts.getGeometryN(i));
      }
    }
    return out;
  }

  /** The least height from which a text can be read, to a tenth of a mm, rounded up. */
  public double neededMm(String text) {
    double low = 0.1;
    double high = GREATEST_MM;
    while (high - low > 0.05) {
      double middle = (low + high) / 2;
      if (readable(text, middle)) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return Math.ceil(high * 10 - 1e-9) / 10;
  }

  private boolean readable(Geometry letter, int counters) {
    if (letter.isEmpty()) {
      return true;
    }
    // A cutter's own stroke is as wide as it is: a hundredth for chords.
    double radius = cutterMm / 2 * 0.99;
    if (lost(letter, letter.buffer(-radius).buffer(radius)) > STEM_LOSS) {
      return false;
    }
    Geometry hull = letter.convexHull();
    Geometry open = hull.difference(letter.buffer(radius).buffer(-radius));
    long left =
        large(hull.difference(letter), LEAST_SHARE * hull.getArea()).stream()
            .filter(counter -> lost(counter, open) <= COUNTER_LOSS)
            .count();
    return left >= counters;
  }

  private static double lost(Geometry area, Geometry left) {
    return 1 - area.intersection(left).getArea() / area.getArea();
  }
}
