package plyscape.text;

/**
 * Strings from inputs made safe to print: what a terminal would obey or what would turn the reading
 * direction is shown as an escape such as {@code \n} or <code>&#92;u001b</code>, everything else
 * stays as it is.
 */
public final class Visible {

  private Visible() {}

  /**
   * One line: every control and format character, line and paragraph separators and lone surrogates
   * are escaped.
   */
  public static String line(String text) {
    return escape(text, false);
  }

  /**
   * Several lines: as {@link #line}, but LF stays. For whole messages that we composed of lines.
   */
  public static String lines(String text) {
    return escape(text, true);
  }

  private static String escape(String text, boolean keepLineFeed) {
    if (text.chars().allMatch(c -> c >= ' ' && c < 127)) {
      return text;
    }
    StringBuilder out = new StringBuilder(text.length() + 16);
    text.codePoints().forEach(c -> append(out, c, keepLineFeed));
    return out.toString();
  }

  private static void append(StringBuilder out, int c, boolean keepLineFeed) {
    if (c == '\n' && keepLineFeed) {
      out.append('\n');
    } else if (c == '\n') {
      out.append("\\n");
    } else if (c == '\t') {
      out.append("\\t");
    } else if (c == '\r') {
      out.append("\\r");
    } else if (harmful(c)) {
      out.append(String.format(java.util.Locale.ROOT, c > 0xffff ? "\\U%08x" : "\\u%04x", c));
    } else {
      out.appendCodePoint(c);
    }
  }

  private static boolean harmful(int c) {
    return switch (Character.getType(c)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR,
          Character.SURROGATE,
          Character.PRIVATE_USE,
          Character.UNASSIGNED ->
          true;
      default -> false;
    };
  }
}
