package plyscape.gcode;

/**
 * One line of words while it is put together; words are parted by a blank. Plain characters in an
 * array: most of a program's writing is here. Reused from line to line; not safe for threads.
 */
final class LineText {

  /** Longer than any line of words: a motion, five coordinates of 15 characters, a feed. */
  private final char[] chars = new char[160];

  private int length;

  /** Begins a new line. */
  void clear() {
    length = 0;
  }

  /** Adds a word as it stands. */
  void word(String word) {
    part();
    word.getChars(0, word.length(), chars, length);
    length += word.length();
  }

  /** Adds a letter and a number as {@link GcodeNumber#scaled} gives it, with all its decimals. */
  void word(char letter, long scaled, int decimals) {
    part();
    chars[length++] = letter;
    long size = scaled;
    if (scaled < 0) {
      chars[length++] = '-';
      size = -scaled;
    }
    int digits = decimals + 1;
    for (long rest = size / GcodeNumber.unit(decimals); rest > 9; rest /= 10) {
      digits++;
    }
    length += digits + (decimals > 0 ? 1 : 0);
    int at = length;
    for (int k = 0; k < digits; k++) {
      if (k == decimals && k > 0) {
        chars[--at] = '.';
      }
      chars[--at] = (char) ('0' + size % 10);
      size /= 10;
    }
  }

  private void part() {
    if (length > 0) {
      chars[length++] = ' ';
    }
  }

  /** Ends the line and adds it to a text. */
  void end(StringBuilder out) {
    out.append(chars, 0, length).append('\n');
    length = 0;
  }
}
