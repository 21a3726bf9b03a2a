package plyscape.terrain.raster;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import plyscape.fault.InputFault;
import plyscape.fault.Place;

/**
 * Words and numbers of a text file, in order, without making a string of each number: plain
 * decimals of up to 15 digits are read exactly (an integer below 2^53 over a power of ten up to
 * 10^22, one rounding), the rest by the JDK's parser.
 */
public final class NumberStream implements Closeable {

  private static final double[] TENS = new double[23];

  static {
    for (int i = 0; i < TENS.length; i++) {
      TENS[i] = Double.parseDouble("1e" + i);
    }
  }

  private final String file;
  private final InputStream in;
  private final byte[] buffer = new byte[1 << 16];
  private final byte[] token = new byte[256];
  private final boolean[] blank = new boolean[256];
  private int position;
  private int limit;
  private int line = 1;
  private int column = 1;

  public NumberStream(Path file) throws IOException {
    this(file, "");
  }

  /** The same with letters that part numbers as blanks do. */
  public NumberStream(Path file, String separators) throws IOException {
    this.file = file.toString();
    separators.chars().forEach(c -> blank[c] = true);
    this.in = Files.newInputStream(file);
    // A byte order mark is no part of the first word.
    if (peek() == 0xEF && limit > 2 && (buffer[1] & 0xff) == 0xBB && (buffer[2] & 0xff) == 0xBF) {
      position = 3;
    }
  }

  /** Where the next word begins. */
  public Place place() throws IOException {
    skipBlank();
    return Place.at(file, line, column);
  }

  /** Whether nothing but blanks is left. */
  public boolean atEnd() throws IOException {
    skipBlank();
    return peek() < 0;
  }

  /** Whether the next word begins with a letter other than those of {@code nan} and {@code inf}. */
  public boolean atWord() throws IOException {
    skipBlank();
    int c = peek() | 0x20;
    return c >= 'a' && c <= 'z' && !((c == 'n' && next() == 'a') || (c == 'i' && next() == 'n'));
  }

  private int next() throws IOException {
    if (position + 1 >= limit) {
      System.arraycopy(buffer, position, buffer, 0, limit - position);
      limit -= position;
      position = 0;
      limit += Math.max(0, in.read(buffer, limit, buffer.length - limit));
    }
    return position + 1 < limit ? buffer[position + 1] | 0x20 : -1;
  }

  /** The next word. */
  public String word() throws IOException {
    Place place = place();
    return new String(token, 0, take(place), StandardCharsets.ISO_8859_1);
  }

  /** The next number; {@code nan} and {@code inf} in any case are read as such. */
  public double number() throws IOException {
    skipBlank();
    int startLine = line;
    int startColumn = column;
    int length = take(null);
    if (length == 0) {
      throw new InputFault(
          place(), "the file ends where a number was due", "check that the file is whole");
    }
    double quick = quick(length);
    if (!Double.isNaN(quick)) {
      return quick;
    }
    String text = new String(token, 0, length, StandardCharsets.ISO_8859_1);
    try {
      return slow(text);
    } catch (NumberFormatException e) {
      throw new InputFault(
          Place.at(file, startLine, startColumn),
          "'" + (length > 40 ? text.substring(0, 40) + "..." : text) + "' is not a number",
          text.indexOf(',') < 0
              ? "write numbers such as 12.5"
              : "write decimals with a point, and blanks between values",
          e);
    }
  }

  private static double slow(String text) {
    String lower = text.toLowerCase(java.util.Locale.ROOT);
    String bare = lower.startsWith("-") || lower.startsWith("+") ? lower.substring(1) : lower;
    if (bare.startsWith("nan")) {
      return Double.NaN;
    }
    if (bare.startsWith("inf")) {
      return lower.startsWith("-") ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
    }
    if (!bare.matches("[0-9.]+(e[+-]?[0-9]+)?")) {
      throw new NumberFormatException(text);
    }
    return Double.parseDouble(lower);
  }

  private double quick(int length) {
    int i = token[0] == '-' || token[0] == '+' ? 1 : 0;
    long digits = 0;
    int count = 0;
    int decimals = -1;
    for (; i < length; i++) {
      int c = token[i];
      if (c >= '0' && c <= '9') {
        digits = digits * 10 + c - '0';
        count++;
        decimals += decimals >= 0 ? 1 : 0;
      } else if (c == '.' && decimals < 0) {
        decimals = 0;
      } else {
        return Double.NaN;
      }
    }
    if (count == 0 || count > 15) {
      return Double.NaN;
    }
    double value = digits / TENS[Math.max(decimals, 0)];
    return token[0] == '-' ? -value : value;
  }

  private int take(Place place) throws IOException {
    int length = 0;
    while (true) {
      int c = peek();
      if (c <= ' ') {
        return length;
      }
      if (length == token.length) {
        throw new InputFault(
            place == null ? place() : place, "a word of over 256 characters", "not a text grid");
      }
      token[length++] = (byte) c;
      position++;
      column++;
    }
  }

  private void skipBlank() throws IOException {
    for (int c = peek(); c >= 0 && c <= ' '; c = peek()) {
      position++;
      column++;
      if (c == '\n') {
        line++;
        column = 1;
      }
    }
  }

  /** The next byte, or -1 at the end. */
  private int peek() throws IOException {
    if (position == limit) {
      limit = Math.max(0, in.read(buffer));
      position = 0;
      if (limit == 0) {
        return -1;
      }
    }
    int c = buffer[position] & 0xff;
    return blank[c] ? ' ' : c;
  }

  /** The line of what was read last, from 1. */
  public int line() {
    return line;
  }

  /** Whether what comes next begins as a number does. */
  public boolean atNumber() throws IOException {
    skipBlank();
    int c = peek();
    return c >= '0' && c <= '9' || c == '-' || c == '+' || c == '.';
  }

  /** Goes to the end of the line. */
  public void skipLine() throws IOException {
    for (int c = peek(); c >= 0 && c != '\n'; c = peek()) {
      position++;
      column++;
    }
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
