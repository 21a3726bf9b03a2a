package plyscape.planar;

import java.util.Arrays;
import java.util.List;

/** Joins noded edges through vertices of degree two into chains; edges that cancel are left out. */
final class ChainJoiner {

  private final NodedEdges edges;

  /** Where the edges of each vertex begin in {@link #at}; those of the last end at its length. */
  private final int[] first;

  private final int[] at;
  private final boolean[] used;
  private int[] path = new int[64];

  /** Of a network. */
  ChainJoiner(NodedEdges edges) {
    this.edges = edges;
    int n = edges.vertexCount();
    first = new int[n + 1];
    for (int e = 0; e < edges.count(); e++) {
      if (!edges.cancels(e)) {
        first[edges.from(e) + 1]++;
        first[edges.to(e) + 1]++;
      }
    }
    for (int v = 0; v < n; v++) {
      first[v + 1] += first[v];
    }
    at = new int[first[n]];
    int[] fill = Arrays.copyOf(first, n + 1);
    for (int e = 0; e < edges.count(); e++) {
      if (!edges.cancels(e)) {
        at[fill[edges.from(e)]++] = e;
        at[fill[edges.to(e)]++] = e;
      }
    }
    used = new boolean[edges.count()];
  }

  /**
   * Adds the chains to a list that has none yet; those between nodes first, then closed lines
   * through no node.
   *
   * @return for each chain its first edge times 2, plus 1 if run backwards
   */
  int[] join(List<Chain> chains) {
    int[] sample = new int[edges.count()];
    for (int round = 0; round < 2; round++) {
      for (int v = 0; v + 1 < first.length; v++) {
        if (round == 0 && degree(v) == 2) {
          continue;
        }
        for (int k = first[v]; k < first[v + 1]; k++) {
          int edge = at[k];
          if (!used[edge]) {
            sample[chains.size()] = 2 * edge + (edges.from(edge) == v ? 0 : 1);
            chains.add(follow(v, edge));
          }
        }
      }
    }
    return Arrays.copyOf(sample, chains.size());
  }

  private int degree(int vertex) {
    return first[vertex + 1] - first[vertex];
  }

  /** The chain that begins at a vertex with an edge: on to the next node, or round to itself. */
  private Chain follow(int start, int firstEdge) {
    int edge = firstEdge;
    int vertex = start;
    int points = 0;
    boolean terrain = false;
    path[points++] = start;
    while (true) {
      used[edge] = true;
      terrain |= edges.terrain(edge);
      vertex = edges.from(edge) == vertex ? edges.to(edge) : edges.from(edge);
      if (points == path.length) {
        path = Arrays.copyOf(path, points * 2);
      }
      path[points++] = vertex;
      if (vertex == start || degree(vertex) != 2) {
        break;
      }
      edge = at[first[vertex]] == edge ? at[first[vertex] + 1] : at[first[vertex]];
    }
    int[] x = new int[points];
    int[] y = new int[points];
    for (int i = 0; i < points; i++) {
      x[i] = edges.x(path[i]);
      y[i] = edges.y(path[i]);
    }
    return new Chain(x, y, terrain, -1, -1);
  }
}
