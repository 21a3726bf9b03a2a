package plyscape.region;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import plyscape.fault.Warning;
import plyscape.fault.Warnings;
import plyscape.job.LineWidth;
import plyscape.job.ZoneSpec;
import plyscape.job.ZoneSpecs;
import plyscape.zones.Zone;

/** A zone that mostly vanishes is told apart, with what would help; a little off one isn't. */
class MergedWarningsTest {

  private static Zone zone(String name, double areaMm2) {
    ZoneSpec spec =
        ZoneSpecs.of(name, Path.of("map.geojson"), new TreeMap<>(), 2, null, LineWidth.NONE);
    return new Zone(
        spec, new GeometryFactory().toGeometry(new Envelope(0, areaMm2, 0, 1)), 1, List.of());
  }

  private static Tiling.Merged merged(String why, String source, double areaMm2) {
    return new Tiling.Merged(why, source, 2, 1, 1, areaMm2);
  }

  @Test
  void lostZones_areToldWithWhatWouldHelp() {
    Warnings warnings = new Warnings();
    MergedWarnings.add(
        List.of(
            merged(MergedTally.NARROW, "river", 20),
            merged(MergedTally.NARROW, "wood", 20),
            merged(MergedTally.SMALL, "houses", 12),
            merged(MergedTally.NARROW, "houses", 3)),
        List.of(zone("river", 20), zone("wood", 100), zone("houses", 20), zone("none", 0)),
        new TilingRules(9, 3, 1, null),
        warnings);
    List<Warning> lost =
        warnings.list().stream().filter(w -> w.code().equals("zone-lost")).toList();
    assertEquals(
        List.of(
            new Warning(
                "zone-lost",
                "100 % of it won't show: it is narrower than the smallest cutter, 3.00 mm; a"
                    + " thinner cutter, a larger width or keep: widen would show it",
                "zone river"),
            new Warning(
                "zone-lost",
                "75 % of it won't show: its parts are smaller than the smallest cutter, 3.00 mm; a"
                    + " thinner cutter or keep: widen would show them",
                "zone houses")),
        lost);
    assertEquals(3, warnings.list().size() - lost.size(), "and each is counted as merged");
  }

  /** Parts of up to 10 mm2 may hold the round of a 3 mm cutter, 7.07 mm2. */
  @Test
  void aSmallerMinimumArea_isNamedOnlyWhereItWouldHelp() {
    Warnings warnings = new Warnings();
    MergedWarnings.add(
        List.of(merged(MergedTally.SMALL, "houses", 18)),
        List.of(zone("houses", 20)),
        new TilingRules(9, 3, 10, null),
        warnings);
    String said = warnings.list().get(1).message();
    assertTrue(said.contains("a smaller minimum_area would show them"), said);
  }
}
