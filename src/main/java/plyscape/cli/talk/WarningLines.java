package plyscape.cli.talk;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import plyscape.fault.Warning;

/**
 * Warnings as lines for a person: all with {@code -v}, else the first few of each code and how many
 * more.
 */
public final class WarningLines {

  private static final int SHOWN = 3;

  private WarningLines() {}

  public static List<String> of(List<Warning> warnings, boolean all) {
    List<String> lines = new ArrayList<>();
    Map<String, Integer> counts = new LinkedHashMap<>();
    for (Warning warning : warnings) {
      int count = counts.merge(warning.code(), 1, Integer::sum);
      if (all || count <= SHOWN) {
        String where = warning.where().isEmpty() ? "" : warning.where() + ": ";
        lines.add("warning " + warning.code() + ": " + where + warning.message());
      }
    }
    counts.forEach(
        (code, count) -> {
          if (!all && count > SHOWN) {
            lines.add("warning " + code + ": " + (count - SHOWN) + " more of these, all with -v");
          }
        });
    return lines;
  }
}
