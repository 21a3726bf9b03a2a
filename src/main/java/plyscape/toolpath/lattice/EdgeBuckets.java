package plyscape.toolpath.lattice;

import java.util.Arrays;

/**
 * The walls of a pocket in square buckets, for exact distances at any point, mm. Not for several
 * threads.
 */
public final class EdgeBuckets {

  private final PocketEdges edges;
  private final double minX;
  private final double minY;
  private final double side;
  private final int columns;
  private final int rows;
  private final int[] starts;
  private final int[] members;
  private int nearest;

  /**
   * @param edges the walls
   * @param lattice over which they lie
   * @param reachMm how far questions usually look
   */
  public EdgeBuckets(PocketEdges edges, Lattice lattice, double reachMm) {
    this.edges = edges;
    side = Math.max(0.4, reachMm / 2);
    minX = lattice.minX();
    minY = lattice.minY();
    columns = (int) (lattice.columns() * lattice.stepMm() / side) + 1;
    rows = (int) (lattice.rows() * lattice.stepMm() / side) + 1;
    starts = new int[columns * rows + 1];
    for (int e = 0; e < edges.count; e++) {
      place(e, null);
    }
    for (int b = 1; b < starts.length; b++) {
      starts[b] += starts[b - 1];
    }
    members = new int[starts[starts.length - 1]];
    int[] next = Arrays.copyOf(starts, columns * rows);
    for (int e = 0; e < edges.count; e++) {
      place(e, next);
    }
  }

  /** Counts an edge in the buckets of its bounds, or enters it there. */
  private void place(int e, int[] next) {
    int lastColumn = column(Math.max(edges.ax[e], edges.bx[e]));
    int lastRow = row(Math.max(edges.ay[e], edges.by[e]));
    for (int j = row(Math.min(edges.ay[e], edges.by[e])); j <= lastRow; j++) {
      for (int i = column(Math.min(edges.ax[e], edges.bx[e])); i <= lastColumn; i++) {
        int bucket = j * columns + i;
        if (next == null) {
          starts[bucket + 1]++;
        } else {
          members[next[bucket]++] = e;
        }
      }
    }
  }

  private int column(double x) {
    return Math.max(0, Math.min(columns - 1, (int) Math.floor((x - minX) / side)));
  }

  private int row(double y) {
    return Math.max(0, Math.min(rows - 1, (int) Math.floor((y - minY) / side)));
  }

  /** Distance of the nearest wall, or the cap where none is nearer, mm. */
  public double distance(double x, double y, double capMm) {
    double best = capMm * capMm;
    nearest = -1;
    int lastColumn = column(x + capMm);
    int lastRow = row(y + capMm);
    for (int j = row(y - capMm); j <= lastRow; j++) {
      for (int i = column(x - capMm); i <= lastColumn; i++) {
        int bucket = j * columns + i;
        for (int m = starts[bucket]; m < starts[bucket + 1]; m++) {
          double d = edges.squaredDistance(members[m], x, y);
          if (d < best) {
            best = d;
            nearest = members[m];
          }
        }
      }
    }
    return Math.sqrt(best);
  }

  /** The wall that the last distance was measured to, or -1. */
  public int nearest() {
    return nearest;
  }
}
