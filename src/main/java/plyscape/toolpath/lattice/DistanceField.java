package plyscape.toolpath.lattice;

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
public final class DistanceField {

  public final Lattice lattice;
  public final PocketEdges edges;
  public final float[] distance;
  public final int[] nearest;

  /** Where the distances lie, in blocks. */
  public final BlockRange range;

  /** First and last node inside in each row. */
  private final int[] first;

  private final int[] last;

  /** Columns between which all that is measured lies. */
  private int left;

  private int right = -1;

  /** Measures a pocket. */
  public DistanceField(PocketEdges edges, Lattice lattice) {
    this.lattice = lattice;
    this.edges = edges;
    distance = new float[lattice.size()];
    nearest = new int[lattice.size()];
    first = new int[lattice.rows()];
    last = new int[lattice.rows()];
    left = lattice.columns();
    Arrays.fill(nearest, -1);
    float outside = (float) (-2 * lattice.stepMm());
    Arrays.fill(distance, outside);
    boolean[] inside = inside();
    seed();
    sweep(inside, true);
    sweep(inside, false);
    // Until here the distances are squared.
    int columns = lattice.columns();
    for (int j = 0; j < lattice.rows(); j++) {
      for (int k = j * columns + left; k <= j * columns + right; k++) {
        if (nearest[k] >= 0) {
          float d = (float) Math.sqrt(distance[k]);
          distance[k] = inside[k] ? d : Math.max(outside, -d);
        }
      }
    }
    range = new BlockRange(lattice, distance);
  }

  /** Distance at a point between nodes, bilinear, mm. */
  public double at(double x, double y) {
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
      int end = (j + 1) * columns;
      first[j] = end;
      last[j] = -1;
      for (int k = j * columns; k < end; k++) {
        if (flip[k]) {
          in = !in;
        }
        if (in) {
          flip[k] = true;
          first[j] = Math.min(first[j], k);
          last[j] = k;
        } else {
          flip[k] = false;
        }
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
      near.chords(lattice.minY(), h, first, last);
      for (int j = first; j <= last; j++) {
        double low = near.ends[4 * (j - first)];
        double high = near.ends[4 * (j - first) + 1];
        if (low > high) {
          continue;
        }
        int from = Math.max(0, (int) Math.ceil((low - lattice.minX()) / h));
        int to = Math.min(columns - 1, (int) Math.floor((high - lattice.minX()) / h));
        for (int i = from; i <= to; i++) {
          closer(j * columns + i, nearest[j * columns + i], e, lattice.x(i), lattice.y(j));
        }
        if (from <= to) {
          left = Math.min(left, from);
          right = Math.max(right, to);
        }
      }
    }
  }

  /** Offers an edge to a node that goes by another or none; the edge that it goes by then. */
  private int closer(int node, int own, int edge, double x, double y) {
    float d = (float) edges.squaredDistance(edge, x, y);
    if (own >= 0 && d >= distance[node]) {
      return own;
    }
    distance[node] = d;
    nearest[node] = edge;
    return edge;
  }

  private void sweep(boolean[] inside, boolean up) {
    int columns = lattice.columns();
    int rows = lattice.rows();
    int back = up ? -columns : columns;
    for (int s = 1; s < rows - 1; s++) {
      int j = up ? s : rows - 1 - s;
      double y = lattice.y(j);
      int row = j * columns;
      int from = Math.max(first[j], row + 1);
      int to = Math.min(last[j], row + columns - 2);
      for (int k = from; k <= to; k++) {
        if (!inside[k]) {
          continue;
        }
        int own = nearest[k];
        int a = nearest[k - 1];
        int b = nearest[k + back];
        int c = nearest[k + back - 1];
        int d = nearest[k + back + 1];
        if (a == own && b == own && c == own && d == own) {
          continue;
        }
        // Most neighbours go by the same edge: it is measured once.
        double x = lattice.x(k - row);
        if (a >= 0 && a != own) {
          own = closer(k, own, a, x, y);
        }
        if (b >= 0 && b != own && b != a) {
          own = closer(k, own, b, x, y);
        }
        if (c >= 0 && c != own && c != a && c != b) {
          own = closer(k, own, c, x, y);
        }
        if (d >= 0 && d != own && d != a && d != b && d != c) {
          closer(k, own, d, x, y);
        }
      }
      for (int k = to; k >= from; k--) {
        int own = nearest[k];
        int edge = nearest[k + 1];
        if (edge >= 0 && edge != own && inside[k]) {
          closer(k, own, edge, lattice.x(k - row), y);
        }
      }
    }
  }
}
