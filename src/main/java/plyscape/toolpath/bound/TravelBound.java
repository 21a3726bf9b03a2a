package plyscape.toolpath.bound;

import java.util.Arrays;
import java.util.List;
import plyscape.toolpath.order.PointGrid;
import plyscape.toolpath.order.TourItem;

/**
 * The least travel that any order of items needs: the length of the minimum spanning tree over the
 * gaps between them and the start (references.md section 7, bound 5). Gaps are between the items'
 * points, as items are entered and left there. Exact, by Boruvka's method: each group of joined
 * items is joined over its shortest gap to another, until one is left.
 *
 * <p>Usage: {@code double mm = TravelBound.mm(items, startX, startY);}
 */
public final class TravelBound {

  private final double[] x;
  private final double[] y;
  private final int[] item;
  private final PointGrid grid;
  private final int[] group;
  private final int[] root;

  /**
   * For each group (at its root) the shortest gap out of it, squared, and the point it leads to.
   */
  private final double[] squared;

  private final int[] to;

  /** Nothing outside a point's group is nearer to it than this, squared. */
  private final double[] atLeast;

  private TravelBound(List<TourItem> items, double startX, double startY) {
    int count = 1;
    for (TourItem it : items) {
      count += it.kind() == TourItem.Kind.RING ? it.x().length : 2;
    }
    x = new double[count];
    y = new double[count];
    item = new int[count];
    group = new int[items.size() + 1];
    Arrays.setAll(group, i -> i);
    root = new int[group.length];
    squared = new double[group.length];
    to = new int[group.length];
    atLeast = new double[count];
    int p = 0;
    for (int i = 0; i < items.size(); i++) {
      TourItem it = items.get(i);
      int last = it.x().length - 1;
      int points = it.kind() == TourItem.Kind.RING ? last + 1 : 2;
      for (int k = 0; k < points; k++) {
        int at = it.kind() == TourItem.Kind.RING ? k : k * last;
        x[p] = it.x()[at];
        y[p] = it.y()[at];
        item[p++] = i;
      }
    }
    x[p] = startX;
    y[p] = startY;
    item[p] = items.size();
    grid = new PointGrid(x, y);
    for (int i = 0; i < count; i++) {
      grid.put(i);
    }
  }

  /**
   * As {@link #mm}, for stretches that keep their direction.
   *
   * @param stretches X and Y where each begins, X and Y where it ends, mm
   */
  public static double ofStretches(List<double[]> stretches, double startX, double startY) {
    return mm(
        stretches.stream().map(s -> TourItem.path(s[0], s[1], s[2], s[3])).toList(),
        startX,
        startY);
  }

  /** The bound, mm. */
  public static double mm(List<TourItem> items, double startX, double startY) {
    return new TravelBound(items, startX, startY).grow();
  }

  private double grow() {
    double sum = 0;
    for (int groups = group.length; groups > 1; ) {
      Arrays.fill(squared, Double.POSITIVE_INFINITY);
      Arrays.setAll(root, this::root);
      // The most hopeful point of each group first: what it finds spares most searches of the
      // others.
      int[] hopeful = new int[group.length];
      Arrays.fill(hopeful, -1);
      for (int p = 0; p < x.length; p++) {
        int own = root[item[p]];
        if (hopeful[own] < 0 || atLeast[p] < atLeast[hopeful[own]]) {
          hopeful[own] = p;
        }
      }
      for (int p : hopeful) {
        if (p >= 0) {
          search(p);
        }
      }
      for (int p = 0; p < x.length; p++) {
        search(p);
      }
      for (int g = 0; g < group.length; g++) {
        int a = root(g);
        int b = root[g] == g ? root(item[to[g]]) : a;
        if (a != b) {
          group[a] = b;
          groups--;
          sum += Math.sqrt(squared[g]);
        }
      }
    }
    return sum;
  }

  /** Improves the shortest gap out of a point's group, if one at this point can. */
  private void search(int p) {
    int own = root[item[p]];
    if (atLeast[p] >= squared[own]) {
      return;
    }
    int other = grid.nearestWhere(p, q -> root[item[q]] != own, squared[own]);
    if (other >= 0) {
      double dx = x[p] - x[other];
      double dy = y[p] - y[other];
      squared[own] = dx * dx + dy * dy;
      to[own] = other;
    }
    // Groups only grow, so that later rounds find nothing nearer.
    atLeast[p] = squared[own];
  }

  private int root(int i) {
    int root = i;
    while (group[root] != root) {
      root = group[root];
    }
    for (int j = i; j != root; ) {
      int next = group[j];
      group[j] = root;
      j = next;
    }
    return root;
  }
}
