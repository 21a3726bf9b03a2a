package plyscape.lettering;

import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import plyscape.text.Numbers;

/** Scale bar and north arrow, as wide as a cutter needs. */
public final class MapSigns {

  private static final GeometryFactory MM = new GeometryFactory();

  private MapSigns() {}

  /**
   * A bar with ticks at its ends and its middle and the ground's length over it, its lower left
   * corner at the origin.
   *
   * @param lengthMm of the ground's length on the panel
   * @param lengthM on the ground
   * @param strokeMm thickness of bar and ticks
   * @param heightMm of the capitals of its label
   */
  public static Geometry scaleBar(
      double lengthMm, double lengthM, double strokeMm, Typeface face, double heightMm) {
    double tick = 2 * strokeMm;
    Geometry bar =
        UnaryUnionOp.union(
            List.of(
                box(0, 0, lengthMm, strokeMm),
                box(0, 0, strokeMm, tick),
                box(lengthMm / 2 - strokeMm / 2, 0, lengthMm / 2 + strokeMm / 2, tick),
                box(lengthMm - strokeMm, 0, lengthMm, tick)));
    Placing above = new Placing(lengthMm / 2, tick + 1.5 * strokeMm, Align.CENTRE, 0);
    Geometry all = bar.union(above.of(face.line(label(lengthM), heightMm)));
    // A long label stands out over a short bar on both sides.
    double left = Math.min(0, all.getEnvelopeInternal().getMinX());
    return new Placing(-left, 0, Align.LEFT, 0).of(all);
  }

  /** A ground length in words, such as 500 m or 2.5 km. */
  static String label(double lengthM) {
    return lengthM >= 1000
        ? Numbers.trimmed(lengthM / 1000, 3) + " km"
        : Numbers.trimmed(lengthM, 1) + " m";
  }

  /**
   * An arrow to the north under the letter N, standing on the origin.
   *
   * @param heightMm of both together
   * @param northDegrees direction of north, counter-clockwise from the panel's Y
   */
  public static Geometry northArrow(double heightMm, Typeface face, double northDegrees) {
    double head = 0.62 * heightMm;
    Polygon arrow =
        MM.createPolygon(
            new Coordinate[] {
              new Coordinate(-0.24 * heightMm, 0),
              new Coordinate(0, 0.15 * heightMm),
              new Coordinate(0.24 * heightMm, 0),
              new Coordinate(0, head),
              new Coordinate(-0.24 * heightMm, 0)
            });
    Geometry letter =
        new Placing(0, 0.7 * heightMm, Align.CENTRE, 0).of(face.line("N", 0.3 * heightMm));
    return new Placing(0, 0, Align.LEFT, northDegrees).of(arrow.union(letter));
  }

  private static Geometry box(double x0, double y0, double x1, double y1) {
    return MM.createPolygon(
        new Coordinate[] {
          new Coordinate(x0, y0),
          new Coordinate(x1, y0),
          new Coordinate(x1, y1),
          new Coordinate(x0, y1),
          new Coordinate(x0, y0)
        });
  }
}
