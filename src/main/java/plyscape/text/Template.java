package plyscape.text;

/**
 * A sentence with gaps: {@code %s} takes any value as it is, {@code %d} a whole number, {@code
 * %.3f} a number to three decimals ({@link Numbers#fixed}), {@code %.3t} one to at most three
 * ({@link Numbers#trimmed}), {@code %%} is a per cent sign. The same text in every locale.
 */
public final class Template {

  private Template() {}

  /**
   * The sentence with its gaps filled.
   *
   * @param values one a gap, in the order of the gaps
   * @throws IllegalArgumentException if the gaps aren't as many as the values, or aren't of the
   *     kinds above
   */
  public static String fill(String pattern, Object... values) {
    StringBuilder out = new StringBuilder(pattern.length() + 8 * values.length);
    int next = 0;
    int from = 0;
    for (int gap = pattern.indexOf('%'); gap >= 0; gap = pattern.indexOf('%', from)) {
      out.append(pattern, from, gap);
      from = gap + (pattern.startsWith(".", gap + 1) ? 4 : 2);
      if (from > pattern.length() || next == values.length && pattern.charAt(from - 1) != '%') {
        throw new IllegalArgumentException("gaps and values don't agree: " + pattern);
      }
      switch (pattern.charAt(from - 1)) {
        case '%' -> out.append('%');
        case 's', 'd' -> out.append(values[next++]);
        case 'f' -> out.append(number(values[next++], pattern.charAt(gap + 2), false));
        case 't' -> out.append(number(values[next++], pattern.charAt(gap + 2), true));
        default -> throw new IllegalArgumentException("no such gap: " + pattern);
      }
    }
    if (next < values.length) {
      throw new IllegalArgumentException("more values than gaps: " + pattern);
    }
    return out.append(pattern, from, pattern.length()).toString();
  }

  private static String number(Object value, char places, boolean trim) {
    double number = ((Number) value).doubleValue();
    if (!Double.isFinite(number)) {
      return Double.toString(number);
    }
    return trim ? Numbers.trimmed(number, places - '0') : Numbers.fixed(number, places - '0');
  }
}
