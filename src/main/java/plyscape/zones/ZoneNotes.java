package plyscape.zones;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import plyscape.fault.Warnings;
import plyscape.job.ZoneSpec;
import plyscape.text.Template;
import plyscape.zones.map.MapFile;

/** Says what of a zone's features was left out, repaired or widened, summed up. */
final class ZoneNotes {

  private final ZoneSpec spec;
  private final String where;
  private final Warnings warnings;

  ZoneNotes(ZoneSpec spec, Warnings warnings) {
    this.spec = spec;
    this.where = "zone " + spec.name();
    this.warnings = warnings;
  }

  /** Adds the warnings. */
  void add(MapFile file, ZoneShape shape, Zone zone) {
    if (shape.taken() == 0) {
      empty(file);
    } else {
      skipped(zone, shape.swapped());
      repaired(shape.repaired());
    }
    if (shape.widened() > 0) {
      warnings.add(
          "zone-widened",
          shape.widened() == 1
              ? "1 feature is narrower than the smallest cutter and was widened to it."
              : shape.widened()
                  + " features are narrower than the smallest cutter and were widened to it.",
          where);
    }
  }

  private void empty(MapFile file) {
    int features = file.tally().features();
    warnings.add(
        "zone-empty",
        features == 0
            ? file.name() + " has no features."
            : "None of the "
                + features
                + " features of "
                + file.name()
                + " fits "
                + new FeatureFilter(spec.where()).words()
                + FoundValues.of(file.tally(), spec.where().keySet()),
        where);
  }

  private void skipped(Zone zone, int swapped) {
    Map<String, Integer> counts = new LinkedHashMap<>();
    zone.skipped().forEach(s -> counts.merge(s.why(), 1, Integer::sum));
    Integer outside = counts.remove(ZoneShape.OUTSIDE);
    if (outside != null && zone.features() == 0) {
      warnings.add(
          "zone-outside",
          Template.fill(
              "All that it picks (%s%s) lies outside the carved area%s.",
              outside, outside == 1 ? " feature" : " features", why(swapped)),
          where);
    }
    if (!counts.isEmpty()) {
      StringBuilder text = new StringBuilder();
      counts.forEach(
          (why, n) ->
              text.append(text.length() > 0 ? "; " : "").append(n).append(": ").append(why));
      warnings.add("zone-skipped", "Features left out: " + text + ".", where);
    }
  }

  private static String why(int swapped) {
    return swapped == 0
        ? ""
        : "; with x and y swapped it would lie there: GeoJSON has longitude first, then latitude";
  }

  private void repaired(List<String> labels) {
    if (!labels.isEmpty()) {
      warnings.add(
          "zone-repaired",
          (labels.size() == 1
                  ? "1 polygon that crosses itself was repaired: "
                  : labels.size() + " polygons that cross themselves were repaired: ")
              + String.join(", ", labels)
              + ".",
          where);
    }
  }
}
