package plyscape.toolpath;

import java.util.Arrays;

/**
 * Distance of every lattice node from the nearest wall of a pocket, mm, positive inside, and which
 * edge that is. Within one and a half steps of a wall it is exact; farther in, edges are handed
 * from node to node and measured exactly each time, which can only err (by a small fraction of a
 * step) where three edges compete. Outside, beyond the band along the wall, it is minus two steps.
 *
 * <p>Source of the scheme: Danielsson, "Euclidean distance mapping" (1980), with edges in place of
 * points.
 */
final class DistanceField {

  final Lattice lattice;
  final PocketEdges edges;
  final float[] distance;
  final int[] nearest;

  /** Where the distances lie, in blocks. */
  final BlockRange range;

  /** Measures a pocket. */
  DistanceField(PocketEdges edges, Lattice lattice) {
    this.lattice = lattice;
    this.edges = edges;
    distance = new float[lattice.size()];
    nearest = new int[lattice.size()];
    Arrays.fill(nearest, -1);
    boolean[] inside = inside();
    Arrays.fill(distance, Float.POSITIVE_INFINITY);
    seed();
    sweep(inside, true);
    sweep(inside, false);
    float outside = (float) (-2 * lattice.stepMm());
    // Until here the distances are squared.
    for (int k = 0; k < distance.length; k++) {
      float d = nearest[k] < 0 ? outside : (float) Math.sqrt(distance[k]);
      distance[k] = inside[k] ? d : nearest[k] < 0 ? outside : Math.max(outside, -d);
    }
    range = new BlockRange(lattice, distance);
  }

  /** Distance at a point between nodes, bilinear, mm. */
  double at(double x, double y) {
    return lattice.bilinear(distance, x, y);
  }

  /** Even-odd rule along each row of nodes. */
  private boolean[] inside() {
    double h = lattice.stepMm();
    int columns = lattice.columns();
    boolean[] flip = new boolean[lattice.size()];
    for (int e = 0; e < edges.count; e++) {
      double low = Math.min(edges.ay[e], edges.by[e]);
      double high = Math.max(edges.ay[e], edges.by[e]);
      // One row early: rounding must not lose a row that stands exactly at a corner.
      int first = Math.max(0, (int) Math.ceil((low - lattice.minY()) / h) - 1);
      for (int j = first; j < lattice.rows() && lattice.y(j) < high; j++) {
        double y = lattice.y(j);
        if (y < low) {
          continue;
        }
        double t = (y - edges.ay[e]) / (edges.by[e] - edges.ay[e]);
        double x = edges.ax[e] + t * (edges.bx[e] - edges.ax[e]);
        int i = Math.max(0, (int) Math.ceil((x - lattice.minX()) / h));
        if (i < columns) {
          flip[j * columns + i] ^= true;
        }
      }
    }
    for (int j = 0; j < lattice.rows(); j++) {
      boolean in = false;
      for (int k = j * columns; k < (j + 1) * columns; k++) {
        in ^= flip[k];
        flip[k] = in;
      }
    }
    return flip;
  }

  /** Exact distances near each edge. */
  private void seed() {
    double h = lattice.stepMm();
    int columns = lattice.columns();
    Capsule near = new Capsule();
    for (int e = 0; e < edges.count; e++) {
      near.set(edges.ax[e], edges.ay[e], edges.bx[e], edges.by[e], 1.5 * h);
      int first = Math.max(0, (int) Math.ceil((near.bottom() - lattice.minY()) / h));
      int last = Math.min(lattice.rows() - 1, (int) Math.floor((near.top() - lattice.minY()) / h));
      for (int j = first; j <= last; j++) {
        if (!near.chord(lattice.y(j))) {
          continue;
        }
        int from = Math.max(0, (int) Math.ceil((near.low - lattice.minX()) / h));
        int to = Math.min(columns - 1, (int) Math.floor((near.high - lattice.minX()) / h));
        for (int i = from; i <= to; i++) {
          offer(j * columns + i, e, lattice.x(i), lattice.y(j));
        }
      }
    }
  }

  private void offer(int node, int edge, double x, double y) {
    float d = (float) edges.squaredDistance(edge, x, y);
    if (d < distance[node]) {
      distance[node] = d;
      nearest[node] = edge;
    }
  }

  private void sweep(boolean[] inside, boolean up) {
    int columns = lattice.columns();
    int rows = lattice.rows();
    int back = up ? -columns : columns;
    for (int s = 1; s < rows - 1; s++) {
      int j = up ? s : rows - 1 - s;
      double y = lattice.y(j);
      int row = j * columns;
      for (int i = 1; i < columns - 1; i++) {
        int k = row + i;
        if (inside[k] && differs(k, back)) {
          double x = lattice.x(i);
          take(k, k - 1, x, y);
          take(k, k + back, x, y);
          take(k, k + back - 1, x, y);
          take(k, k + back + 1, x, y);
        }
      }
      for (int i = columns - 2; i > 0; i--) {
        int k = row + i;
        if (inside[k]) {
          take(k, k + 1, lattice.x(i), y);
        }
      }
    }
  }

  /** Whether one of the neighbours that were swept before goes by another edge than a node. */
  private boolean differs(int node, int back) {
    int edge = nearest[node];
    return nearest[node - 1] != edge
        || nearest[node + back] != edge
        || nearest[node + back - 1] != edge
        || nearest[node + back + 1] != edge;
  }

  private void take(int node, int from, double x, double y) {
    int edge = nearest[from];
    if (edge >= 0 && edge != nearest[node]) {
      offer(node, edge, x, y);
    }
  }
}
