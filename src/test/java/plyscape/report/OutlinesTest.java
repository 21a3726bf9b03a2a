package plyscape.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import plyscape.render.HandPlan;

/** The packed outlines are read back by a decoder of the test's own. */
class OutlinesTest {

  @Test
  void pack_isReadBackAsTheSameAreas() {
    var exposed = HandPlan.make().tiling().exposed();
    List<String> packed = Outlines.pack(exposed, 1000);
    assertEquals(exposed.size(), packed.size());
    int i = 0;
    for (MultiPolygon area : exposed.values()) {
      Geometry back = unpack(packed.get(i++));
      assertTrue(back.norm().equalsExact(area.norm(), 1e-9), back + " for " + area);
    }
  }

  @Test
  void pack_manyCorners_simplifiesNeighboursAlike() {
    GeometryFactory factory = new GeometryFactory();
    List<Coordinate> wave = new ArrayList<>();
    for (int i = 0; i <= 2000; i++) {
      wave.add(new Coordinate(i / 20.0, 50 + 10 * Math.sin(i / 100.0)));
    }
    List<Coordinate> low = new ArrayList<>(wave);
    low.addAll(List.of(new Coordinate(100, 0), new Coordinate(0, 0), wave.get(0)));
    List<Coordinate> high = new ArrayList<>(wave);
    high.addAll(List.of(new Coordinate(100, 100), new Coordinate(0, 100), wave.get(0)));
    var exposed = new TreeMap<Integer, MultiPolygon>();
    exposed.put(1, HandPlan.multi(factory.createPolygon(low.toArray(new Coordinate[0]))));
    exposed.put(2, HandPlan.multi(factory.createPolygon(high.toArray(new Coordinate[0]))));
    List<String> packed = Outlines.pack(exposed, 400);
    Geometry lower = unpack(packed.get(0));
    Geometry upper = unpack(packed.get(1));
    assertTrue(lower.getNumPoints() + upper.getNumPoints() <= 400);
    assertEquals(100 * 100, lower.getArea() + upper.getArea(), 1e-6, "no gap, no overlap");
    assertEquals(exposed.get(1).getArea(), lower.getArea(), 10, "about where they were");
  }

  private static Geometry unpack(String packed) {
    GeometryFactory factory = new GeometryFactory();
    byte[] bytes = Base64.getDecoder().decode(packed);
    int[] at = {0};
    long[] place = {0, 0};
    List<Polygon> polygons = new ArrayList<>();
    while (at[0] < bytes.length) {
      List<LinearRing> rings = new ArrayList<>();
      for (long left = number(bytes, at); left > 0; left--) {
        int corners = (int) number(bytes, at);
        Coordinate[] ring = new Coordinate[corners + 1];
        for (int i = 0; i < corners; i++) {
          place[0] += step(bytes, at);
          place[1] += step(bytes, at);
          ring[i] = new Coordinate(place[0] * Outlines.GRID_MM, place[1] * Outlines.GRID_MM);
        }
        ring[corners] = ring[0].copy();
        rings.add(factory.createLinearRing(ring));
      }
      polygons.add(
          factory.createPolygon(
              rings.get(0), rings.subList(1, rings.size()).toArray(new LinearRing[0])));
    }
    return factory.createMultiPolygon(polygons.toArray(new Polygon[0]));
  }

  private static long step(byte[] bytes, int[] at) {
    long n = number(bytes, at);
    return n % 2 == 1 ? -(n + 1) / 2 : n / 2;
  }

  private static long number(byte[] bytes, int[] at) {
    long value = 0;
    for (int shift = 0; ; shift += 7) {
      byte b = bytes[at[0]++];
      value |= (long) (b & 127) << shift;
      if (b >= 0) {
        return value;
      }
    }
  }
}
