package plyscape.render;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import plyscape.region.Tiling;

/**
 * Which ply shows along a straight line over the panel: the exact crossings of the line with the
 * regions' edges.
 *
 * @param spans in order, without overlap; where no span is, the border is
 */
record SectionLine(List<Span> spans) {

  /** A stretch of one ply, mm from the line's beginning. */
  record Span(double fromMm, double toMm, int plyNumber) {}

  /** The line from (x0, y0) to (x1, y1) in panel mm. */
  static SectionLine of(Tiling tiling, double x0, double y0, double x1, double y1) {
    double length = Math.hypot(x1 - x0, y1 - y0);
    if (!(length > 0)) {
      throw new IllegalArgumentException("a section needs two different points");
    }
    Ray ray = new Ray(x0, y0, (x1 - x0) / length, (y1 - y0) / length);
    List<Span> spans = new ArrayList<>();
    tiling
        .exposed()
        .forEach(
            (ply, area) -> {
              List<Double> at = ray.crossings(area);
              for (int k = 0; k + 1 < at.size(); k += 2) {
                double from = Math.max(at.get(k), 0);
                double to = Math.min(at.get(k + 1), length);
                if (to > from) {
                  spans.add(new Span(from, to, ply));
                }
              }
            });
    spans.sort(Comparator.comparingDouble(Span::fromMm));
    return new SectionLine(List.copyOf(spans));
  }

  /** The endless line through a point, with its direction as a unit vector. */
  private record Ray(double x, double y, double ux, double uy) {

    /** Where it crosses an area's edge, mm from the point, in order. */
    List<Double> crossings(MultiPolygon area) {
      List<Double> at = new ArrayList<>();
      for (int i = 0; i < area.getNumGeometries(); i++) {
        Polygon polygon = (Polygon) area.getGeometryN(i);
        cross(polygon.getExteriorRing(), at);
        for (int j = 0; j < polygon.getNumInteriorRing(); j++) {
          cross(polygon.getInteriorRingN(j), at);
        }
      }
      at.sort(null);
      return at;
    }

    /** A vertex on the line belongs to its left side, so that it counts once. */
    private void cross(LineString ring, List<Double> at) {
      Coordinate[] points = ring.getCoordinates();
      for (int i = 0; i + 1 < points.length; i++) {
        double side0 = ux * (points[i].y - y) - uy * (points[i].x - x);
        double side1 = ux * (points[i + 1].y - y) - uy * (points[i + 1].x - x);
        if (side0 >= 0 != side1 >= 0) {
          double t = side0 / (side0 - side1);
          double crossX = points[i].x + t * (points[i + 1].x - points[i].x);
          double crossY = points[i].y + t * (points[i + 1].y - points[i].y);
          at.add((crossX - x) * ux + (crossY - y) * uy);
        }
      }
    }
  }
}
