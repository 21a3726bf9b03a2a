package plyscape.render;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import plyscape.region.Tiling;

/**
 * Which ply shows along a straight line over the panel: the exact crossings of the line with the
 * regions' edges.
 *
 * @param lengthMm of the line
 * @param spans in order, without overlap; where no span is, the border is
 */
record SectionLine(double lengthMm, List<Span> spans) {

  /** A stretch of one ply, mm from the line's beginning. */
  record Span(double fromMm, double toMm, int plyNumber) {}

  /** The line from (x0, y0) to (x1, y1) in panel mm. */
  static SectionLine of(Tiling tiling, double x0, double y0, double x1, double y1) {
    double length = Math.hypot(x1 - x0, y1 - y0);
    if (!(length > 0)) {
      throw new IllegalArgumentException("a section needs two different points");
    }
    List<Span> spans = new ArrayList<>();
    for (Map.Entry<Integer, MultiPolygon> e : tiling.exposed().entrySet()) {
      List<Double> at = new ArrayList<>();
      MultiPolygon area = e.getValue();
      for (int i = 0; i < area.getNumGeometries(); i++) {
        Polygon polygon = (Polygon) area.getGeometryN(i);
        cross(polygon.getExteriorRing(), x0, y0, x1, y1, length, at);
        for (int j = 0; j < polygon.getNumInteriorRing(); j++) {
          cross(polygon.getInteriorRingN(j), x0, y0, x1, y1, length, at);
        }
      }
      at.sort(null);
      for (int k = 0; k + 1 < at.size(); k += 2) {
        double from = Math.max(at.get(k), 0);
        double to = Math.min(at.get(k + 1), length);
        if (to > from) {
          spans.add(new Span(from, to, e.getKey()));
        }
      }
    }
    spans.sort(Comparator.comparingDouble(Span::fromMm));
    return new SectionLine(length, List.copyOf(spans));
  }

  /**
   * Crossings of a ring with the endless line; a vertex on the line belongs to its left side, so
   * that it counts once.
   */
  private static void cross(
      LineString ring, double x0, double y0, double x1, double y1, double length, List<Double> at) {
    double ux = (x1 - x0) / length;
    double uy = (y1 - y0) / length;
    Coordinate[] points = ring.getCoordinates();
    for (int i = 0; i + 1 < points.length; i++) {
      double side0 = ux * (points[i].y - y0) - uy * (points[i].x - x0);
      double side1 = ux * (points[i + 1].y - y0) - uy * (points[i + 1].x - x0);
      if (side0 >= 0 != side1 >= 0) {
        double t = side0 / (side0 - side1);
        double x = points[i].x + t * (points[i + 1].x - points[i].x);
        double y = points[i].y + t * (points[i + 1].y - points[i].y);
        at.add((x - x0) * ux + (y - y0) * uy);
      }
    }
  }
}
