package plyscape.toolpath;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.MinimumDiameter;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * A connected part of where a cutter's centre can be inside the rings along the walls, as lattice
 * nodes.
 */
final class InnerPart {

  private static final GeometryFactory FACTORY = new GeometryFactory();

  private final Lattice lattice;
  private final Patches patches;
  private final int patch;
  private final int nodes;
  private final int[] box = {Integer.MAX_VALUE, -1, Integer.MAX_VALUE, -1};
  private final Coordinate[] ends;
  private Coordinate[] hull;

  /**
   * @param patches among which it is one
   * @param runs its runs, row by row
   */
  InnerPart(Lattice lattice, Patches patches, List<Integer> runs) {
    this.lattice = lattice;
    this.patches = patches;
    patch = patches.patch(runs.get(0));
    nodes = patches.nodes(patch);
    List<Coordinate> rim = new ArrayList<>();
    for (int r = 0; r < runs.size(); ) {
      int j = patches.first(runs.get(r)) / lattice.columns();
      int left = lattice.columns();
      int right = -1;
      for (; r < runs.size() && patches.first(runs.get(r)) < (j + 1) * lattice.columns(); r++) {
        left = Math.min(left, patches.first(runs.get(r)) - j * lattice.columns());
        right = Math.max(right, patches.end(runs.get(r)) - 1 - j * lattice.columns());
      }
      box[0] = Math.min(box[0], left);
      box[1] = Math.max(box[1], right);
      box[2] = Math.min(box[2], j);
      box[3] = Math.max(box[3], j);
      rim.add(new Coordinate(lattice.x(left), lattice.y(j)));
      rim.add(new Coordinate(lattice.x(right), lattice.y(j)));
    }
    ends = rim.toArray(new Coordinate[0]);
  }

  /** Corners of the convex hull; most parts are too small for anyone to ask. */
  private Coordinate[] hull() {
    if (hull == null) {
      hull = FACTORY.createMultiPointFromCoords(ends).convexHull().getCoordinates();
    }
    return hull;
  }

  /** Area, mm2. */
  double areaMm2() {
    return nodes * lattice.nodeAreaMm2();
  }

  /** Step of the lattice, mm. */
  double stepMm() {
    return lattice.stepMm();
  }

  /** Whether the node nearest to a point belongs to it. */
  boolean holds(double x, double y) {
    int run = patches.runAt(lattice.nearest(x, y));
    return run >= 0 && patches.patch(run) == patch;
  }

  /** First and last column and row. */
  int[] box() {
    return box.clone();
  }

  /** Least and greatest coordinate along a unit vector, mm. */
  double[] extent(double ux, double uy) {
    double[] extent = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
    for (Coordinate c : hull()) {
      double t = c.x * ux + c.y * uy;
      extent[0] = Math.min(extent[0], t);
      extent[1] = Math.max(extent[1], t);
    }
    return extent;
  }

  /** Share of the narrowest rectangle around it that it fills, 0 to about 1. */
  double fullness() {
    Coordinate[] corner = rectangle();
    if (corner.length < 3) {
      return 0;
    }
    double area = corner[0].distance(corner[1]) * corner[1].distance(corner[2]);
    return area > 0 ? areaMm2() / area : 0;
  }

  /**
   * At least the {@link #fullness}, for little effort: the rectangle holds the octagon of the
   * outermost ends in eight directions.
   */
  double mostFullness() {
    Coordinate[] corner = new Coordinate[8];
    for (int d = 0; d < corner.length; d++) {
      double ux = Math.cos(d * Math.PI / 4);
      double uy = Math.sin(d * Math.PI / 4);
      double most = Double.NEGATIVE_INFINITY;
      for (Coordinate end : ends) {
        double t = end.x * ux + end.y * uy;
        if (t > most) {
          most = t;
          corner[d] = end;
        }
      }
    }
    double twice = 0;
    for (int d = 0; d < corner.length; d++) {
      Coordinate a = corner[d];
      Coordinate b = corner[(d + 1) % corner.length];
      twice += a.x * b.y - b.x * a.y;
    }
    return twice > 0 ? 2 * areaMm2() / twice : Double.POSITIVE_INFINITY;
  }

  private Coordinate[] rectangle() {
    return new MinimumDiameter(FACTORY.createMultiPointFromCoords(hull()))
        .getMinimumRectangle()
        .getCoordinates();
  }

  /** Direction of the longer side of the narrowest rectangle around it, degrees from 0 to 180. */
  double longerSideDegrees() {
    Coordinate[] corner = rectangle();
    if (corner.length < 3) {
      return 0;
    }
    boolean first = corner[0].distance(corner[1]) >= corner[1].distance(corner[2]);
    Coordinate a = corner[first ? 0 : 1];
    Coordinate b = corner[first ? 1 : 2];
    double degrees = Math.toDegrees(Math.atan2(b.y - a.y, b.x - a.x));
    return (degrees + 360) % 180;
  }
}
