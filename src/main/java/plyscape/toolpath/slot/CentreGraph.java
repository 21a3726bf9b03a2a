package plyscape.toolpath.slot;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Middle lines as they are found: places, and which of them are neighbours along a line. */
final class CentreGraph {

  private final List<MidPoint> points = new ArrayList<>();
  private int[][] neighbours = new int[64][];

  /** A place; its number. */
  int add(MidPoint point) {
    points.add(point);
    if (points.size() > neighbours.length) {
      neighbours = Arrays.copyOf(neighbours, 2 * neighbours.length);
    }
    neighbours[points.size() - 1] = new int[0];
    return points.size() - 1;
  }

  /** Makes two places neighbours, once. */
  void link(int a, int b) {
    if (a != b && !linked(a, b)) {
      neighbours[a] = with(neighbours[a], b);
      neighbours[b] = with(neighbours[b], a);
    }
  }

  private boolean linked(int a, int b) {
    for (int n : neighbours[a]) {
      if (n == b) {
        return true;
      }
    }
    return false;
  }

  private static int[] with(int[] list, int more) {
    int[] longer = Arrays.copyOf(list, list.length + 1);
    longer[list.length] = more;
    return longer;
  }

  /** Takes a place out of the lines that pass it. */
  void unlink(int a) {
    for (int b : neighbours[a]) {
      neighbours[b] = Arrays.stream(neighbours[b]).filter(n -> n != a).toArray();
    }
    neighbours[a] = new int[0];
  }

  /** Places in all. */
  int size() {
    return points.size();
  }

  MidPoint point(int a) {
    return points.get(a);
  }

  /** The neighbours of a place. */
  int[] of(int a) {
    return neighbours[a];
  }

  /**
   * The lines between ends and junctions, each once: numbers of places; a closed one ends where it
   * begins.
   */
  List<int[]> chains() {
    List<int[]> chains = new ArrayList<>();
    boolean[] seen = new boolean[size()];
    for (int a = 0; a < size(); a++) {
      if (neighbours[a].length != 2) {
        for (int b : neighbours[a]) {
          // Of a line between two such places only the way from one of its ends.
          int[] chain = follow(a, b);
          int end = chain[chain.length - 1];
          int before = chain[chain.length - 2];
          if (a < end || a == end && b <= before) {
            chains.add(chain);
          }
          for (int c : chain) {
            seen[c] = true;
          }
        }
      }
    }
    for (int a = 0; a < size(); a++) {
      if (!seen[a] && neighbours[a].length == 2) {
        int[] ring = follow(a, neighbours[a][0]);
        for (int c : ring) {
          seen[c] = true;
        }
        chains.add(ring);
      }
    }
    return chains;
  }

  private int[] follow(int from, int next) {
    int[] chain = new int[16];
    int n = 0;
    chain[n++] = from;
    int before = from;
    int at = next;
    while (true) {
      if (n == chain.length) {
        chain = Arrays.copyOf(chain, 2 * n);
      }
      chain[n++] = at;
      if (at == from || neighbours[at].length != 2) {
        return Arrays.copyOf(chain, n);
      }
      int on = neighbours[at][0] == before ? neighbours[at][1] : neighbours[at][0];
      before = at;
      at = on;
    }
  }
}
