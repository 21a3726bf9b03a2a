package plyscape.toolpath.order;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.LongStream;

/**
 * A short tour through items with what must come before what: nearest first, then 2-opt and Or-opt
 * with neighbour lists, shaken to get on where these stop ({@link TourShake}), the starts of rings
 * and the direction of paths chosen by dynamic programming in between; the cheapest of a few that
 * are shaken side by side. Deterministic on any number of processors; no clock. Not exact: within a
 * few per cent of the best on small cases (see the tests), {@code TravelBound} tells how far at
 * most.
 *
 * <p>Usage: {@code List<TourOrder.Visit> tour = TourOrder.of(items, startX, startY);} the machine
 * starts at the point given and may end anywhere.
 */
public final class TourOrder {

  /**
   * While the order is sought a ring counts as this many points; in the end all of its points are
   * tried.
   */
  private static final int RING_POINTS = 12;

  private static final int ROUNDS = 3;

  /**
   * Tries of shaking for each item. They shorten the travel of towns and hills by 1 to 2.5 %; ten
   * times as many by one more.
   */
  private static final int SHAKEN = 3;

  /** Orders shaken each by a seed of its own, of which the cheapest is kept. */
  private static final int ORDERS = 3;

  /** Items of all these orders together: larger tours are sought fewer times. */
  private static final int MOST_ITEMS = 12_000;

  /**
   * One stop of the tour.
   *
   * @param item index of the item
   * @param start for a ring the index of the point where it is entered and left, else the index of
   *     the point entered
   * @param reversed whether a path is run from its last point to its first
   */
  public record Visit(int item, int start, boolean reversed) {}

  private final List<TourItem> items;
  private final List<TourItem> thinned;
  private final int[][] successors;
  private final double startX;
  private final double startY;
  private final TravelCost cost;

  TourOrder(List<TourItem> items, double startX, double startY, TravelCost cost) {
    this.items = items;
    this.startX = startX;
    this.startY = startY;
    this.cost = cost;
    thinned = items.stream().map(TourOrder::thin).toList();
    successors = Tour.successors(items);
  }

  /**
   * Orders the items for short travel.
   *
   * @param items what to visit, each once
   * @param startX where the tour starts, mm
   * @param startY the same
   * @throws IllegalArgumentException when items wait for each other in a circle
   */
  public static List<Visit> of(List<TourItem> items, double startX, double startY) {
    return of(items, startX, startY, DoubleUnaryOperator.identity());
  }

  /**
   * Orders the items for low cost of travel: a lift costs as much as a good way over cleared
   * ground, so that one long gap and many short ones are better than the same length in even parts.
   *
   * @param cost of a gap of so many mm; rising, may jump
   */
  public static List<Visit> of(
      List<TourItem> items, double startX, double startY, DoubleUnaryOperator cost) {
    return of(items, startX, startY, TravelCost.byLength(cost));
  }

  /** The same where more than its length tells what a gap costs, in any thread. */
  static List<Visit> of(List<TourItem> items, double startX, double startY, TravelCost cost) {
    TourOrder order = new TourOrder(items, startX, startY, cost);
    Tour best =
        LongStream.rangeClosed(1, orders(items.size()))
            .parallel()
            .mapToObj(order::shaken)
            .min(Comparator.comparingDouble(Tour::total))
            .orElseThrow();
    return order.visits(best);
  }

  /** How many orders are tried side by side: by the work, not by a clock, for the same bytes. */
  private static int orders(int items) {
    return Math.max(1, Math.min(ORDERS, MOST_ITEMS / Math.max(1, items)));
  }

  /** The order to which one seed of shaking leads. */
  Tour shaken(long seed) {
    Tour tour = new Tour(thinned, startX, startY, cost);
    NearestFirst.fill(tour, successors);
    for (int round = 0; round < ROUNDS; round++) {
      TourWays.pick(tour);
      TourLinks links = new TourLinks(tour, successors);
      TourImprove improve = new TourImprove(links);
      double won = improve.all();
      if (round == 0) {
        won += TourShake.run(links, improve, SHAKEN * items.size(), seed);
      }
      if (won <= 0) {
        break;
      }
    }
    TourWays.pick(tour);
    Tour fine = new Tour(items, startX, startY, cost);
    System.arraycopy(tour.order, 0, fine.order, 0, fine.order.length);
    for (int item : tour.order) {
      TourItem full = items.get(item);
      boolean ring = full.kind() == TourItem.Kind.RING;
      fine.way[item] = ring ? pointOf(tour.way[item], full.x().length) : tour.way[item];
    }
    TourWays.slideRings(fine);
    return fine;
  }

  private List<Visit> visits(Tour tour) {
    List<Visit> visits = new ArrayList<>(items.size());
    for (int item : tour.order) {
      visits.add(
          new Visit(
              item,
              items.get(item).entry(tour.way[item]),
              items.get(item).kind() == TourItem.Kind.EITHER_WAY && tour.way[item] == 1));
    }
    return visits;
  }

  private static TourItem thin(TourItem item) {
    int n = item.x().length;
    if (item.kind() != TourItem.Kind.RING || n <= RING_POINTS) {
      return item;
    }
    double[] x = new double[RING_POINTS];
    double[] y = new double[RING_POINTS];
    for (int i = 0; i < RING_POINTS; i++) {
      x[i] = item.x()[pointOf(i, n)];
      y[i] = item.y()[pointOf(i, n)];
    }
    return new TourItem(x, y, item.kind(), item.after());
  }

  private static int pointOf(int thinned, int points) {
    return points <= RING_POINTS ? thinned : (int) ((long) thinned * points / RING_POINTS);
  }
}
