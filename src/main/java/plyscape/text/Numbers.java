package plyscape.text;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Decimal text of numbers: a point, no exponent, no grouping, never {@code -0}. The same on every
 * machine and in every locale.
 */
public final class Numbers {

  /**
   * Powers of ten that a {@code double} holds exactly and that leave room for the value in a {@code
   * long}.
   */
  private static final long[] POWERS = {
    1, 10, 100, 1_000, 10_000, 100_000, 1_000_000, 10_000_000, 100_000_000, 1_000_000_000
  };

  /**
   * Below this a scaled value is a {@code long} without loss: every integer up to 2^53 is a {@code
   * double}.
   */
  private static final double EXACT = 9.0e15;

  private Numbers() {}

  /**
   * The value to the given number of decimals, all of them written: {@code fixed(0.5, 3)} is {@code
   * 0.500}.
   *
   * @param value finite
   * @param places 0 to 9
   * @return the nearest; halves go away from zero
   * @throws IllegalArgumentException if the value isn't finite or places is out of range
   */
  public static String fixed(double value, int places) {
    return text(value, places, false);
  }

  /**
   * The same without trailing zeros: {@code trimmed(0.5, 3)} is {@code 0.5}, {@code trimmed(2, 3)}
   * is {@code 2}.
   */
  public static String trimmed(double value, int places) {
    return text(value, places, true);
  }

  private static String text(double value, int places, boolean trim) {
    if (!Double.isFinite(value) || places < 0 || places >= POWERS.length) {
      throw new IllegalArgumentException("can't write " + value + " with " + places + " places");
    }
    double scaled = Math.abs(value) * POWERS[places];
    if (scaled >= EXACT) {
      return large(value, places, trim);
    }
    long units = (long) scaled;
    if (scaled - units >= 0.5) { // exact, unlike floor(scaled + 0.5)
      units++;
    }
    StringBuilder out = new StringBuilder(24);
    if (value < 0 && units != 0) {
      out.append('-');
    }
    out.append(units / POWERS[places]);
    if (places > 0) {
      appendFraction(out, units % POWERS[places], places, trim);
    }
    return out.toString();
  }

  private static void appendFraction(StringBuilder out, long fraction, int places, boolean trim) {
    int width = places;
    while (trim && width > 0 && fraction % 10 == 0) {
      fraction /= 10;
      width--;
    }
    if (width == 0) {
      return;
    }
    out.append('.');
    for (int i = width - 1; i >= 0; i--) {
      out.append((char) ('0' + fraction / POWERS[i] % 10));
    }
  }

  private static String large(double value, int places, boolean trim) {
    BigDecimal rounded = new BigDecimal(value).setScale(places, RoundingMode.HALF_UP);
    if (trim && rounded.scale() > 0) {
      rounded = rounded.stripTrailingZeros();
      rounded = rounded.scale() < 0 ? rounded.setScale(0) : rounded;
    }
    return rounded.toPlainString();
  }
}
