package plyscape.region;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import plyscape.bands.Bands;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.terrain.Terrain;
import plyscape.zones.Zone;

/**
 * Seams of landscapes over several panels; the cut is checked by JTS's validators and overlay,
 * which it doesn't use.
 */
class TileCutterTest {

  private static Tiling ground(long seed, Box box) {
    Random random = new Random(seed);
    Terrain terrain =
        Ground.of(
            box,
            12 + random.nextInt(40),
            12 + random.nextInt(40),
            Ground.hills(seed, 8 + random.nextInt(20)));
    Bands bands = Ground.equal(terrain, 2 + random.nextInt(7));
    List<Zone> zones =
        List.of(
            Ground.zone("river", 9, null, Ground.clutter(random, box, random.nextInt(5))),
            Ground.zone("lane", null, 1, Ground.clutter(random, box, random.nextInt(5))));
    return TilingBuilder.build(
        terrain, bands, zones, new TilingRules(9, random.nextInt(2), 0.5, null), new Warnings());
  }

  /**
   * Where a ply's polygons run along a line X = x (or Y = y), as pairs of numbers of 0.001 mm,
   * pieces sorted.
   */
  private static SortedSet<String> along(Tiling tiling, boolean vertical, double at, double shift) {
    SortedSet<String> pieces = new TreeSet<>();
    for (Map.Entry<Integer, MultiPolygon> shown : tiling.exposed().entrySet()) {
      for (LineString ring : rings(shown.getValue())) {
        Coordinate[] c = ring.getCoordinates();
        for (int i = 1; i < c.length; i++) {
          double a = vertical ? c[i - 1].x : c[i - 1].y;
          double b = vertical ? c[i].x : c[i].y;
          if (a == at && b == at) {
            long from = Math.round(1000 * ((vertical ? c[i - 1].y : c[i - 1].x) + shift));
            long to = Math.round(1000 * ((vertical ? c[i].y : c[i].x) + shift));
            pieces.add(Math.min(from, to) + " to " + Math.max(from, to));
          }
        }
      }
    }
    return pieces;
  }

  private static List<LineString> rings(MultiPolygon shape) {
    List<LineString> rings = new ArrayList<>();
    for (int i = 0; i < shape.getNumGeometries(); i++) {
      Polygon polygon = (Polygon) shape.getGeometryN(i);
      rings.add(polygon.getExteriorRing());
      for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
        rings.add(polygon.getInteriorRingN(h));
      }
    }
    return rings;
  }

  /**
   * Both sides of every seam have the same vertices; every tile is a tiling; each ply's area is the
   * whole's.
   */
  @Test
  void seededGround_seamsAgree_tilesTile_areasAddUp() {
    int shared = 0;
    for (long seed = 0; seed < 40; seed++) {
      Random random = new Random(1000 + seed);
      int columns = 1 + random.nextInt(3);
      int rows = 1 + random.nextInt(3);
      double w = (12000 + random.nextInt(9000)) / 1000.0;
      double h = (12000 + random.nextInt(9000)) / 1000.0;
      Tiling whole =
          ground(
              seed,
              new Box(
                  3,
                  2.5,
                  Math.rint(1000 * (columns * w - 3)) / 1000,
                  Math.rint(1000 * (rows * h - 2.5)) / 1000));
      TileCutter cutter = new TileCutter(whole, w, h, columns, rows);
      Tiling[][] tiles = new Tiling[columns][rows];
      TreeMap<Integer, Double> areas = new TreeMap<>();
      for (int c = 0; c < columns; c++) {
        for (int r = 0; r < rows; r++) {
          String hint = "seed " + seed + ", column " + c + ", row " + r;
          tiles[c][r] = cutter.tile(c, r);
          TilingChecks.check(tiles[c][r], hint);
          TilingChecks.checkNesting(tiles[c][r], hint);
          tiles[c][r]
              .exposed()
              .forEach((ply, shape) -> areas.merge(ply, shape.getArea(), Double::sum));
        }
      }
      String hint = "seed " + seed;
      assertEquals(whole.exposed().keySet(), areas.keySet(), hint);
      // An outline of a few mm between its nodes that is moved by half a thousandth loses some
      // 0.002 mm2.
      whole
          .exposed()
          .forEach(
              (ply, shape) ->
                  assertEquals(
                      shape.getArea(),
                      areas.get(ply),
                      1e-4 * whole.carved().area(),
                      hint + ", ply " + ply));
      assertEquals(
          whole.carved().area(),
          areas.values().stream().mapToDouble(a -> a).sum(),
          1e-6 * whole.carved().area(),
          hint);
      for (int c = 0; c < columns; c++) {
        for (int r = 0; r < rows; r++) {
          if (c > 0) {
            SortedSet<String> left = along(tiles[c - 1][r], true, w, 0);
            assertEquals(left, along(tiles[c][r], true, 0, 0), hint);
            assertFalse(left.isEmpty(), hint);
            shared += left.size();
          }
          if (r > 0) {
            assertEquals(
                along(tiles[c][r - 1], false, h, 0), along(tiles[c][r], false, 0, 0), hint);
          }
        }
      }
    }
    assertTrue(shared > 300, "only " + shared + " pieces on seams");
  }

  /**
   * What JTS's overlay cuts out of the whole with the panel's box is what the tile holds, moved.
   */
  @Test
  void tile_isTheWholesPart() {
    Tiling whole = ground(7, new Box(3, 3, 57, 37));
    TileCutter cutter = new TileCutter(whole, 30, 20, 2, 2);
    Tiling tile = cutter.tile(1, 1);
    assertEquals(new Box(0, 0, 27, 17), tile.carved());
    assertEquals(new Box(30, 20, 57, 37), cutter.part(1, 1));
    AffineTransformation back = AffineTransformation.translationInstance(30, 20);
    tile.exposed()
        .forEach(
            (ply, shape) -> {
              org.locationtech.jts.geom.Geometry cut =
                  OverlayNGRobust.overlay(
                      whole.exposed().get(ply),
                      Ground.FACTORY.toGeometry(
                          new org.locationtech.jts.geom.Envelope(30, 57, 20, 37)),
                      OverlayNG.INTERSECTION);
              double differs =
                  OverlayNGRobust.overlay(cut, back.transform(shape), OverlayNG.SYMDIFFERENCE)
                      .getArea();
              assertEquals(0, differs, 0.001 * cut.getLength(), "ply " + ply);
            });
  }

  @Test
  void onePanel_isTheSameTiling() {
    Tiling whole = ground(3, new Box(3, 3, 37, 27));
    Tiling same = new TileCutter(whole, 40, 30, 1, 1).tile(0, 0);
    assertEquals(whole.carved(), same.carved());
    assertEquals(whole.exposed().keySet(), same.exposed().keySet());
    whole
        .exposed()
        .forEach(
            (ply, shape) -> assertTrue(shape.equalsTopo(same.exposed().get(ply)), "ply " + ply));
    whole
        .pockets()
        .forEach(
            (ply, shape) -> assertEquals(shape.getArea(), same.pockets().get(ply).getArea(), 1e-9));
    assertEquals(whole.regions().size(), same.regions().size());
  }

  @Test
  void panelsBeyondTheLandscape_areSaidToBeBare() {
    Tiling whole = ground(3, new Box(42, 3, 78, 27));
    TileCutter cutter = new TileCutter(whole, 40, 30, 3, 1);
    assertNull(cutter.part(0, 0));
    assertEquals(new Box(42, 3, 78, 27), cutter.part(1, 0));
    assertEquals(new Box(2, 3, 38, 27), cutter.tile(1, 0).carved());
  }
}
