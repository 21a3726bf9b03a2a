package plyscape.batch;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Which jobs of a list are whose: every count-th, by its place in the list and nothing else, so
 * that all who share agree without a word. Immutable.
 *
 * @param number from 1
 * @param count of all who share
 */
public record Share(int number, int count) {

  /** All jobs. */
  public static final Share ALL = new Share(1, 1);

  private static final Pattern TEXT = Pattern.compile("(\\d{1,6})/(\\d{1,6})");

  /** Checks that it is one of them. */
  public Share {
    if (number < 1 || number > count) {
      throw new IllegalArgumentException("no share " + number + "/" + count);
    }
  }

  /**
   * Reads {@code 3/8}.
   *
   * @throws IllegalArgumentException if it isn't such a text
   */
  public static Share of(String text) {
    Matcher matcher = TEXT.matcher(text);
    if (!matcher.matches()) {
      throw new IllegalArgumentException("no share \"" + text + "\"");
    }
    return new Share(Integer.parseInt(matcher.group(1)), Integer.parseInt(matcher.group(2)));
  }

  /** Those of a list. */
  public <T> List<T> of(List<T> all) {
    List<T> own = new ArrayList<>();
    for (int i = number - 1; i < all.size(); i += count) {
      own.add(all.get(i));
    }
    return own;
  }

  /** Such as {@code 3/8}. */
  @Override
  public String toString() {
    return number + "/" + count;
  }
}
