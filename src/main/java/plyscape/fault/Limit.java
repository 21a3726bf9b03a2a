package plyscape.fault;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicLongArray;

/**
 * How much of an input file is taken before it is refused, so that a small or wrong file can't cost
 * all memory or time. A real input that is larger is let in by {@code --limit NAME=N}, which holds
 * for the rest of the command: until its {@link Scope} is closed.
 */
public enum Limit {
  /** Bytes of a settings file; a layup of 100 plies with comments is under 20 000. */
  SETTINGS_BYTES(4_000_000, 1_000_000_000),

  /** Values in a settings file, those that aliases repeat counted each time. */
  SETTINGS_VALUES(200_000, 100_000_000),

  /**
   * Levels of nesting in a settings file; the formats need 5. The most is what Java's stack takes.
   */
  SETTINGS_LEVELS(40, 500),

  /** Columns times rows of a raster file; the most is what Java can count in an array. */
  PIXELS(1_000_000_000, Integer.MAX_VALUE - 8),

  /** Features of a map file. */
  FEATURES(1_000_000, 100_000_000),

  /** Points of the lines and outlines of a map file. */
  POINTS(10_000_000, 1_000_000_000),

  /** Bytes of a G-code program. */
  PROGRAM_BYTES(400_000_000, Integer.MAX_VALUE - 8);

  /** What holds now, by limit; threads of a job read what its command has set before. */
  private static final AtomicLongArray NOW =
      new AtomicLongArray(Arrays.stream(values()).mapToLong(limit -> limit.usual).toArray());

  private final long usual;
  private final long most;

  Limit(long usual, long most) {
    this.usual = usual;
    this.most = most;
  }

  /** As the user writes it, such as {@code settings-bytes}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** What holds now. */
  public long value() {
    return NOW.get(ordinal());
  }

  /** For messages: how to let more in. */
  public String help() {
    return "if it is meant, let it in with --limit " + word() + "=N";
  }

  /**
   * Sets one until the scope that is open now is closed.
   *
   * @param text such as {@code pixels=2000000000}
   * @throws IllegalArgumentException if it can't be set, with a message for people
   */
  public static void set(String text) {
    int equals = text.indexOf('=');
    String word = equals < 0 ? text : text.substring(0, equals).strip();
    Limit limit =
        Arrays.stream(values())
            .filter(one -> one.word().equals(word))
            .findFirst()
            .orElseThrow(
                () -> new IllegalArgumentException("wanted NAME=N with a name of " + words()));
    long value;
    try {
      value = Long.parseLong(text.substring(equals + 1).strip());
    } catch (NumberFormatException e) {
      value = 0;
    }
    if (equals < 0 || value < 1 || value > limit.most) {
      throw new IllegalArgumentException(
          "wanted " + word + "= a whole number from 1 to " + limit.most);
    }
    NOW.set(limit.ordinal(), value);
  }

  /** All names. */
  public static List<String> words() {
    return Arrays.stream(values()).map(Limit::word).toList();
  }

  /** One command's limits: closing it puts back those that held when it was opened. */
  public static final class Scope implements AutoCloseable {

    private final long[] before = Arrays.stream(values()).mapToLong(Limit::value).toArray();

    @Override
    public void close() {
      for (Limit limit : values()) {
        NOW.set(limit.ordinal(), before[limit.ordinal()]);
      }
    }
  }
}
