package plyscape.planar;

import java.util.Arrays;

/**
 * Linework noded together on the grid: undirected edges that meet only in their ends, each with
 * what crossing it from right to left adds to each component of the winding vector. Snap rounding
 * never turns a closed curve inside out, so winding stays well defined. Where lines fall together
 * their weights add up; where they cancel the edge separates nothing.
 */
final class NodedEdges {

  private final LongIds vertices;
  private final LongIds edges;
  private boolean[] terrain;

  /**
   * Linked lists of (component, weight) by edge; the edge runs from its lower vertex number to its
   * higher.
   */
  private int[] head;

  private int[] follow = new int[256];
  private int[] component = new int[256];
  private int[] weight = new int[256];
  private int used;

  private NodedEdges(LongIds vertices, int expected) {
    this.vertices = vertices;
    edges = new LongIds(expected);
    head = new int[Math.max(16, expected)];
    Arrays.fill(head, -1);
    terrain = new boolean[head.length];
  }

  /** Nodes the lines together. */
  static NodedEdges of(Linework linework) {
    int n = 0;
    for (Linework.Line line : linework.lines()) {
      n += line.x().length - 1;
    }
    int[] x0 = new int[n];
    int[] y0 = new int[n];
    int[] x1 = new int[n];
    int[] y1 = new int[n];
    Linework.Line[] lineOf = new Linework.Line[n];
    int used = 0;
    for (Linework.Line line : linework.lines()) {
      for (int i = 0; i + 1 < line.x().length; i++) {
        if (line.x()[i] != line.x()[i + 1] || line.y()[i] != line.y()[i + 1]) {
          x0[used] = line.x()[i];
          y0[used] = line.y()[i];
          x1[used] = line.x()[i + 1];
          y1[used] = line.y()[i + 1];
          lineOf[used++] = line;
        }
      }
    }
    SnapRounder rounder = new SnapRounder(x0, y0, x1, y1, used);
    NodedEdges out = new NodedEdges(rounder.vertices(), used);
    rounder.run((segment, from, to) -> out.add(lineOf[segment], from, to));
    return out;
  }

  private void add(Linework.Line line, int from, int to) {
    int edge = edges.id(LongIds.pair(Math.min(from, to), Math.max(from, to)));
    if (edge >= head.length) {
      int before = head.length;
      head = Arrays.copyOf(head, before * 2);
      terrain = Arrays.copyOf(terrain, before * 2);
      Arrays.fill(head, before, head.length, -1);
    }
    add(edge, line.component(), from < to ? line.weight() : -line.weight());
    terrain[edge] |= line.terrain();
  }

  private void add(int edge, int which, int by) {
    for (int i = head[edge]; i >= 0; i = follow[i]) {
      if (component[i] == which) {
        weight[i] += by;
        return;
      }
    }
    if (used == follow.length) {
      follow = Arrays.copyOf(follow, used * 2);
      component = Arrays.copyOf(component, used * 2);
      weight = Arrays.copyOf(weight, used * 2);
    }
    follow[used] = head[edge];
    component[used] = which;
    weight[used] = by;
    head[edge] = used++;
  }

  int count() {
    return edges.size();
  }

  int vertexCount() {
    return vertices.size();
  }

  int from(int edge) {
    return edges.high(edge);
  }

  int to(int edge) {
    return edges.low(edge);
  }

  int x(int vertex) {
    return vertices.high(vertex);
  }

  int y(int vertex) {
    return vertices.low(vertex);
  }

  boolean terrain(int edge) {
    return terrain[edge];
  }

  /** Whether both sides of the edge have the same winding vector. */
  boolean cancels(int edge) {
    for (int i = head[edge]; i >= 0; i = follow[i]) {
      if (weight[i] != 0) {
        return false;
      }
    }
    return true;
  }

  /** Adds what lies between right and left of the edge, times a sign, to a winding vector. */
  void addTo(int edge, int sign, int[] windings, int offset) {
    for (int i = head[edge]; i >= 0; i = follow[i]) {
      windings[offset + component[i]] += sign * weight[i];
    }
  }
}
