package plyscape.output;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import plyscape.files.PlanFiles;

/**
 * What a command's output directory looks like, so that {@code --force} only ever replaces one that
 * holds nothing else.
 *
 * @param keyFile the file that marks such a directory
 * @param keyText text that stands near the start of that file; "" when such a directory is never
 *     replaced
 * @param names patterns of all files that may be in it, as relative paths with {@code /}
 * @param folder pattern of its folders that are worth something without the rest; null when it has
 *     none
 */
public record OutputKind(String keyFile, String keyText, List<Pattern> names, Pattern folder) {

  /** How far into the key file its text is looked for, bytes. */
  static final int KEY_REACH = 2000;

  /** The output of {@code plan} (src/contract.md, section 7). */
  public static final OutputKind PLAN =
      of(PlanFiles.PLAN, "plyscape-plan-1", PlanFiles.planPatterns().toArray(new String[0]));

  /**
   * The output of {@code plan} for a landscape over several panels: an output of {@code plan} a
   * panel.
   */
  public static final OutputKind TILES =
      PLAN.many(
          PlanFiles.TILES,
          "plyscape-tiles-1",
          PlanFiles.tilePattern(),
          "overview\\.png",
          "index\\.html");

  /** The output of {@code preview}: one picture. The key text stands in every PNG's signature. */
  public static final OutputKind PREVIEW = of(PlanFiles.PREVIEW, "PNG", "preview\\.png");

  /** Makes a kind from regular expressions. */
  public static OutputKind of(String keyFile, String keyText, String... names) {
    return new OutputKind(keyFile, keyText, patterns(List.of(names)), null);
  }

  private static List<Pattern> patterns(List<String> names) {
    return names.stream().map(Pattern::compile).toList();
  }

  /**
   * Several of this kind in folders of a name's pattern, with a key file and other files above
   * them.
   */
  private OutputKind many(String key, String text, String folderNames, String... others) {
    List<String> all = new ArrayList<>(List.of(others));
    all.add(Pattern.quote(key));
    names.forEach(name -> all.add(folderNames + "/(?:" + name.pattern() + ")"));
    return new OutputKind(key, text, patterns(all), Pattern.compile(folderNames));
  }

  /** Kinds that an output of this one may replace: of {@code plan}, one panel or several. */
  List<OutputKind> replaces() {
    return is(PLAN) || is(TILES) ? List.of(PLAN, TILES) : List.of(this);
  }

  /** Whether it is marked as another kind is. */
  public boolean is(OutputKind other) {
    return keyFile.equals(other.keyFile) && keyText.equals(other.keyText);
  }

  /** Whether a file of this relative path belongs to it. */
  public boolean owns(String name) {
    return names.stream().anyMatch(pattern -> pattern.matcher(name).matches());
  }
}
