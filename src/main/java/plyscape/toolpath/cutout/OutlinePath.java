package plyscape.toolpath.cutout;

import java.util.Arrays;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.simplify.DouglasPeuckerSimplifier;

/**
 * The way of a cutter's centre around a piece, closed, with lengths along it. Immutable.
 *
 * @param x points, mm; the last is the first
 * @param y as many
 * @param at length from the first point to each, mm
 */
record OutlinePath(double[] x, double[] y, double[] at) {

  /** Chords of rounded corners lie within this of the circle, mm. */
  private static final double CHORD_MM = 0.002;

  /**
   * Outside a piece.
   *
   * @param piece without holes
   * @param offMm of the cutter's centre from the line
   * @param clockwise seen from above; else counter-clockwise
   */
  static OutlinePath around(Polygon piece, double offMm, boolean clockwise) {
    int quadrant = (int) Math.max(8, Math.ceil(Math.PI / 4 / Math.acos(1 - CHORD_MM / offMm)));
    Polygon grown =
        (Polygon) piece.getFactory().createPolygon(piece.getExteriorRing()).buffer(offMm, quadrant);
    LinearRing ring =
        ((Polygon) DouglasPeuckerSimplifier.simplify(grown, CHORD_MM / 4)).getExteriorRing();
    Coordinate[] points = ring.getCoordinates();
    if (Orientation.isCCW(points) == clockwise) {
      points = ring.reverse().getCoordinates();
    }
    return of(fromLongest(points));
  }

  /** Begins in the middle of the longest side, which has most room. */
  private static Coordinate[] fromLongest(Coordinate[] ring) {
    int longest = 0;
    for (int i = 0; i + 1 < ring.length; i++) {
      longest =
          ring[i].distance(ring[i + 1]) > ring[longest].distance(ring[longest + 1]) + 1e-9
              ? i
              : longest;
    }
    int n = ring.length - 1;
    Coordinate[] out = new Coordinate[n + 2];
    out[0] =
        new Coordinate(
            (ring[longest].x + ring[longest + 1].x) / 2,
            (ring[longest].y + ring[longest + 1].y) / 2);
    for (int k = 0; k < n; k++) {
      out[k + 1] = ring[(longest + 1 + k) % n];
    }
    out[n + 1] = out[0];
    return out;
  }

  private static OutlinePath of(Coordinate[] points) {
    double[] x = Arrays.stream(points).mapToDouble(p -> p.x).toArray();
    double[] y = Arrays.stream(points).mapToDouble(p -> p.y).toArray();
    double[] at = new double[x.length];
    for (int i = 1; i < x.length; i++) {
      at[i] = at[i - 1] + Math.hypot(x[i] - x[i - 1], y[i] - y[i - 1]);
    }
    return new OutlinePath(x, y, at);
  }

  /** Once around, mm. */
  double lengthMm() {
    return at[at.length - 1];
  }

  /** The side on which a length along the path lies: index of its first point. */
  int side(double lengthMm) {
    double along = within(lengthMm);
    int found = Arrays.binarySearch(at, along);
    return Math.min(found >= 0 ? found : -found - 2, at.length - 2);
  }

  /** The length, counted from the first point, of any number of rounds. */
  double within(double lengthMm) {
    double along = lengthMm % lengthMm();
    return along < 0 ? along + lengthMm() : along;
  }

  /** The point at a length along the path. */
  double[] point(double lengthMm) {
    double along = within(lengthMm);
    int i = side(along);
    double t = at[i + 1] > at[i] ? (along - at[i]) / (at[i + 1] - at[i]) : 0;
    return new double[] {x[i] + t * (x[i + 1] - x[i]), y[i] + t * (y[i + 1] - y[i])};
  }
}
