package plyscape.toolpath.slot;

import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.PocketEdges;

/**
 * Finds the place between two walls on a short line from one side to the other: where the nearest
 * wall changes from one that lies towards the one end to one that lies towards the other. Walls
 * come from the nodes around and from there along the walls; distances to them are exact. Not for
 * several threads.
 */
final class BetweenWalls {

  /** Nodes on each side of the square around a place from which walls are gathered. */
  private static final int AROUND = 2;

  private static final double DONE_MM = 1e-7;

  private static final int MOST_CHANGES = 40;

  /** Walls that meet in a junction are seen from it under at least this angle. */
  private static final double APART_COSINE = Math.cos(Math.toRadians(50));

  private final DistanceField field;
  private final PocketEdges edges;

  /** Those of the nodes around, and two more for each change of a wall. */
  private final int[] walls = new int[4 * AROUND * AROUND + 2 * MOST_CHANGES];

  private int count;
  private double distance;

  BetweenWalls(DistanceField field) {
    this.field = field;
    edges = field.edges;
  }

  /** Makes the walls near a place those that are asked. */
  void gather(double x, double y) {
    Lattice lattice = field.lattice;
    int i = (int) ((x - lattice.minX()) / lattice.stepMm());
    int j = (int) ((y - lattice.minY()) / lattice.stepMm());
    count = 0;
    for (int b = Math.max(0, j - AROUND + 1); b <= j + AROUND && b < lattice.rows(); b++) {
      int row = b * lattice.columns();
      for (int a = Math.max(0, i - AROUND + 1); a <= i + AROUND && a < lattice.columns(); a++) {
        add(field.nearest[row + a]);
      }
    }
  }

  private void add(int wall) {
    if (wall < 0 || count == walls.length) {
      return;
    }
    for (int c = 0; c < count; c++) {
      if (walls[c] == wall) {
        return;
      }
    }
    walls[count++] = wall;
  }

  /** The nearest of the gathered walls, or -1; its distance is kept. */
  private int nearest(double x, double y) {
    double best = Double.POSITIVE_INFINITY;
    int nearest = -1;
    for (int c = 0; c < count; c++) {
      double d = edges.squaredDistance(walls[c], x, y);
      if (d < best) {
        best = d;
        nearest = walls[c];
      }
    }
    distance = Math.sqrt(best);
    return nearest;
  }

  /** Distance of the nearest gathered wall, mm. */
  double clear(double x, double y) {
    nearest(x, y);
    return distance;
  }

  /**
   * The place between the walls on the line from A to B, of which the one end must be nearer to one
   * of them and the other to the other; null where both ends go by one side. Walls must have been
   * gathered.
   */
  MidPoint on(double ax, double ay, double bx, double by) {
    int first = nearest(ax, ay);
    int second = nearest(bx, by);
    if (first < 0 || second < 0 || first == second) {
      return null;
    }
    double low = 0;
    double high = 1;
    double length = Math.max(1e-9, Math.hypot(bx - ax, by - ay));
    for (int change = 0; change < MOST_CHANGES && (high - low) * length > DONE_MM; change++) {
      double t = even(ax, ay, bx, by, first, second, low, high);
      double x = ax + t * (bx - ax);
      double y = ay + t * (by - ay);
      double own = Math.sqrt(edges.squaredDistance(first, x, y));
      // Edges shorter than a lattice step may be nearest to no node.
      add(edges.nearestAlong(first, x, y));
      add(edges.nearestAlong(second, x, y));
      int nearer = nearest(x, y);
      if (distance > own - 1e-9) {
        return mid(x, y, first, second);
      }
      // A third wall: it stands for the one that it looks more alike.
      if (alike(nearer, first, second, x, y)) {
        first = nearer;
        low = t;
      } else {
        second = nearer;
        high = t;
      }
    }
    double x = ax + low * (bx - ax);
    double y = ay + low * (by - ay);
    return mid(x, y, first, second);
  }

  /** Where on a line two walls are as near, by halving. */
  private double even(
      double ax, double ay, double bx, double by, int first, int second, double from, double to) {
    double low = from;
    double high = to;
    for (int time = 0; time < 40 && high - low > 1e-8; time++) {
      double t = (low + high) / 2;
      double x = ax + t * (bx - ax);
      double y = ay + t * (by - ay);
      if (edges.squaredDistance(first, x, y) < edges.squaredDistance(second, x, y)) {
        low = t;
      } else {
        high = t;
      }
    }
    return (low + high) / 2;
  }

  private boolean alike(int wall, int first, int second, double x, double y) {
    double[] w = away(wall, x, y);
    double[] a = away(first, x, y);
    double[] b = away(second, x, y);
    return w[0] * a[0] + w[1] * a[1] > w[0] * b[0] + w[1] * b[1];
  }

  private double[] away(int wall, double x, double y) {
    double t = edges.along(wall, x, y);
    double dx = x - edges.ax[wall] - t * (edges.bx[wall] - edges.ax[wall]);
    double dy = y - edges.ay[wall] - t * (edges.by[wall] - edges.ay[wall]);
    double d = Math.max(1e-9, Math.hypot(dx, dy));
    return new double[] {dx / d, dy / d};
  }

  private MidPoint mid(double x, double y, int first, int second) {
    double s = edges.along(first, x, y);
    double t = edges.along(second, x, y);
    return new MidPoint(
        x,
        y,
        Math.sqrt(edges.squaredDistance(first, x, y)),
        edges.ax[first] + s * (edges.bx[first] - edges.ax[first]),
        edges.ay[first] + s * (edges.by[first] - edges.ay[first]),
        edges.ax[second] + t * (edges.bx[second] - edges.ax[second]),
        edges.ay[second] + t * (edges.by[second] - edges.ay[second]));
  }

  /**
   * The place as far from three walls near a place, if there is one within a reach, else the place
   * itself: X, Y and the distance from the walls. Walls must have been gathered.
   */
  double[] junction(double atX, double atY, double reachMm) {
    double x = atX;
    double y = atY;
    for (int time = 0; time < 12; time++) {
      int a = nearest(x, y);
      int b = nearestBeside(x, y, a, -1);
      int c = nearestBeside(x, y, a, b);
      if (c < 0) {
        break;
      }
      double[] u = away(a, x, y);
      double[] v = away(b, x, y);
      double[] w = away(c, x, y);
      double da = Math.sqrt(edges.squaredDistance(a, x, y));
      double ab = Math.sqrt(edges.squaredDistance(b, x, y)) - da;
      double ac = Math.sqrt(edges.squaredDistance(c, x, y)) - da;
      double det = (u[0] - v[0]) * (u[1] - w[1]) - (u[1] - v[1]) * (u[0] - w[0]);
      if (Math.abs(det) < 1e-3) {
        break;
      }
      double dx = (ab * (u[1] - w[1]) - ac * (u[1] - v[1])) / det;
      double dy = (ac * (u[0] - v[0]) - ab * (u[0] - w[0])) / det;
      x += dx;
      y += dy;
      if (Math.hypot(x - atX, y - atY) > reachMm) {
        break;
      }
      if (Math.hypot(dx, dy) < DONE_MM) {
        return new double[] {x, y, clear(x, y)};
      }
    }
    return new double[] {atX, atY, clear(atX, atY)};
  }

  /** The nearest wall that lies in another direction than one or two others, or -1. */
  private int nearestBeside(double x, double y, int a, int b) {
    if (a < 0) {
      return -1;
    }
    double[] u = away(a, x, y);
    double[] v = b < 0 ? u : away(b, x, y);
    int nearest = -1;
    double best = Double.POSITIVE_INFINITY;
    for (int c = 0; c < count; c++) {
      double[] w = away(walls[c], x, y);
      double d = edges.squaredDistance(walls[c], x, y);
      if (d < best
          && u[0] * w[0] + u[1] * w[1] < APART_COSINE
          && v[0] * w[0] + v[1] * w[1] < APART_COSINE) {
        best = d;
        nearest = walls[c];
      }
    }
    return nearest;
  }
}
