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
  private final int[] labels;
  private final int label;
  private final int nodes;
  private final Coordinate[] hull;
  private final int[] box = {Integer.MAX_VALUE, -1, Integer.MAX_VALUE, -1};

  /**
   * @param labels of all nodes, shared by all parts
   * @param label of this one's nodes
   * @param members its nodes, in any order; not kept
   * @param count how many of them
   */
  InnerPart(Lattice lattice, int[] labels, int label, int[] members, int count) {
    this.lattice = lattice;
    this.labels = labels;
    this.label = label;
    nodes = count;
    List<Coordinate> rim = new ArrayList<>();
    for (int n = 0; n < count; n++) {
      int node = members[n];
      int i = node % lattice.columns();
      int j = node / lattice.columns();
      box[0] = Math.min(box[0], i);
      box[1] = Math.max(box[1], i);
      box[2] = Math.min(box[2], j);
      box[3] = Math.max(box[3], j);
      if (labels[node - 1] != label || labels[node + 1] != label) {
        rim.add(new Coordinate(lattice.x(i), lattice.y(j)));
      }
    }
    hull =
        FACTORY
            .createMultiPointFromCoords(rim.toArray(new Coordinate[0]))
            .convexHull()
            .getCoordinates();
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
    return labels[lattice.nearest(x, y)] == label;
  }

  /** First and last column and row. */
  int[] box() {
    return box.clone();
  }

  /** Least and greatest coordinate along a unit vector, mm. */
  double[] extent(double ux, double uy) {
    double[] extent = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
    for (Coordinate c : hull) {
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

  private Coordinate[] rectangle() {
    return new MinimumDiameter(FACTORY.createMultiPointFromCoords(hull))
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
