package plyscape.toolpath.bound;

import java.util.Arrays;
import org.locationtech.jts.geom.MultiPolygon;
import plyscape.grid.CellRuns;
import plyscape.toolpath.lattice.CoarseMap;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.PocketEdges;
import plyscape.toolpath.lattice.Sweep;

/**
 * Which nodes of a lattice lie in a pocket, and in its opening by a disk: under the disk, wherever
 * it fits between the walls themselves. Places for the disk's centre are all nodes that are far
 * enough from the walls, and beside them the points on the very edge of those places, found
 * straight off the nearest wall of nodes that aren't: so a slot is seen that is wider than the disk
 * by less than a step. The edge of what is reached is good to about h2 / 8 r for a step h and a
 * radius r.
 */
final class OpenedPocket {

  /** A centre may be as much nearer to a wall than the radius, mm. */
  private static final double FIT_MM = 5e-4;

  /** A point lies as near as this to some node, in steps. */
  private static final double NEAREST_NODE = 0.71;

  private final Lattice lattice;
  private final PocketEdges edges;
  private final DistanceField field;

  OpenedPocket(MultiPolygon pocket, Lattice lattice) {
    this.lattice = lattice;
    edges = new PocketEdges(pocket);
    field = new DistanceField(edges, lattice);
  }

  /** Writes a mark at every node in the pocket. */
  void mark(byte[] marks, byte mark) {
    field
        .range
        .between(0, Double.POSITIVE_INFINITY)
        .eachRun(
            (first, last) -> {
              for (int node = first; node <= last; node++) {
                if (field.distance[node] > 0) {
                  marks[node] = mark;
                }
              }
            });
  }

  /** Writes a mark at every node that a disk can cover. */
  void mark(double radiusMm, byte[] marks, byte mark) {
    boolean[] fits = new boolean[lattice.size()];
    CoarseMap far = field.range.between(radiusMm - FIT_MM, Double.POSITIVE_INFINITY);
    far.eachRun(
        (first, last) -> {
          for (int node = first; node <= last; node++) {
            fits[node] = field.distance[node] >= radiusMm - FIT_MM;
          }
        });
    double inSteps = radiusMm / lattice.stepMm();
    CellRuns.of(fits, lattice.columns(), lattice.rows())
        .grown((int) Math.floor(inSteps * inSteps))
        .fill(marks, mark);
    atTheEdge(radiusMm, marks, mark);
  }

  /** Marks what lies under the disk on the very edge of the places where it fits. */
  private void atTheEdge(double radiusMm, byte[] marks, byte mark) {
    double least = radiusMm - NEAREST_NODE * lattice.stepMm();
    Sweep sweep = new Sweep(lattice);
    Sweep.Run write = (a, b) -> Arrays.fill(marks, a, b + 1, mark);
    double[] at = new double[2];
    field
        .range
        .between(least, radiusMm)
        .eachRun(
            (first, last) -> {
              for (int node = first; node <= last; node++) {
                float d = field.distance[node];
                for (int k = -1; d > least && d < radiusMm - FIT_MM && k <= 1; k++) {
                  beside(node, k * lattice.stepMm() / 3, at);
                  if (off(node, radiusMm, at)) {
                    sweep.all(at[0], at[1], at[0], at[1], radiusMm, write);
                  }
                }
              }
            });
  }

  /** A place beside a node along its nearest wall. */
  private void beside(int node, double wayMm, double[] place) {
    place[0] = lattice.x(node % lattice.columns());
    place[1] = lattice.y(node / lattice.columns());
    int edge = field.nearest[node];
    double dx = edges.bx[edge] - edges.ax[edge];
    double dy = edges.by[edge] - edges.ay[edge];
    double length = Math.hypot(dx, dy);
    place[0] += wayMm * dx / length;
    place[1] += wayMm * dy / length;
  }

  /**
   * Moves a place near a node straight off its nearest wall until it is a radius from it; whether
   * it is so far from all others too.
   */
  private boolean off(int node, double radiusMm, double[] place) {
    int edge = nearest(node, place[0], place[1]);
    double t = edges.along(edge, place[0], place[1]);
    double wallX = edges.ax[edge] + t * (edges.bx[edge] - edges.ax[edge]);
    double wallY = edges.ay[edge] + t * (edges.by[edge] - edges.ay[edge]);
    double d = Math.hypot(place[0] - wallX, place[1] - wallY);
    if (d < radiusMm / 4) {
      return false;
    }
    place[0] = wallX + (place[0] - wallX) * radiusMm / d;
    place[1] = wallY + (place[1] - wallY) * radiusMm / d;
    int other = nearest(node, place[0], place[1]);
    double fit = radiusMm - FIT_MM;
    return edges.squaredDistance(other, place[0], place[1]) >= fit * fit;
  }

  /**
   * The wall nearest to a place within a step of a node: one of those nearest to the nodes around.
   */
  private int nearest(int node, double x, double y) {
    int best = field.nearest[node];
    int before = best;
    double least = edges.squaredDistance(best, x, y);
    int columns = lattice.columns();
    for (int row = node - 2 * columns; row <= node + 2 * columns; row += columns) {
      for (int at = row - 2; at <= row + 2; at++) {
        int other = at < 0 || at >= lattice.size() ? -1 : field.nearest[at];
        if (other >= 0 && other != before) {
          before = other;
          double squared = edges.squaredDistance(other, x, y);
          if (squared < least) {
            least = squared;
            best = other;
          }
        }
      }
    }
    return best;
  }
}
