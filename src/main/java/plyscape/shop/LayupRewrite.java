package plyscape.shop;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import plyscape.layup.Bottoms;
import plyscape.layup.MeasuredPlace;
import plyscape.text.Numbers;
import plyscape.text.Template;

/**
 * The text of a layup file with other measured bottoms: the two keys are replaced or put in before
 * {@code plies}, all other lines, comments too, stay as they are. Works on block-style files as
 * people write them; whether the outcome reads as meant must be checked by reading it.
 */
public final class LayupRewrite {

  private static final Pattern KEY = Pattern.compile("^[A-Za-z_\"'].*");

  private LayupRewrite() {}

  /** The new text. */
  public static String withBottoms(String text, Bottoms bottoms) {
    List<String> lines = new ArrayList<>(List.of(text.split("\n", -1)));
    String ending = text.contains("\r\n") ? "\r" : "";
    put(lines, "measured_bottoms", map(bottoms), ending);
    put(lines, "measured_bottoms_tolerance", tolerance(bottoms), ending);
    return String.join("\n", lines);
  }

  /** The same with other measured places. */
  public static String withPlaces(String text, List<MeasuredPlace> places) {
    List<String> lines = new ArrayList<>(List.of(text.split("\n", -1)));
    put(lines, "measured_places", list(places), text.contains("\r\n") ? "\r" : "");
    return String.join("\n", lines);
  }

  /** Places as they are written, in one line. */
  static String list(List<MeasuredPlace> places) {
    return places.stream()
        .map(
            p ->
                Template.fill(
                    "{at: [%.3t, %.3t], bottoms: %s, tolerance: %s%s}",
                    p.at().xMm(),
                    p.at().yMm(),
                    map(p.bottoms()),
                    tolerance(p.bottoms()),
                    p.tile().isEmpty() ? "" : ", tile: " + p.tile()))
        .collect(Collectors.joining(", ", "[", "]"));
  }

  private static String map(Bottoms bottoms) {
    return bottoms.depthsMm().entrySet().stream()
        .map(e -> e.getKey() + ": " + Numbers.trimmed(e.getValue(), 4))
        .collect(Collectors.joining(", ", "{", "}"));
  }

  /** Rounded up, so that the file never promises more than was found. */
  private static String tolerance(Bottoms bottoms) {
    return Numbers.trimmed(Math.ceil(bottoms.toleranceMm() * 1e4 - 1e-6) / 1e4, 4);
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
