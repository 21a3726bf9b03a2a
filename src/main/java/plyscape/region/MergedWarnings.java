package plyscape.region;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import plyscape.fault.Warnings;
import plyscape.text.Numbers;
import plyscape.zones.Zone;

/** Tells, once for the terrain and once a zone, how much of it was given to neighbours and why. */
final class MergedWarnings {

  private MergedWarnings() {}

  /** From this share on a zone counts as lost, and what would help is said. */
  private static final double LOST = 0.5;

  /**
   * Adds warnings with code {@code merged}, in the order of the list; then {@code zone-lost} for
   * each zone of which half or more doesn't show.
   */
  static void add(
      List<Tiling.Merged> merged, List<Zone> zones, TilingRules rules, Warnings warnings) {
    double toolMm = rules.smallestToolMm();
    double minimumAreaMm2 = rules.minimumAreaMm2();
    Map<String, List<Tiling.Merged>> bySource = new LinkedHashMap<>();
    merged.forEach(m -> bySource.computeIfAbsent(m.source(), k -> new ArrayList<>()).add(m));
    bySource.forEach(
        (source, list) -> {
          List<String> texts = new ArrayList<>();
          String small = "smaller than " + Numbers.fixed(minimumAreaMm2, 2) + " mm2";
          String narrow = "too narrow for the smallest cutter, " + Numbers.fixed(toolMm, 2) + " mm";
          add(texts, list, MergedTally.SMALL, small);
          add(texts, list, MergedTally.NARROW, narrow);
          add(texts, list, MergedTally.WEAK, "standing wood that would be weak");
          warnings.add(
              "merged",
              String.join("; ", texts) + ". Their neighbours' plies show there.",
              source.equals(MapOrigin.TERRAIN) ? source : "zone " + source);
        });
    zones.forEach(zone -> lost(zone, merged, rules, warnings));
  }

  private static void lost(
      Zone zone, List<Tiling.Merged> merged, TilingRules rules, Warnings warnings) {
    double toolMm = rules.smallestToolMm();
    // What is smaller than the cutter's own round can't be cut, whatever minimum_area says.
    boolean areaHelps = rules.minimumAreaMm2() > Math.PI * toolMm * toolMm / 4;
    double small = areaMm2(zone, merged, MergedTally.SMALL);
    double narrow = areaMm2(zone, merged, MergedTally.NARROW);
    double share = zone.area().isEmpty() ? 0 : (small + narrow) / zone.area().getArea();
    if (share >= LOST) {
      warnings.add(
          "zone-lost",
          Numbers.fixed(100 * Math.min(1, share), 0)
              + " % of it won't show: "
              + (narrow >= small
                  ? "it is narrower than the smallest cutter, "
                      + Numbers.fixed(toolMm, 2)
                      + " mm; a thinner cutter, a larger width or keep: widen would show it"
                  : areaHelps
                      ? "its parts are too small; a smaller minimum_area would show them"
                      : "its parts are smaller than the smallest cutter, "
                          + Numbers.fixed(toolMm, 2)
                          + " mm; a thinner cutter or keep: widen would show them"),
          "zone " + zone.spec().name());
    }
  }

  private static double areaMm2(Zone zone, List<Tiling.Merged> merged, String why) {
    return merged.stream()
        .filter(m -> m.source().equals(zone.spec().name()) && m.why().equals(why))
        .mapToDouble(Tiling.Merged::areaMm2)
        .sum();
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
