package plyscape.planar;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Noded linework as chains with the faces to their left and right, and the winding vector of each
 * face. Face 0 is the outside, with the zero vector. Noding aside ({@link SnapRounder}), it takes
 * steps in proportion to edges, plus faces times components.
 */
public final class PlanarMap {

  private final List<Chain> chains = new ArrayList<>();
  private final int components;
  private int[] windings;
  private int faces;

  private PlanarMap(int components) {
    this.components = components;
  }

  /** Nodes the lines together and finds the faces. */
  public static PlanarMap of(Linework linework) {
    NodedEdges edges = NodedEdges.of(linework);
    PlanarMap map = new PlanarMap(linework.components());
    int[] sample = map.chain(edges);
    FaceFinder finder = new FaceFinder(map.chains);
    map.faces = finder.assign();
    map.wind(edges, sample);
    return map;
  }

  /** Lines between faces. */
  public List<Chain> chains() {
    return chains;
  }

  /** How many faces there are, the outside (0) included. */
  public int faces() {
    return faces;
  }

  /** How often the lines of a component wind around a face. */
  public int winding(int face, int component) {
    return windings[face * components + component];
  }

  /**
   * Joins edges through vertices of degree two; returns for each chain its first edge times 2, plus
   * 1 if run backwards.
   */
  private int[] chain(NodedEdges edges) {
    int n = edges.vertexCount();
    int[] first = new int[n + 1];
    for (int e = 0; e < edges.count(); e++) {
      if (!edges.cancels(e)) {
        first[edges.from(e) + 1]++;
        first[edges.to(e) + 1]++;
      }
    }
    for (int v = 0; v < n; v++) {
      first[v + 1] += first[v];
    }
    int[] at = new int[first[n]];
    int[] fill = Arrays.copyOf(first, n + 1);
    for (int e = 0; e < edges.count(); e++) {
      if (!edges.cancels(e)) {
        at[fill[edges.from(e)]++] = e;
        at[fill[edges.to(e)]++] = e;
      }
    }
    boolean[] used = new boolean[edges.count()];
    int[] sample = new int[edges.count()];
    int[] path = new int[64];
    // Chains between nodes first; what is left are closed lines through no node.
    for (int round = 0; round < 2; round++) {
      for (int v = 0; v < n; v++) {
        if (round == 0 && first[v + 1] - first[v] == 2) {
          continue;
        }
        for (int k = first[v]; k < first[v + 1]; k++) {
          if (used[at[k]]) {
            continue;
          }
          int edge = at[k];
          int vertex = v;
          int points = 0;
          boolean terrain = false;
          sample[chains.size()] = 2 * edge + (edges.from(edge) == v ? 0 : 1);
          path[points++] = v;
          while (true) {
            used[edge] = true;
            terrain |= edges.terrain(edge);
            vertex = edges.from(edge) == vertex ? edges.to(edge) : edges.from(edge);
            if (points == path.length) {
              path = Arrays.copyOf(path, points * 2);
            }
            path[points++] = vertex;
            if (vertex == v || first[vertex + 1] - first[vertex] != 2) {
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
          chains.add(new Chain(x, y, terrain, -1, -1));
        }
      }
    }
    return Arrays.copyOf(sample, chains.size());
  }

  /** Winding vectors by walking from face to face, from the outside in. */
  private void wind(NodedEdges edges, int[] sample) {
    windings = new int[Math.multiplyExact(faces, components)];
    int[] first = new int[faces + 1];
    for (Chain chain : chains) {
      first[chain.left + 1]++;
      first[chain.right + 1]++;
    }
    for (int f = 0; f < faces; f++) {
      first[f + 1] += first[f];
    }
    int[] sides = new int[2 * chains.size()];
    int[] fill = Arrays.copyOf(first, faces + 1);
    for (int c = 0; c < chains.size(); c++) {
      sides[fill[chains.get(c).left]++] = c;
      sides[fill[chains.get(c).right]++] = c;
    }
    boolean[] seen = new boolean[faces];
    int[] queue = new int[faces];
    int tail = 1;
    seen[0] = true;
    for (int headAt = 0; headAt < tail; headAt++) {
      int face = queue[headAt];
      for (int k = first[face]; k < first[face + 1]; k++) {
        Chain chain = chains.get(sides[k]);
        boolean toLeft = chain.right == face;
        int other = toLeft ? chain.left : chain.right;
        if (!seen[other]) {
          seen[other] = true;
          queue[tail++] = other;
          System.arraycopy(windings, face * components, windings, other * components, components);
          int along = (sample[sides[k]] & 1) == 0 ? 1 : -1;
          edges.addTo(sample[sides[k]] >> 1, toLeft ? along : -along, windings, other * components);
        }
      }
    }
    if (tail != faces) {
      throw new IllegalStateException("planar map: " + (faces - tail) + " faces can't be reached");
    }
  }
}
