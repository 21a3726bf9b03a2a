package plyscape.gcode;

import java.text.Normalizer;

/**
 * Text as RS274 comments: ASCII, one pair of parentheses a line, none inside, lines under 80
 * characters. What can't be written is replaced, so that no name in a job can end a comment early
 * or smuggle in a command.
 */
final class GcodeComment {

  /**
   * Characters inside the parentheses; 77 with them, 78 with the line end, and controls differ in
   * what they count.
   */
  private static final int WIDTH = 75;

  private GcodeComment() {}

  /** Appends the text as one or more comment lines, broken at blanks where there are any. */
  static void append(StringBuilder out, String text) {
    String rest = clean(text);
    do {
      int cut = rest.length();
      if (cut > WIDTH) {
        cut = rest.lastIndexOf(' ', WIDTH);
        cut = cut <= 0 ? WIDTH : cut;
      }
      out.append('(').append(rest, 0, cut).append(")\n");
      rest = rest.substring(cut).strip();
    } while (!rest.isEmpty());
  }

  /**
   * The text in printable ASCII: accents dropped, parentheses to square brackets, any other foreign
   * or control character to a question mark or a blank. A comment that would begin with MSG gets a
   * blank comma-free start, as controls act on {@code (MSG,}.
   */
  static String clean(String text) {
    StringBuilder out = new StringBuilder();
    String plain = Normalizer.normalize(text, Normalizer.Form.NFKD);
    for (int i = 0; i < plain.length(); i++) {
      char c = plain.charAt(i);
      if (Character.getType(c) == Character.NON_SPACING_MARK || Character.isLowSurrogate(c)) {
        continue;
      }
      if (c == '(') {
        out.append('[');
      } else if (c == ')') {
        out.append(']');
      } else if (c == '%' || c == '~' || c == '!') {
        out.append('_'); // some controls take these as commands even inside a comment
      } else if (c < ' ' || c == 127 || Character.isWhitespace(c)) {
        out.append(' ');
      } else {
        out.append(c < 127 ? c : '?');
      }
    }
    String stripped = out.toString().strip();
    return stripped.regionMatches(true, 0, "MSG", 0, 3) ? "- " + stripped : stripped;
  }
}
