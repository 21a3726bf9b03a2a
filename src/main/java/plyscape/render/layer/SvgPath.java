package plyscape.render.layer;

import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import plyscape.text.Numbers;

/**
 * SVG path data of a multipolygon: absolute M L H V Z, coordinates in mm rounded to 0.001, Y down.
 * Shells run one way and holes the other, so that even-odd and nonzero filling show the same.
 */
public final class SvgPath {

  private final StringBuilder out = new StringBuilder();
  private final double heightMm;

  private SvgPath(double heightMm) {
    this.heightMm = heightMm;
  }

  /** The data; {@code heightMm} is the panel's, at which Y down starts. Empty for an empty area. */
  public static String data(MultiPolygon area, double heightMm) {
    SvgPath path = new SvgPath(heightMm);
    for (int i = 0; i < area.getNumGeometries(); i++) {
      Polygon polygon = (Polygon) area.getGeometryN(i);
      path.ring(polygon.getExteriorRing(), true);
      for (int j = 0; j < polygon.getNumInteriorRing(); j++) {
        path.ring(polygon.getInteriorRingN(j), false);
      }
    }
    return path.out.toString();
  }

  private void ring(LineString ring, boolean counterClockwise) {
    CoordinateSequence points = ring.getCoordinateSequence();
    boolean reverse = Orientation.isCCW(points) != counterClockwise;
    int last = points.size() - 1;
    long beforeX = 0;
    long beforeY = 0;
    for (int i = 0; i < last; i++) {
      int at = reverse ? last - i : i;
      long x = Math.round(points.getX(at) * 1000);
      long y = Math.round((heightMm - points.getY(at)) * 1000);
      if (i == 0) {
        out.append(out.length() > 0 ? "\n" : "")
            .append('M')
            .append(text(x))
            .append(' ')
            .append(text(y));
      } else if (y == beforeY) {
        out.append('H').append(text(x));
      } else if (x == beforeX) {
        out.append('V').append(text(y));
      } else {
        out.append('L').append(text(x)).append(' ').append(text(y));
      }
      beforeX = x;
      beforeY = y;
    }
    out.append('Z');
  }

  private static String text(long thousandths) {
    return Numbers.trimmed(thousandths / 1000.0, 3);
  }
}
