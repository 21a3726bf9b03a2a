package plyscape.shop;

import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import plyscape.text.Numbers;

/**
 * Depths of a coupon's pads by number, as its readings file keeps them in a comment, so that
 * numbers of pads can be read as such. Immutable.
 */
final class CouponPads {

  private static final Pattern LINE =
      Pattern.compile("(?m)^#\\s*pads:((?:\\s+\\d+(?:\\.\\d+)?)+)\\s*$");

  private final double[] depthsMm;

  private CouponPads(double[] depthsMm) {
    this.depthsMm = depthsMm;
  }

  /** From the text of a readings file; none when it doesn't say. */
  static CouponPads in(String text) {
    Matcher line = LINE.matcher(text);
    return new CouponPads(
        line.find()
            ? Arrays.stream(line.group(1).strip().split("\\s+"))
                .mapToDouble(Double::parseDouble)
                .toArray()
            : new double[0]);
  }

  /** The comment that keeps them. */
  static String line(List<Coupon.Pad> pads) {
    return pads.stream()
        .map(pad -> Numbers.trimmed(pad.depthMm(), 4))
        .collect(Collectors.joining(" ", "# pads: ", "\n"));
  }

  /** Whether a number is one of a pad; 0 is the face beside the first. */
  boolean has(double number) {
    return depthsMm.length > 0
        && number == Math.rint(number)
        && number >= 0
        && number <= depthsMm.length;
  }

  /** Depth of a pad. */
  double depthMm(double number) {
    return number == 0 ? 0 : depthsMm[(int) number - 1];
  }

  /** How many there are. */
  int count() {
    return depthsMm.length;
  }
}
