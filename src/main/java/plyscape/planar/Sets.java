package plyscape.planar;

import java.util.Arrays;

/**
 * Disjoint sets of the numbers 0..n-1; the name of a set is its smallest member, whatever the order
 * of joins.
 */
public final class Sets {

  private int[] parent;

  /** Each number is a set of its own. */
  public Sets(int n) {
    parent = new int[n];
    Arrays.setAll(parent, i -> i);
  }

  /** Name of the set of a number. */
  public int find(int i) {
    while (parent[i] != i) {
      parent[i] = parent[parent[i]];
      i = parent[i];
    }
    return i;
  }

  /** Makes one set of two and returns its name. */
  public int join(int a, int b) {
    int x = find(a);
    int y = find(b);
    parent[Math.max(x, y)] = Math.min(x, y);
    return Math.min(x, y);
  }

  /** Numbers 0, 1, ... of each member's set, in the order of the sets' names. */
  public int[] numbers() {
    int[] out = new int[parent.length];
    int next = 0;
    for (int i = 0; i < out.length; i++) {
      int name = find(i);
      out[i] = name == i ? next++ : out[name];
    }
    return out;
  }
}
