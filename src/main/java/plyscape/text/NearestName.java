package plyscape.text;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The known name that a mistyped one most likely stands for: least edit distance (insert, drop,
 * change, swap of neighbours, each 1; the optimal string alignment of Damerau and Levenshtein),
 * letter case ignored, at most about a third of the letters wrong. Of equals the first given wins.
 */
public final class NearestName {

  /** Names longer than this are cut before comparing, so that a hostile input costs no time. */
  private static final int LONGEST = 64;

  /** How many known names a message lists before it breaks off. */
  private static final int LISTED = 24;

  private NearestName() {}

  /** The nearest of the known names, if any is near enough. */
  public static Optional<String> of(String typed, Collection<String> known) {
    String wanted = plain(typed);
    String best = null;
    int bestDistance = 1 + Math.max(1, wanted.length() / 3);
    for (String name : known) {
      int distance = distance(wanted, plain(name));
      if (distance < bestDistance) {
        bestDistance = distance;
        best = name;
      }
    }
    return Optional.ofNullable(best);
  }

  /** A clause for a message: {@code did you mean "oak"? known are ...} or only what is known. */
  public static String hint(String typed, Collection<String> known) {
    String all = "known are " + known.stream().limit(LISTED).collect(Collectors.joining(", "));
    if (known.size() > LISTED) {
      all += " and " + (known.size() - LISTED) + " more";
    }
    return of(typed, known).map(name -> "did you mean \"" + name + "\"? ").orElse("") + all;
  }

  private static String plain(String name) {
    String lower = name.strip().toLowerCase(Locale.ROOT).replace('-', '_').replace(' ', '_');
    return lower.length() > LONGEST ? lower.substring(0, LONGEST) : lower;
  }

  private static int distance(String a, String b) {
    int[] before = new int[b.length() + 1];
    int[] last = new int[b.length() + 1];
    int[] row = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      last[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        row[j] = Math.min(Math.min(last[j] + 1, row[j - 1] + 1), last[j - 1] + change);
        if (i > 1
            && j > 1
            && a.charAt(i - 1) == b.charAt(j - 2)
            && a.charAt(i - 2) == b.charAt(j - 1)) {
          row[j] = Math.min(row[j], before[j - 2] + 1);
        }
      }
      int[] spare = before;
      before = last;
      last = row;
      row = spare;
    }
    return last[b.length()];
  }
}
