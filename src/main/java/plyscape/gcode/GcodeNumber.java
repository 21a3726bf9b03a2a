package plyscape.gcode;

/** Fixed decimals without exponent, the only number form that every RS274 control reads. */
final class GcodeNumber {

  private static final long[] TEN = {1, 10, 100, 1_000, 10_000};

  private GcodeNumber() {}

  /**
   * Value rounded to a count of decimals (0 to 4), as an integer of that last place; ties go up.
   */
  static long scaled(double value, int decimals) {
    if (!(Math.abs(value) < 1e9)) {
      throw new IllegalArgumentException("no such coordinate: " + value);
    }
    return Math.round(value * TEN[decimals]);
  }

  /** The number that {@link #scaled} stands for. */
  static double unscaled(long scaled, int decimals) {
    return scaled / (double) TEN[decimals];
  }

  /** What a value is multiplied by to count its last place. */
  static long unit(int decimals) {
    return TEN[decimals];
  }

  /** Appends a scaled number with all its decimals, such as {@code -0.050}. */
  static void append(StringBuilder out, long scaled, int decimals) {
    long size = Math.abs(scaled);
    if (scaled < 0) {
      out.append('-');
    }
    out.append(size / TEN[decimals]);
    if (decimals > 0) {
      out.append('.');
      String rest = Long.toString(size % TEN[decimals]);
      for (int i = rest.length(); i < decimals; i++) {
        out.append('0');
      }
      out.append(rest);
    }
  }

  /** Value with up to 3 decimals, none if it is whole. */
  static String shortest(double value) {
    StringBuilder out = new StringBuilder();
    append(out, scaled(value, 3), 3);
    int end = out.length();
    while (out.charAt(end - 1) == '0') {
      end--;
    }
    if (out.charAt(end - 1) == '.') {
      end--;
    }
    out.setLength(end);
    return out.toString();
  }
}
