package plyscape.region;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import plyscape.fault.Warnings;
import plyscape.text.Numbers;

/** Tells, once for the terrain and once a zone, how much of it was given to neighbours and why. */
final class MergedWarnings {

  private MergedWarnings() {}

  /** Adds warnings with code {@code merged}, in the order of the list. */
  static void add(
      List<Tiling.Merged> merged, double toolMm, double minimumAreaMm2, Warnings warnings) {
    Map<String, List<Tiling.Merged>> bySource = new LinkedHashMap<>();
    merged.forEach(m -> bySource.computeIfAbsent(m.source(), k -> new ArrayList<>()).add(m));
    bySource.forEach(
        (source, list) -> {
          List<String> texts = new ArrayList<>();
          String small = "smaller than " + Numbers.fixed(minimumAreaMm2, 2) + " mm2";
          String narrow = "too narrow for the smallest cutter, " + Numbers.fixed(toolMm, 2) + " mm";
          add(texts, list, MergedTally.SMALL, small);
          add(texts, list, MergedTally.NARROW, narrow);
          warnings.add(
              "merged",
              String.join("; ", texts) + ". Their neighbours' plies show there.",
              source.equals(MapOrigin.TERRAIN) ? source : "zone " + source);
        });
  }

  private static void add(
      List<String> texts, List<Tiling.Merged> list, String why, String because) {
    int parts = 0;
    double areaMm2 = 0;
    for (Tiling.Merged merged : list) {
      if (merged.why().equals(why)) {
        parts += merged.count();
        areaMm2 += merged.areaMm2();
      }
    }
    if (parts > 0) {
      String what = parts == 1 ? "1 part, " : parts + " parts, ";
      String verb = parts == 1 ? " is " : " are ";
      texts.add(what + Numbers.fixed(areaMm2, 2) + " mm2," + verb + because);
    }
  }
}
