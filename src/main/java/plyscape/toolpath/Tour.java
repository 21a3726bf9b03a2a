package plyscape.toolpath;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

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

  private final DoubleUnaryOperator cost;

  /**
   * Items in their given order.
   *
   * @param cost of a gap of so many mm, rising
   */
  Tour(List<TourItem> items, double startX, double startY, DoubleUnaryOperator cost) {
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
    return cost(x, y, inX(to), inY(to));
  }

  /** Cost of all travel. */
  double total() {
    double sum = 0;
    for (int p = 0; p < order.length; p++) {
      sum += gap(p == 0 ? -1 : order[p - 1], order[p]);
    }
    return sum;
  }

  /** Cost of the gap between two points. */
  double cost(double x0, double y0, double x1, double y1) {
    double dx = x1 - x0;
    double dy = y1 - y0;
    return cost.applyAsDouble(Math.sqrt(dx * dx + dy * dy));
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
