package plyscape.toolpath.order;

/**
 * Picks the way of each item of a tour whose order stands, for the least cost of travel: exact, by
 * dynamic programming.
 */
final class TourWays {

  private TourWays() {}

  /** Sets the ways. Time grows with the product of the ways of neighbours. */
  static void pick(Tour tour) {
    int n = tour.order.length;
    int[][] back = new int[n][];
    double[] before = {0};
    for (int p = 0; p < n; p++) {
      TourItem item = tour.items.get(tour.order[p]);
      double[] cost = new double[item.ways()];
      back[p] = new int[cost.length];
      for (int w = 0; w < cost.length; w++) {
        double x = item.x()[item.entry(w)];
        double y = item.y()[item.entry(w)];
        cost[w] = Double.POSITIVE_INFINITY;
        for (int v = 0; v < before.length; v++) {
          double c =
              before[v]
                  + (p == 0
                      ? tour.cost(-1, tour.startX, tour.startY, tour.order[p], x, y)
                      : leap(tour, p, v, x, y));
          if (c < cost[w]) {
            cost[w] = c;
            back[p][w] = v;
          }
        }
      }
      before = cost;
    }
    int best = 0;
    for (int w = 1; w < before.length; w++) {
      best = before[w] < before[best] ? w : best;
    }
    for (int p = n - 1; p >= 0; p--) {
      tour.way[tour.order[p]] = best;
      best = back[p][best];
    }
  }

  private static double leap(Tour tour, int position, int way, double x, double y) {
    int before = tour.order[position - 1];
    TourItem from = tour.items.get(before);
    int exit = from.exit(way);
    return tour.cost(before, from.x()[exit], from.y()[exit], tour.order[position], x, y);
  }

  /**
   * Moves the start of each ring to its best point while its neighbours stand; a few sweeps over
   * all points.
   */
  static void slideRings(Tour tour) {
    for (int sweep = 0; sweep < 4; sweep++) {
      boolean moved = false;
      for (int p = 0; p < tour.order.length; p++) {
        int item = tour.order[p];
        TourItem ring = tour.items.get(item);
        if (ring.kind() != TourItem.Kind.RING) {
          continue;
        }
        int before = p == 0 ? -1 : tour.order[p - 1];
        int after = p + 1 == tour.order.length ? -1 : tour.order[p + 1];
        int best = tour.way[item];
        double least = tour.gap(before, item) + tour.gap(item, after);
        for (int w = 0; w < ring.ways(); w++) {
          tour.way[item] = w;
          double cost = tour.gap(before, item) + tour.gap(item, after);
          if (cost < least - 1e-9) {
            least = cost;
            best = w;
            moved = true;
          }
        }
        tour.way[item] = best;
      }
      if (!moved) {
        return;
      }
    }
  }
}
