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
    Tiling tiling = TilingBuilder.build(terrain, bands, zones, 9, tool, area, new Warnings());
    TilingChecks.check(tiling, "test");
    TilingChecks.checkNesting(tiling, "test");
    return tiling;
  }

  private static Geometry rectangle(double x0, double y0, double x1, double y1) {
    return Ground.FACTORY.toGeometry(new Envelope(x0, x1, y0, y1));
  }

  @Test
  void seededTerrainsWithCrossingZones_tileAndNest() {
    for (long seed = 0; seed < 200; seed++) {
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
          TilingBuilder.build(terrain, bands, zones, 9, tool, random.nextDouble(), new Warnings());
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
   * Screen and tiles must find what looking at whole pockets finds; then the finished pockets have
   * nothing narrow left.
   */
  /**
   * Noise has so many walls that narrow parts are found on a raster; what is left must be the
   * tool's all the same.
   */
  @Test
  void crowdedPockets_tile_andKeepNothingNarrow() {
    Random random = new Random(17);
    Box box = new Box(5, 5, 65, 55);
    Terrain terrain = Ground.of(box, 64, 53, (x, y) -> random.nextDouble());
    Tiling exact =
        TilingBuilder.build(
            terrain, Ground.equal(terrain, 6), List.of(), 6, 3, 1, Integer.MAX_VALUE);
    Tiling raster = TilingBuilder.build(terrain, Ground.equal(terrain, 6), List.of(), 6, 3, 1, 0);
    TilingChecks.check(raster, "crowded");
    TilingChecks.checkNesting(raster, "crowded");
    double narrow = narrowMm2(raster);
    double narrowExact = narrowMm2(exact);
    double whole = raster.pockets().values().stream().mapToDouble(Geometry::getArea).sum();
    double wholeExact = exact.pockets().values().stream().mapToDouble(Geometry::getArea).sum();
    assertTrue(narrow < 0.005 * whole + narrowExact, narrow + " mm2 that the tool can't reach");
    // Which of the crumbs go first decides what goes next: on noise the raster gives away some 7 %
    // more (measured).
    assertEquals(wholeExact, whole, 0.1 * wholeExact);
  }

  /** Of all pockets what a tool of 3 mm can't reach, fillets left out. */
  private static double narrowMm2(Tiling tiling) {
    double narrow = 0;
    for (Geometry pocket : tiling.pockets().tailMap(2).values()) {
      Geometry rest = pocket.difference(pocket.buffer(-1.5, 16).buffer(1.52, 16));
      for (int i = 0; i < rest.getNumGeometries(); i++) {
        double area = rest.getGeometryN(i).getArea();
        narrow += area > 1 ? area : 0;
      }
    }
    return narrow;
  }

  @Test
  void screenedPockets_areTheSame_andKeepNothingNarrow() {
    Terrain terrain = Ground.of(BOX, 200, 150, Ground.hills(11, 6));
    List<Zone> zones =
        List.of(Ground.zone("lane", 7, null, Ground.clutter(new Random(3), BOX, 60)));
    Tiling whole = build(terrain, Ground.equal(terrain, 5), zones, 1, 0.5);
    Tiling tiles = TilingBuilder.build(terrain, Ground.equal(terrain, 5), zones, 9, 1, 0.5, 0);
    TilingChecks.check(tiles, "tiles");
    assertTrue(tiles.merged().stream().anyMatch(m -> m.why().equals("too narrow")));
    double narrow = 0;
    double differs = 0;
    for (int k = 2; k <= tiles.pockets().lastKey(); k++) {
      Geometry pocket = tiles.pockets().get(k);
      differs += pocket.symDifference(whole.pockets().get(k)).getArea();
      Geometry rest = pocket.difference(pocket.buffer(-0.5, 16).buffer(0.52, 16));
      for (int i = 0; i < rest.getNumGeometries(); i++) {
        double area = rest.getGeometryN(i).getArea();
        narrow += area > 0.5 ? area : 0;
      }
    }
    assertTrue(differs < 0.002 * BOX.area(), differs + " mm2 differ");
    assertTrue(narrow < 0.002 * BOX.area(), narrow + " mm2 that the tool can't reach");
  }
}
