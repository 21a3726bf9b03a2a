package plyscape.text;

/**
 * Strings from anywhere made safe inside XML and HTML, in text and in attributes within quotes of
 * either kind.
 */
public final class Markup {

  private Markup() {}

  /**
   * The text with {@code & < > " '} as character references. Characters that XML 1.0 doesn't allow
   * (control characters but tab, LF and CR, lone surrogates, U+FFFE, U+FFFF) become U+FFFD, and so
   * do the ones that turn the reading direction of what follows (U+202A to 202E, U+2066 to 2069);
   * tab, LF and CR become references, so that attributes keep them.
   */
  public static String escape(String text) {
    StringBuilder out = new StringBuilder(text.length() + 16);
    text.codePoints().forEach(c -> append(out, c));
    return out.toString();
  }

  private static void append(StringBuilder out, int c) {
    switch (c) {
      case '&' -> out.append("&amp;");
      case '<' -> out.append("&lt;");
      case '>' -> out.append("&gt;");
      case '"' -> out.append("&quot;");
      case '\'' -> out.append("&#39;");
      case '\t', '\n', '\r' -> out.append("&#").append(c).append(';');
      default -> {
        boolean allowed =
            c >= 0x20 && c <= 0xd7ff && !(c >= 0x7f && c <= 0x9f)
                || c >= 0xe000 && c <= 0xfffd
                || c >= 0x10000;
        boolean turns = c >= 0x202a && c <= 0x202e || c >= 0x2066 && c <= 0x2069;
        out.appendCodePoint(allowed && !turns ? c : 0xfffd);
      }
    }
  }
}
