package plyscape.report;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.SortedMap;
import org.locationtech.jts.coverage.CoverageSimplifier;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;

/**
 * Outlines of the plies that show, packed for the page: on a grid of {@link #GRID_MM}, so that
 * neighbours still share their vertices. Base64 of numbers to the base of 128, low end first: for
 * each polygon how many rings, for each ring how many corners (the first isn't repeated), for each
 * corner the steps in X and Y from the one before, as 2n for n and 2n - 1 for -n. The first corner
 * of a ply starts at 0, 0.
 *
 * <p>Maps with more than {@link #MOST_CORNERS} corners are simplified, all outlines together, to
 * the least tolerance of a doubling row that brings them below it: the page must stay small, and a
 * screen shows no more.
 */
final class Outlines {

  /** A hundredth of a millimetre: a panel of half a metre is shown with fewer pixels. */
  static final double GRID_MM = 0.01;

  /** About 400 kB of the page. */
  static final int MOST_CORNERS = 120_000;

  private static final double FIRST_TOLERANCE_MM = 0.02;

  private Outlines() {}

  /** The packed outlines of all exposed parts, in ply order. */
  static List<String> pack(SortedMap<Integer, MultiPolygon> exposed, int mostCorners) {
    Geometry[] areas = exposed.values().toArray(new Geometry[0]);
    Geometry[] simple = areas;
    for (double tolerance = FIRST_TOLERANCE_MM; corners(simple) > mostCorners; tolerance *= 2) {
      simple = CoverageSimplifier.simplify(areas, tolerance);
    }
    List<String> packed = new ArrayList<>();
    for (Geometry area : simple) {
      packed.add(new Outlines.Packer().pack(area));
    }
    return packed;
  }

  private static int corners(Geometry[] areas) {
    int sum = 0;
    for (Geometry area : areas) {
      sum += area.getNumPoints();
    }
    return sum;
  }

  /** Packs one ply. */
  private static final class Packer {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private long x;
    private long y;

    String pack(Geometry area) {
      for (int i = 0; i < area.getNumGeometries(); i++) {
        if (area.getGeometryN(i) instanceof Polygon polygon && !polygon.isEmpty()) {
          number(out, 1 + polygon.getNumInteriorRing());
          ring(polygon.getExteriorRing());
          for (int k = 0; k < polygon.getNumInteriorRing(); k++) {
            ring(polygon.getInteriorRingN(k));
          }
        }
      }
      return Base64.getEncoder().encodeToString(out.toByteArray());
    }

    private void ring(LinearRing ring) {
      Coordinate[] corners = ring.getCoordinates();
      number(out, corners.length - 1L);
      for (int i = 0; i + 1 < corners.length; i++) {
        long nextX = Math.round(corners[i].x / GRID_MM);
        long nextY = Math.round(corners[i].y / GRID_MM);
        step(out, nextX - x);
        step(out, nextY - y);
        x = nextX;
        y = nextY;
      }
    }
  }

  /** Appends a step up or down. */
  static void step(ByteArrayOutputStream out, long step) {
    number(out, step >= 0 ? 2 * step : -2 * step - 1);
  }

  private static void number(ByteArrayOutputStream out, long value) {
    long rest = value;
    for (; rest > 127; rest >>= 7) {
      out.write((int) (rest & 127 | 128));
    }
    out.write((int) rest);
  }
}
