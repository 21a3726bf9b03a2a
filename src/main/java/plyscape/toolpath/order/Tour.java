package plyscape.toolpath.order;

import java.util.Arrays;
import java.util.List;

/**
 * An order of items with the way each is run, while it is being improved: where each is entered and
 * left, and the cost of the travel between them. The start is fixed, the end is free.
 */
final class Tour {

  final List<TourItem> items;
  final double startX;
  final double startY;

  /** Items in order. */
  final int[] order;

  /** Way of each item, see {@link TourItem#ways}. */
  final int[] way;

  private final TravelCost cost;

  /**
   * Items in their given order.
   *
   * @param cost of the gaps
   */
  Tour(List<TourItem> items, double startX, double startY, TravelCost cost) {
    this.items = items;
    this.cost = cost;
    this.startX = startX;
    this.startY = startY;
    order = new int[items.size()];
    way = new int[items.size()];
  }

  double inX(int item) {
    TourItem it = items.get(item);
    return it.x()[it.entry(way[item])];
  }

  double inY(int item) {
    TourItem it = items.get(item);
    return it.y()[it.entry(way[item])];
  }

  double outX(int item) {
    TourItem it = items.get(item);
    return it.x()[it.exit(way[item])];
  }

  double outY(int item) {
    TourItem it = items.get(item);
    return it.y()[it.exit(way[item])];
  }

  /**
   * Cost from where one item ends (-1: the start) to where another begins (-1: nowhere, no travel).
   */
  double gap(int from, int to) {
    if (to < 0) {
      return 0;
    }
    double x = from < 0 ? startX : outX(from);
    double y = from < 0 ? startY : outY(from);
    return cost.of(from, x, y, to, inX(to), inY(to));
  }

  /** Cost of all travel. */
  double total() {
    double sum = 0;
    for (int p = 0; p < order.length; p++) {
      sum += gap(p == 0 ? -1 : order[p - 1], order[p]);
    }
    return sum;
  }

  /** Cost of the gap from a place on an item (-1: the start) to a place on another. */
  double cost(int from, double fromX, double fromY, int to, double toX, double toY) {
    return cost.of(from, fromX, fromY, to, toX, toY);
  }

  /** No more than {@link #cost} gives, for less effort. */
  double leastCost(int from, double fromX, double fromY, int to, double toX, double toY) {
    return cost.least(from, fromX, fromY, to, toX, toY);
  }

  /** The items after each item, from what each says must be before it. */
  static int[][] successors(List<TourItem> items) {
    int[] count = new int[items.size()];
    for (TourItem item : items) {
      for (int before : item.after()) {
        count[before]++;
      }
    }
    int[][] successors = new int[items.size()][];
    Arrays.setAll(successors, i -> new int[count[i]]);
    for (int i = 0; i < items.size(); i++) {
      for (int before : items.get(i).after()) {
        successors[before][--count[before]] = i;
      }
    }
    return successors;
  }
}
