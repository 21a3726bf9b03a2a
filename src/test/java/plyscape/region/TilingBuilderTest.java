package plyscape.region;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import plyscape.bands.Bands;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.terrain.Terrain;
import plyscape.zones.Zone;

class TilingBuilderTest {

  private static final Box BOX = new Box(6, 6, 46, 36);

  private static Tiling build(
      Terrain terrain, Bands bands, List<Zone> zones, double tool, double area) {
    Tiling tiling =
        TilingBuilder.build(
            terrain, bands, zones, new TilingRules(9, tool, area, null), new Warnings());
    TilingChecks.check(tiling, "test");
    TilingChecks.checkNesting(tiling, "test");
    return tiling;
  }

  private static Geometry rectangle(double x0, double y0, double x1, double y1) {
    return Ground.FACTORY.toGeometry(new Envelope(x0, x1, y0, y1));
  }

  @Test
  void seededTerrainsWithCrossingZones_tileAndNest() {
    for (long seed = 0; seed < 120; seed++) {
      Random random = new Random(seed);
      Box box = new Box(6, 6, 6 + 8 + random.nextInt(12), 6 + 8 + random.nextInt(12));
      Terrain terrain =
          Ground.of(
              box,
              8 + random.nextInt(40),
              8 + random.nextInt(40),
              Ground.hills(seed, 6 + random.nextInt(20)));
      Bands bands = Ground.equal(terrain, 2 + random.nextInt(7));
      List<Zone> zones =
          List.of(
              Ground.zone("wood", 4, null, Ground.clutter(random, box, random.nextInt(6))),
              Ground.zone("river", 9, null, Ground.clutter(random, box, random.nextInt(4))),
              Ground.zone(
                  "lane",
                  null,
                  1 + random.nextInt(2),
                  Ground.clutter(random, box, random.nextInt(6))));
      double tool = random.nextInt(3);
      Tiling tiling =
          TilingBuilder.build(
              terrain,
              bands,
              zones,
              new TilingRules(9, tool, random.nextDouble(), null),
              new Warnings());
      TilingChecks.check(tiling, "seed " + seed);
      TilingChecks.checkNesting(tiling, "seed " + seed);
    }
  }

  @Test
  void whiteNoise_tiles() {
    Random random = new Random(1);
    Terrain terrain = Ground.of(BOX, 60, 45, (x, y) -> random.nextInt(6));
    build(terrain, new Bands(List.of(1, 2, 3, 4), List.of(4.0, 3.0, 2.0)), List.of(), 1, 0.5);
    build(terrain, new Bands(List.of(1, 2, 3, 4), List.of(4.0, 3.0, 2.0)), List.of(), 0, 0);
  }

  /** Closed form: the contour of a cone is a circle. */
  @Test
  void cone_ringsHaveTheAreaOfCircles() {
    Terrain cone = Ground.of(BOX, 200, 150, (x, y) -> 100 - Math.hypot(x - 26, y - 21));
    Tiling tiling = build(cone, new Bands(List.of(2, 4, 5), List.of(95.0, 88.0)), List.of(), 1, 1);
    assertEquals(Math.PI * 25, tiling.exposed().get(2).getArea(), 0.005 * Math.PI * 25);
    assertEquals(Math.PI * (144 - 25), tiling.exposed().get(4).getArea(), 0.005 * Math.PI * 119);
    assertEquals(List.of(1, 2, 3, 4, 5), List.copyOf(tiling.pockets().keySet()));
    assertEquals(1, TilingChecks.onlyShownPolygon(tiling, 5).getNumInteriorRing());
    for (Coordinate c : tiling.exposed().get(2).getCoordinates()) {
      assertEquals(5, Math.hypot(c.x - 26, c.y - 21), 0.06, "a staircase at " + c);
    }
  }

  /**
   * Bilinear refinement: a coarse saddle's contour is the hyperbola itself, not a chord across a 4
   * mm cell.
   */
  @Test
  void coarseSaddle_followsTheHyperbola() {
    Terrain saddle = Ground.of(BOX, 10, 8, (x, y) -> (x - 26) * (y - 21));
    Tiling tiling = build(saddle, new Bands(List.of(1, 2), List.of(12.0)), List.of(), 0, 0);
    for (Coordinate c : tiling.exposed().get(1).getCoordinates()) {
      if (c.x > 8.01 && c.x < 43.99 && c.y > 7.9 && c.y < 34.1) {
        double slope = Math.hypot(c.x - 26, c.y - 21);
        assertEquals(0, ((c.x - 26) * (c.y - 21) - 12) / slope, 0.02, "off the hyperbola at " + c);
      }
    }
  }

  @Test
  void valueOnABreak_goesToTheUpperPly() {
    Terrain step = Ground.of(BOX, 40, 30, (x, y) -> x < 26 ? 10 : 5);
    Bands bands = new Bands(List.of(1, 2), List.of(10.0));
    Tiling tiling = build(step, bands, List.of(), 0, 0);
    // The last column of tens has its centre half a cell west of the step.
    assertEquals((25.5 - 6) * 30, tiling.exposed().get(1).getArea(), 1e-6);
    Terrain flat = Ground.of(BOX, 40, 30, (x, y) -> 10);
    assertEquals(List.of(1), List.copyOf(build(flat, bands, List.of(), 1, 1).exposed().keySet()));
  }

  @Test
  void laterZoneOverEarlier_andSinkCountsFromTheTerrain() {
    Terrain step = Ground.of(BOX, 40, 30, (x, y) -> x < 26 ? 10 : 5);
    Bands bands = new Bands(List.of(1, 4), List.of(7.5));
    Tiling tiling =
        build(
            step,
            bands,
            List.of(
                Ground.zone("wood", 6, null, rectangle(10, 10, 40, 20)),
                Ground.zone("lane", null, 2, rectangle(15, 8, 35, 15)),
                Ground.zone("abyss", null, 7, rectangle(38, 30, 44, 34))),
            0,
            0);
    assertEquals(
        30 * 10 - 20 * 5,
        tiling.exposed().get(6).getArea() - 9 * 7,
        1e-6 * 1200,
        "wood, and lane in 4");
    assertEquals(11 * 7, tiling.exposed().get(3).getArea(), 1e-6 * 1200);
    assertEquals(6 * 4, tiling.exposed().get(9).getArea(), 1e-6 * 1200);
  }

  @Test
  void smallRegion_goesToTheNeighbourWithTheLongestLine() {
    Terrain flat = Ground.of(BOX, 40, 30, (x, y) -> x < 26 ? 10 : 5);
    Bands bands = new Bands(List.of(1, 2), List.of(7.5));
    Tiling tiling =
        build(
            flat,
            bands,
            List.of(Ground.zone("hut", 5, null, rectangle(25.8, 20, 26.6, 20.8))),
            0,
            1);
    assertEquals(List.of(1, 2), List.copyOf(tiling.exposed().keySet()));
    assertEquals(1, tiling.merged().size());
    Tiling.Merged hut = tiling.merged().get(0);
    assertEquals("too small", hut.why());
    assertEquals("hut", hut.source());
    assertEquals(5, hut.fromPly());
    assertEquals(2, hut.toPly());
    assertEquals(1, hut.count());
    assertEquals(0.64, hut.areaMm2(), 1e-9);
  }

  @Test
  void narrowStream_goes_wideLakeStays_narrowRidgeStays() {
    Terrain flat = Ground.of(BOX, 40, 30, (x, y) -> 10);
    Bands bands = new Bands(List.of(3), List.of());
    Geometry lakeAndStream = rectangle(10, 10, 20, 20).union(rectangle(20, 14.5, 40, 15.5));
    Tiling tiling =
        build(
            flat,
            bands,
            List.of(
                Ground.zone("water", 7, null, lakeAndStream),
                Ground.zone("wall", 1, null, rectangle(8, 30, 44, 30.5))),
            2,
            1);
    Polygon lake = TilingChecks.onlyShownPolygon(tiling, 7);
    assertEquals(100, lake.getArea(), 1.0);
    assertTrue(lake.getEnvelopeInternal().getMaxX() < 20.6, "the stream is cut back to the lake");
    assertEquals(18, tiling.exposed().get(1).getArea(), 1e-6 * 1200);
    Tiling.Merged stream = tiling.merged().get(0);
    assertEquals("too narrow", stream.why());
    assertEquals("water", stream.source());
    assertEquals(7, stream.fromPly());
    assertEquals(3, stream.toPly());
    assertEquals(20, stream.areaMm2(), 1.0);
  }

  @Test
  void islandInALakeOnAnIsland_keepsAll() {
    Terrain flat = Ground.of(BOX, 40, 30, (x, y) -> 10);
    Tiling tiling =
        build(
            flat,
            new Bands(List.of(3), List.of()),
            List.of(
                Ground.zone("sea", 8, null, rectangle(6, 6, 46, 36)),
                Ground.zone("island", 2, null, rectangle(10, 10, 40, 30)),
                Ground.zone("lake", 8, null, rectangle(15, 15, 30, 25)),
                Ground.zone("islet", 2, null, rectangle(20, 18, 24, 22))),
            2,
            1);
    assertEquals(2, tiling.exposed().get(8).getNumGeometries());
    assertEquals(2, tiling.exposed().get(2).getNumGeometries());
    assertEquals(4, tiling.regions().size());
    assertFalse(tiling.exposed().containsKey(3));
  }

  @Test
  void sameInput_sameTiling() {
    Terrain terrain = Ground.of(BOX, 80, 60, Ground.hills(5, 20));
    Bands bands = Ground.equal(terrain, 6);
    List<Zone> zones = List.of(Ground.zone("a", 5, null, Ground.clutter(new Random(2), BOX, 8)));
    String first = text(build(terrain, bands, zones, 2, 1));
    assertEquals(first, text(build(terrain, bands, zones, 2, 1)));
  }

  private static String text(Tiling tiling) {
    return tiling.regions() + " " + tiling.pockets() + " " + tiling.merged();
  }

  /**
   * Necks, arms and pockets narrower than the tool must have gone from every pocket, looked at by
   * JTS's buffers and not by the code that cut them; and no more may have gone than was narrow.
   */
  @Test
  void finishedPockets_keepNothingNarrow() {
    Random random = new Random(17);
    Box noiseBox = new Box(5, 5, 65, 55);
    Terrain noise = Ground.of(noiseBox, 64, 53, (x, y) -> random.nextDouble());
    Tiling crowded =
        TilingBuilder.build(
            noise,
            Ground.equal(noise, 6),
            List.of(),
            new TilingRules(6, 3, 1, null),
            new Warnings());
    TilingChecks.check(crowded, "crowded");
    TilingChecks.checkNesting(crowded, "crowded");
    // Crumbs that go to a deeper neighbour after its pocket was looked at can make new narrow
    // parts.
    double whole = crowded.pockets().values().stream().mapToDouble(Geometry::getArea).sum();
    assertEquals(0, narrowMm2(crowded, 3, 1), 0.001 * whole);

    Terrain terrain = Ground.of(BOX, 200, 150, Ground.hills(11, 6));
    List<Zone> zones =
        List.of(Ground.zone("lane", 7, null, Ground.clutter(new Random(3), BOX, 60)));
    Tiling lanes = build(terrain, Ground.equal(terrain, 5), zones, 1, 0.5);
    assertTrue(lanes.merged().stream().anyMatch(m -> m.why().equals("too narrow")));
    assertEquals(0, narrowMm2(lanes, 1, 0.5), 0.6);
  }

  /** Of all pockets what a tool can't reach, fillets left out, mm2. */
  private static double narrowMm2(Tiling tiling, double toolMm, double leastMm2) {
    double narrow = 0;
    for (Geometry pocket : tiling.pockets().tailMap(2).values()) {
      Geometry rest =
          pocket.difference(pocket.buffer(-toolMm / 2, 24).buffer(toolMm / 2 + 0.02, 24));
      for (int i = 0; i < rest.getNumGeometries(); i++) {
        double area = rest.getGeometryN(i).getArea();
        narrow += area > leastMm2 ? area : 0;
      }
    }
    return narrow;
  }

  /** The deepest pocket loses exactly what isn't in its opening, worked out by JTS. */
  @Test
  void deepestPocket_losesItsNarrowParts() {
    Terrain flat = Ground.of(BOX, 40, 30, (x, y) -> 10);
    for (long seed = 0; seed < 20; seed++) {
      Geometry drawn = Ground.clutter(new Random(seed), BOX, 6);
      List<Zone> zones = List.of(Ground.zone("water", 7, null, drawn));
      Bands bands = new Bands(List.of(3), List.of());
      Geometry before = pocket(build(flat, bands, zones, 0, 0.3));
      Geometry after = pocket(build(flat, bands, zones, 2, 0.3));
      Geometry opening = before.buffer(-1, 24).buffer(1.012, 24).intersection(before);
      Geometry kept = before.difference(opening);
      double fillets = 0;
      for (int i = 0; i < kept.getNumGeometries(); i++) {
        double area = kept.getGeometryN(i).getArea();
        fillets += area <= 0.3 ? area : 0;
      }
      double expected = opening.getArea() + fillets;
      assertEquals(expected, after.getArea(), 0.02 + 0.004 * opening.getLength(), "seed " + seed);
      assertTrue(after.difference(before).getArea() < 0.003 * before.getLength(), "seed " + seed);
    }
  }

  private static Geometry pocket(Tiling tiling) {
    Geometry shown = tiling.exposed().get(7);
    return shown == null ? Ground.FACTORY.createPolygon() : shown;
  }
}
