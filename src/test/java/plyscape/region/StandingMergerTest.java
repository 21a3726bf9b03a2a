package plyscape.region;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import plyscape.bands.Bands;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.standing.StandingCheck;
import plyscape.standing.StandingRule;
import plyscape.standing.Terrace;
import plyscape.standing.WeakPart;
import plyscape.terrain.Terrain;
import plyscape.zones.Zone;

class StandingMergerTest {

  private static final Box BOX = new Box(6, 6, 46, 36);
  private static final StandingRule RULE = new StandingRule(0.8, 2.5);
  private static final List<Terrace> TERRACES =
      IntStream.rangeClosed(1, 9)
          .mapToObj(ply -> new Terrace(ply, (ply - 1) * 0.45, Double.NaN))
          .toList();

  private static StandingCure cure(StandingCure.Kind kind) {
    return new StandingCure(new Box(0, 0, 52, 42), TERRACES, RULE, kind);
  }

  private static Tiling build(
      Terrain terrain, Bands bands, List<Zone> zones, StandingCure.Kind kind, Warnings warnings) {
    Tiling tiling =
        TilingBuilder.build(
            terrain, bands, zones, new TilingRules(9, 1.5, 0.5, cure(kind)), warnings);
    TilingChecks.check(tiling, "cure " + kind);
    TilingChecks.checkNesting(tiling, "cure " + kind);
    return tiling;
  }

  private static List<WeakPart> weak(Tiling tiling) {
    return new StandingCheck(
            new Box(0, 0, 52, 42), tiling.exposed(), tiling.pockets(), TERRACES, RULE)
        .weak();
  }

  private static Geometry rectangle(double x0, double y0, double x1, double y1) {
    return Ground.FACTORY.toGeometry(new Envelope(x0, x1, y0, y1));
  }

  private static Tiling wallBetweenPonds(StandingCure.Kind kind, Warnings warnings) {
    Terrain plain = Ground.of(BOX, 20, 15, (x, y) -> 50);
    Geometry ponds = rectangle(12, 12, 25.75, 30).union(rectangle(26.25, 12, 40, 30));
    return build(
        plain,
        new Bands(List.of(1), List.of()),
        List.of(Ground.zone("pond", 4, null, ponds)),
        kind,
        warnings);
  }

  @Test
  void tell_leavesTheWall() {
    Tiling tiling = wallBetweenPonds(StandingCure.Kind.TELL, new Warnings());
    assertEquals(1, weak(tiling).size());
    assertEquals(0, tiling.curedMm2());
  }

  @Test
  void cut_givesTheWallToThePlyBelow() {
    Warnings warnings = new Warnings();
    Tiling tiling = wallBetweenPonds(StandingCure.Kind.CUT, warnings);
    assertEquals(List.of(), weak(tiling));
    assertEquals(0.5 * 18, tiling.curedMm2(), 0.3);
    assertEquals(28 * 18, tiling.exposed().get(4).getArea(), 0.3);
    assertTrue(
        warnings.list().stream()
            .anyMatch(w -> w.code().equals("merged") && w.message().contains("weak")),
        warnings.list().toString());
  }

  @Test
  void widen_movesTheWallOutToTheLeastWidth() {
    Tiling tiling = wallBetweenPonds(StandingCure.Kind.WIDEN, new Warnings());
    assertEquals(List.of(), weak(tiling));
    double wall = 28 * 18 - tiling.exposed().get(4).getArea();
    assertEquals(0.83 * 18, wall, 0.3);
  }

  @Test
  void widen_leavesALaneThatHasNothingToLose() {
    Terrain plain = Ground.of(BOX, 20, 15, (x, y) -> 50);
    Geometry lanes = rectangle(12, 12, 13.55, 30).union(rectangle(14.05, 12, 15.6, 30));
    Zone zone = Ground.zone("lane", 4, null, lanes);
    Bands bands = new Bands(List.of(1), List.of());
    Tiling tiling = build(plain, bands, List.of(zone), StandingCure.Kind.WIDEN, new Warnings());
    assertEquals(1, weak(tiling).size());
    assertEquals(lanes.getArea(), tiling.exposed().get(4).getArea(), 0.05);
  }

  @Test
  void cut_onSeededMaps_leavesNothingWeak() {
    for (long seed = 0; seed < 12; seed++) {
      Random random = new Random(seed);
      Terrain terrain = Ground.of(BOX, 40, 30, Ground.hills(seed, 12));
      Bands bands = Ground.equal(terrain, 4);
      List<Zone> zones =
          List.of(
              Ground.zone("river", 8, null, Ground.clutter(random, BOX, 5)),
              Ground.zone("lane", null, 2, Ground.clutter(random, BOX, 6)));
      Tiling tiling = build(terrain, bands, zones, StandingCure.Kind.CUT, new Warnings());
      assertEquals(List.of(), weak(tiling), "seed " + seed);
    }
  }
}
