package plyscape.zones.map;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/**
 * Geometries from coordinates. Rings that aren't closed are closed; rings with fewer than three
 * points and lines of one point are left out, as nothing can be drawn from them.
 */
public final class MapShapes {

  /** Makes all geometries of maps. */
  public static final GeometryFactory FACTORY = new GeometryFactory();

  private MapShapes() {}

  /** A line; empty with fewer than two points. */
  public static LineString line(Coordinate[] points) {
    return points.length < 2 ? FACTORY.createLineString() : FACTORY.createLineString(points);
  }

  /** Lines as one geometry. */
  public static Geometry lines(List<Coordinate[]> lines) {
    return lines.size() == 1
        ? line(lines.get(0))
        : FACTORY.createMultiLineString(
            lines.stream().map(MapShapes::line).toArray(LineString[]::new));
  }

  /** A polygon from its outer ring and holes; empty when the outer ring is none. */
  public static Polygon polygon(List<Coordinate[]> rings) {
    List<LinearRing> out = new ArrayList<>();
    for (int i = 0; i < rings.size(); i++) {
      LinearRing ring = ring(rings.get(i));
      if (ring != null) {
        out.add(ring);
      } else if (i == 0) {
        return FACTORY.createPolygon();
      }
    }
    return out.isEmpty()
        ? FACTORY.createPolygon()
        : FACTORY.createPolygon(out.get(0), out.subList(1, out.size()).toArray(new LinearRing[0]));
  }

  /** A closed ring, or null when nothing can be drawn from it. */
  public static LinearRing ring(Coordinate[] points) {
    Coordinate[] closed = points;
    if (points.length > 0 && !points[0].equals2D(points[points.length - 1])) {
      closed = Arrays.copyOf(points, points.length + 1);
      closed[points.length] = points[0].copy();
    }
    return closed.length >= 4 ? FACTORY.createLinearRing(closed) : null;
  }

  /** Geometries of any kinds as one. */
  public static Geometry collection(List<? extends Geometry> parts) {
    return FACTORY.createGeometryCollection(parts.toArray(new Geometry[0]));
  }
}
