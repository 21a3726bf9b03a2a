package plyscape.gcode;

import plyscape.fault.InputFault;
import plyscape.fault.Place;

/**
 * The words of one line, read after NISTIR 6556 section 3.3: blanks and case don't matter outside
 * comments, a number has an optional sign, digits and at most one point, and no exponent. Reused
 * from line to line; not safe for threads.
 */
final class WordLine {

  /** Longest line of the standard, all characters included. */
  private static final int LONGEST = 256;

  private static final int MOST_WORDS = 64;

  final char[] letters = new char[MOST_WORDS];
  final double[] values = new double[MOST_WORDS];
  final int[] columns = new int[MOST_WORDS];
  int count;

  /** Whether the line has a number, N. */
  boolean numbered;

  private final String file;
  private final String text;
  private int line;
  private int start;
  private int at;
  private int end;

  WordLine(String file, String text) {
    this.file = file;
    this.text = text;
  }

  /** Reads the characters from {@code from} (inclusive) to {@code to} as the given line. */
  void read(int from, int to, int lineNumber) {
    line = lineNumber;
    start = from;
    at = from;
    end = to;
    count = 0;
    numbered = false;
    if (to - from > LONGEST) {
      throw faultAt(
          from + LONGEST, "line of " + (to - from) + " characters", "the standard allows 256");
    }
    skipBlanks();
    if (at < end && text.charAt(at) == '/') {
      throw faultAt(
          at,
          "block delete '/'",
          "what it does hangs on a switch of the machine; take the line out or the '/'");
    }
    boolean first = true;
    for (skipBlanks(); at < end; skipBlanks()) {
      if (text.charAt(at) == '(') {
        skipComment();
      } else {
        anyWord(first);
        first = false;
      }
    }
  }

  private void anyWord(boolean first) {
    char c = text.charAt(at);
    char letter = c >= 'a' && c <= 'z' ? (char) (c - 32) : c;
    if (letter < 'A' || letter > 'Z') {
      throw faultAt(at, "character '" + shown(c) + "'", hint(c));
    }
    int column = at;
    at++;
    if (letter != 'N') {
      word(letter, column);
    } else if (first) {
      lineNumberWord(column);
      numbered = true;
    } else {
      throw faultAt(column, "a line number behind other words", "N stands first on its line, once");
    }
  }

  /** A fault at a word of this line. */
  InputFault fault(int word, String found, String wanted) {
    return new InputFault(Place.at(file, line, columns[word] + 1), found, wanted);
  }

  private InputFault faultAt(int position, String found, String wanted) {
    return new InputFault(Place.at(file, line, position - start + 1), found, wanted);
  }

  private static String shown(char c) {
    return c < ' ' || c == 127
        ? "\\u" + String.format(java.util.Locale.ROOT, "%04x", (int) c)
        : String.valueOf(c);
  }

  private static String hint(char c) {
    return switch (c) {
      case ';' -> "comments stand in ( )";
      case ')' -> "a comment's ( is missing";
      case '#', '[', '=' -> "parameters and expressions aren't read; write the number itself";
      case '%' -> "% stands alone on its line";
      case '*' -> "checksums aren't read";
      default -> "a word is a letter and a number, such as X12.5";
    };
  }

  private void skipBlanks() {
    while (at < end) {
      char c = text.charAt(at);
      if (c != ' ' && c != '\t') {
        return;
      }
      at++;
    }
  }

  private void skipComment() {
    int open = at++;
    for (; at < end; at++) {
      char c = text.charAt(at);
      if (c == ')') {
        at++;
        return;
      }
      if (c == '(') {
        throw faultAt(at, "a comment inside a comment", "comments don't nest");
      }
    }
    throw faultAt(open, "a comment that isn't closed", "close it with ) on the same line");
  }

  private void lineNumberWord(int column) {
    int digits = 0;
    for (skipBlanks(); at < end && isDigit(text.charAt(at)); skipBlanks()) {
      at++;
      digits++;
    }
    if (digits < 1 || digits > 5) {
      throw faultAt(column, "line number of " + digits + " digits", "N0 to N99999");
    }
  }

  private void word(char letter, int column) {
    if (count == MOST_WORDS) {
      throw faultAt(
          column, "more than " + MOST_WORDS + " words on a line", "write one motion a line");
    }
    letters[count] = letter;
    columns[count] = column - start;
    values[count] = number(letter, column);
    count++;
  }

  private double number(char letter, int column) {
    boolean negative = false;
    boolean point = false;
    int digits = 0;
    long mantissa = 0;
    int decimals = 0;
    boolean seenDigit = false;
    skipBlanks();
    int begin = at;
    if (at < end && (text.charAt(at) == '-' || text.charAt(at) == '+')) {
      negative = text.charAt(at) == '-';
      at++;
    }
    for (skipBlanks(); at < end; skipBlanks()) {
      char c = text.charAt(at);
      if (c == '.' && !point) {
        point = true;
      } else if (isDigit(c)) {
        if (digits < 18) {
          mantissa = mantissa * 10 + (c - '0');
          decimals += point ? 1 : 0;
        } else if (!point) {
          throw faultAt(begin, "a number of more than 18 digits", "coordinates are mm or inches");
        }
        digits += mantissa > 0 ? 1 : 0; // leading zeros don't count as precision
        seenDigit = true;
      } else {
        break;
      }
      at++;
    }
    if (!seenDigit) {
      throw noNumber(letter, column);
    }
    double value = mantissa == 0 ? 0 : scaled(mantissa, decimals);
    return negative ? -value : value;
  }

  private InputFault noNumber(char letter, int column) {
    if (at < end && "#[;=/*".indexOf(text.charAt(at)) >= 0) {
      return faultAt(at, "character '" + text.charAt(at) + "'", hint(text.charAt(at)));
    }
    return faultAt(column, "letter " + letter + " without a number", "such as " + letter + "1");
  }

  /** The double nearest to mantissa / 10^decimals. */
  private static double scaled(long mantissa, int decimals) {
    return decimals <= 22 && mantissa < 1L << 53
        ? mantissa / POWER[decimals]
        : new java.math.BigDecimal(java.math.BigInteger.valueOf(mantissa), decimals).doubleValue();
  }

  private static final double[] POWER = new double[23];

  static {
    POWER[0] = 1;
    for (int i = 1; i < POWER.length; i++) {
      POWER[i] = POWER[i - 1] * 10;
    }
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }
}
