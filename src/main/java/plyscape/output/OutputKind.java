package plyscape.output;

import java.util.List;
import java.util.regex.Pattern;

/**
 * What a command's output directory looks like, so that {@code --force} only ever replaces one that holds nothing else.
 *
 * @param keyFile the file that marks such a directory
 * @param keyText text that stands near the start of that file
 * @param names patterns of all files that may be in it, as relative paths with {@code /}
 */
public record OutputKind(String keyFile, String keyText, List<Pattern> names) {

  /** How far into the key file its text is looked for, bytes. */
  static final int KEY_REACH = 2000;

  /** The output of {@code plan} (contract, section 7). */
  public static final OutputKind PLAN =
      of(
          "plan.json",
          "plyscape-plan-1",
          "plan\\.json",
          "report\\.html",
          "(preview|section|block|risk|difference|finished)\\.png",
          "(sheet|overview)\\.(svg|png)",
          "layers/[^/]+\\.(svg|geojson|dxf)",
          "passes/[^/]+\\.nc");

  /** The output of {@code preview}: one picture. The key text stands in every PNG's signature. */
  public static final OutputKind PREVIEW = of("preview.png", "PNG", "preview\\.png");

  /** Makes a kind from regular expressions. */
  public static OutputKind of(String keyFile, String keyText, String... names) {
    return new OutputKind(keyFile, keyText, List.of(names).stream().map(Pattern::compile).toList());
  }

  /** Whether a file of this relative path belongs to it. */
  public boolean owns(String name) {
    return names.stream().anyMatch(pattern -> pattern.matcher(name).matches());
  }
}
