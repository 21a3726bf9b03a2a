package plyscape.toolpath.order;

import java.util.ArrayDeque;
import java.util.List;

/**
 * A first tour: always on to the nearest item whose turn has come, by the entry of each of its
 * ways.
 */
final class NearestFirst {

  private final Tour tour;
  private final int[][] successors;
  private final int[] waiting;
  private final int[] itemOf;
  private final int[] wayOf;
  private final int[] firstEntry;
  private final PointGrid grid;

  private NearestFirst(Tour tour, int[][] successors) {
    this.tour = tour;
    this.successors = successors;
    List<TourItem> items = tour.items;
    waiting = new int[items.size()];
    firstEntry = new int[items.size() + 1];
    for (int i = 0; i < items.size(); i++) {
      waiting[i] = items.get(i).after().length;
      firstEntry[i + 1] = firstEntry[i] + items.get(i).ways();
    }
    int entries = firstEntry[items.size()];
    itemOf = new int[entries];
    wayOf = new int[entries];
    double[] x = new double[entries];
    double[] y = new double[entries];
    for (int i = 0; i < items.size(); i++) {
      for (int e = firstEntry[i]; e < firstEntry[i + 1]; e++) {
        itemOf[e] = i;
        wayOf[e] = e - firstEntry[i];
        x[e] = items.get(i).x()[items.get(i).entry(wayOf[e])];
        y[e] = items.get(i).y()[items.get(i).entry(wayOf[e])];
      }
    }
    grid = new PointGrid(x, y);
  }

  /**
   * Sets the order and the ways.
   *
   * @throws IllegalArgumentException when what must come before what goes round in a circle
   */
  static void fill(Tour tour, int[][] successors) {
    new NearestFirst(tour, successors).fill();
  }

  private void fill() {
    var free = new ArrayDeque<Integer>();
    for (int i = 0; i < waiting.length; i++) {
      if (waiting[i] == 0) {
        free.add(i);
      }
    }
    double x = tour.startX;
    double y = tour.startY;
    int[] found = new int[1];
    double[] squared = new double[1];
    for (int p = 0; p < waiting.length; p++) {
      while (!free.isEmpty()) {
        int item = free.poll();
        for (int e = firstEntry[item]; e < firstEntry[item + 1]; e++) {
          grid.put(e);
        }
      }
      if (grid.nearest(x, y, found, squared) == 0) {
        throw new IllegalArgumentException("items that wait for each other");
      }
      int item = itemOf[found[0]];
      tour.order[p] = item;
      tour.way[item] = wayOf[found[0]];
      for (int e = firstEntry[item]; e < firstEntry[item + 1]; e++) {
        grid.take(e);
      }
      for (int next : successors[item]) {
        if (--waiting[next] == 0) {
          free.add(next);
        }
      }
      x = tour.outX(item);
      y = tour.outY(item);
    }
  }
}
