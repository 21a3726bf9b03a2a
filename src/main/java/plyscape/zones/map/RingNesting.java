package plyscape.zones.map;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.locationtech.jts.algorithm.Area;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.GeometryFixer;

/**
 * Which of several closed rings lies within which others: outlines at even depths, holes at odd
 * ones, whatever the file calls them. Rings may touch, also along lines; of rings that are the same
 * the first counts. Exact for rings that don't cross; where they do, each is judged by one of its
 * points. Time grows with the square of the number of rings, by a comparison of boxes each.
 */
public final class RingNesting {

  private final List<LinearRing> rings = new ArrayList<>();
  private final IndexedPointInAreaLocator[] locators;
  private final int[] depths;
  private final int[] parents;

  /**
   * Nests them.
   *
   * @param outlines closed, at least four points each, the last the first
   */
  public RingNesting(List<Coordinate[]> outlines) {
    outlines.forEach(points -> rings.add(MapShapes.FACTORY.createLinearRing(points)));
    locators = new IndexedPointInAreaLocator[rings.size()];
    depths = new int[rings.size()];
    parents = new int[rings.size()];
    double[] areas = outlines.stream().mapToDouble(Area::ofRing).toArray();
    int[] falling =
        IntStream.range(0, areas.length)
            .boxed()
            .sorted(Comparator.comparingDouble((Integer i) -> -areas[i]))
            .mapToInt(i -> i)
            .toArray();
    for (int n = 0; n < falling.length; n++) {
      nest(falling[n], Arrays.copyOf(falling, n));
    }
  }

  /** Counts the larger rings around one; the smallest of them comes last. */
  private void nest(int ring, int[] larger) {
    parents[ring] = -1;
    for (int other : larger) {
      if (depths[other] >= 0
          && rings.get(other).getEnvelopeInternal().covers(rings.get(ring).getEnvelopeInternal())) {
        int where = where(ring, other);
        if (where == Location.BOUNDARY) {
          depths[ring] = -1;
          return;
        }
        if (where == Location.INTERIOR) {
          depths[ring]++;
          parents[ring] = other;
        }
      }
    }
  }

  /** Where a ring lies in another by its first point off the other's line; on it if none is off. */
  private int where(int ring, int other) {
    if (locators[other] == null) {
      Polygon area = MapShapes.FACTORY.createPolygon(rings.get(other));
      locators[other] = new IndexedPointInAreaLocator(area);
    }
    Coordinate[] points = rings.get(ring).getCoordinates();
    for (Coordinate point : points) {
      int at = locators[other].locate(point);
      if (at != Location.BOUNDARY) {
        return at;
      }
    }
    for (int i = 1; i < points.length; i++) {
      Coordinate middle =
          new Coordinate((points[i - 1].x + points[i].x) / 2, (points[i - 1].y + points[i].y) / 2);
      int at = locators[other].locate(middle);
      if (at != Location.BOUNDARY) {
        return at;
      }
    }
    return Location.BOUNDARY;
  }

  /** How many rings lie around one, or -1 for a ring that is the same as an earlier one. */
  public int depth(int ring) {
    return depths[ring];
  }

  /** The area between outlines and holes. */
  public Geometry area() {
    return area(ring -> true);
  }

  /**
   * The same without some outlines and the holes in them.
   *
   * @param kept whether the outline of that number counts
   */
  public Geometry area(IntPredicate kept) {
    List<List<LinearRing>> holes = new ArrayList<>();
    rings.forEach(ring -> holes.add(new ArrayList<>()));
    for (int i = 0; i < depths.length; i++) {
      if (depths[i] > 0 && depths[i] % 2 == 1) {
        holes.get(parents[i]).add(rings.get(i));
      }
    }
    List<Polygon> out = new ArrayList<>();
    for (int i = 0; i < depths.length; i++) {
      if (depths[i] >= 0 && depths[i] % 2 == 0 && kept.test(i)) {
        LinearRing[] inside = holes.get(i).toArray(new LinearRing[0]);
        out.add(MapShapes.FACTORY.createPolygon(rings.get(i), inside));
      }
    }
    return out.size() == 1
        ? merged(out.get(0))
        : MapShapes.collection(out.stream().map(RingNesting::merged).toList());
  }

  /** Holes that touch along a line become one. */
  private static Geometry merged(Polygon polygon) {
    boolean touching = polygon.getNumInteriorRing() > 0 && !polygon.isValid();
    return touching && MapRepair.crossings(polygon) <= MapRepair.MOST_CROSSINGS
        ? GeometryFixer.fix(polygon)
        : polygon;
  }
}
