package plyscape.toolpath.ring;

import java.util.ArrayList;
import java.util.List;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.EdgeBuckets;
import plyscape.toolpath.lattice.PocketEdges;

/**
 * Short ways of a cutter between two places, straight where there is room, else led along the walls
 * in small steps. No point of a way is nearer to a wall than the radius less 0.0003 mm.
 */
final class WallWays {

  /** How much nearer than the radius a way may come between its points, mm. */
  private static final double GRAIN_MM = 3e-4;

  /** A way is halved so many times at most: 128 pieces. */
  private static final int MOST_HALVINGS = 7;

  private final EdgeBuckets walls;
  private final PocketEdges edges;
  private final double radius;
  private final double step;

  /** For one pocket and one distance that its walls must keep, mm. */
  WallWays(DistanceField field, EdgeBuckets walls, double radiusMm) {
    this.walls = walls;
    edges = field.edges;
    radius = radiusMm;
    step = field.lattice.stepMm();
  }

  /** The points of a way after A, B among them and last; empty when none was found. */
  List<double[]> between(double[] a, double[] b) {
    List<double[]> way = new ArrayList<>();
    return lead(way, a, b, MOST_HALVINGS) ? way : List.of();
  }

  private boolean lead(List<double[]> way, double[] a, double[] b, int halvings) {
    double length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (free(a, b)) {
      way.add(b);
      return true;
    }
    if (halvings == 0) {
      return false;
    }
    double[] middle = offWalls((a[0] + b[0]) / 2, (a[1] + b[1]) / 2);
    return middle != null
        && Math.hypot(middle[0] - a[0], middle[1] - a[1]) < 0.9 * length
        && Math.hypot(middle[0] - b[0], middle[1] - b[1]) < 0.9 * length
        && lead(way, a, middle, halvings - 1)
        && lead(way, middle, b, halvings - 1);
  }

  /** Whether the straight way from A to B is free, ends apart. */
  boolean free(double[] a, double[] b) {
    int parts = (int) Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / (0.3 * step));
    for (int p = 1; p < parts; p++) {
      double t = (double) p / parts;
      if (!fits(a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]))) {
        return false;
      }
    }
    return true;
  }

  /** Whether the cutter fits at a place. */
  boolean fits(double x, double y) {
    return room(x, y) >= -GRAIN_MM;
  }

  private double room(double x, double y) {
    return walls.distance(x, y, radius + 0.01) - radius;
  }

  /** A place moved off the walls to where the cutter fits, or null. */
  double[] offWalls(double x, double y) {
    double px = x;
    double py = y;
    for (int time = 0; time < 8; time++) {
      double room = room(px, py);
      if (room >= -GRAIN_MM) {
        return new double[] {px, py};
      }
      int edge = walls.nearest();
      double t = edges.along(edge, px, py);
      double dx = px - edges.ax[edge] - t * (edges.bx[edge] - edges.ax[edge]);
      double dy = py - edges.ay[edge] - t * (edges.by[edge] - edges.ay[edge]);
      double d = Math.hypot(dx, dy);
      if (d < 1e-6) {
        return null;
      }
      px += dx / d * (GRAIN_MM / 2 - room);
      py += dy / d * (GRAIN_MM / 2 - room);
    }
    return null;
  }
}
