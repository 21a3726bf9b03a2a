package plyscape.shop;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.regex.Pattern;
import plyscape.text.Numbers;

/**
 * The text of a layup file with other measured bottoms: the two keys are replaced or put in before
 * {@code plies}, all other lines, comments too, stay as they are. Works on block-style files as
 * people write them; whether the outcome reads as meant must be checked by reading it.
 */
public final class LayupRewrite {

  private static final Pattern KEY = Pattern.compile("^[A-Za-z_\"'].*");

  private LayupRewrite() {}

  /** The new text. */
  public static String withBottoms(
      String text, SortedMap<Integer, Double> bottomsMm, double toleranceMm) {
    List<String> lines = new ArrayList<>(List.of(text.split("\n", -1)));
    String ending = text.contains("\r\n") ? "\r" : "";
    StringBuilder map = new StringBuilder();
    for (Map.Entry<Integer, Double> entry : bottomsMm.entrySet()) {
      map.append(map.length() == 0 ? "" : ", ").append(entry.getKey()).append(": ");
      map.append(Numbers.trimmed(entry.getValue(), 4));
    }
    put(lines, "measured_bottoms", "{" + map + "}", ending);
    // Rounded up, so that the file never promises more than was found.
    put(
        lines,
        "measured_bottoms_tolerance",
        Numbers.trimmed(Math.ceil(toleranceMm * 1e4 - 1e-6) / 1e4, 4),
        ending);
    return String.join("\n", lines);
  }

  private static void put(List<String> lines, String key, String value, String ending) {
    int at = find(lines, key);
    if (at < 0) {
      int before = find(lines, "plies");
      before = before < 0 ? lines.size() : before;
      while (before > 0 && before <= lines.size() && isComment(lines.get(before - 1))) {
        before--;
      }
      lines.add(before, key + ": " + value + ending);
      return;
    }
    int end = at + 1;
    int body = end;
    while (end < lines.size()
        && !KEY.matcher(lines.get(end)).matches()
        && !lines.get(end).startsWith("---")) {
      end++;
      // Comments and blanks that only stand before the next key belong to it.
      if (!lines.get(end - 1).isBlank() && !isComment(lines.get(end - 1))) {
        body = end;
      }
    }
    String comment = trailingComment(lines.get(at));
    lines.subList(at, body).clear();
    lines.add(at, key + ": " + value + comment + ending);
  }

  private static int find(List<String> lines, String key) {
    Pattern pattern = Pattern.compile("^[\"']?" + key + "[\"']?\\s*:.*", Pattern.DOTALL);
    for (int i = 0; i < lines.size(); i++) {
      if (pattern.matcher(lines.get(i)).matches()) {
        return i;
      }
    }
    return -1;
  }

  private static boolean isComment(String line) {
    return line.stripLeading().startsWith("#") && line.startsWith("#");
  }

  /**
   * The comment at a line's end with the blanks before it; a hash in YAML opens one only after a
   * blank.
   */
  private static String trailingComment(String line) {
    String plain = line.stripTrailing();
    boolean single = false;
    boolean twice = false;
    for (int i = 0; i < plain.length(); i++) {
      char c = plain.charAt(i);
      single ^= c == '\'' && !twice;
      twice ^= c == '"' && !single;
      if (c == '#' && !single && !twice && i > 0 && Character.isWhitespace(plain.charAt(i - 1))) {
        int from = i;
        while (from > 0 && Character.isWhitespace(plain.charAt(from - 1))) {
          from--;
        }
        return plain.substring(from);
      }
    }
    return "";
  }
}
