package plyscape.toolpath.order;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * A short tour through items with what must come before what: nearest first, then 2-opt and Or-opt
 * with neighbour lists, shaken to get on where these stop ({@link TourShake}), the starts of rings
 * and the direction of paths chosen by dynamic programming in between. Deterministic; no clock. Not
 * exact: within a few per cent of the best on small cases (see the tests), {@code TravelBound}
 * tells how far at most.
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

  private static final long SEED = 1;

  /**
   * One stop of the tour.
   *
   * @param item index of the item
   * @param start for a ring the index of the point where it is entered and left, else the index of
   *     the point entered
   * @param reversed whether a path is run from its last point to its first
   */
  public record Visit(int item, int start, boolean reversed) {}

  private TourOrder() {}

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

  /** The same where more than its length tells what a gap costs. */
  static List<Visit> of(List<TourItem> items, double startX, double startY, TravelCost cost) {
    List<TourItem> thinned = new ArrayList<>(items.size());
    for (TourItem item : items) {
      thinned.add(thin(item));
    }
    int[][] successors = Tour.successors(items);
    var tour = new Tour(thinned, startX, startY, cost);
    NearestFirst.fill(tour, successors);
    for (int round = 0; round < ROUNDS; round++) {
      TourWays.pick(tour);
      TourLinks links = new TourLinks(tour, successors);
      TourImprove improve = new TourImprove(links);
      double won = improve.all();
      if (round == 0) {
        won += TourShake.run(links, improve, SHAKEN * items.size(), SEED);
      }
      if (won <= 0) {
        break;
      }
    }
    TourWays.pick(tour);
    var fine = new Tour(items, startX, startY, cost);
    System.arraycopy(tour.order, 0, fine.order, 0, fine.order.length);
    List<Visit> visits = new ArrayList<>(items.size());
    for (int item : tour.order) {
      TourItem full = items.get(item);
      boolean ring = full.kind() == TourItem.Kind.RING;
      fine.way[item] = ring ? pointOf(tour.way[item], full.x().length) : tour.way[item];
    }
    TourWays.slideRings(fine);
    for (int item : fine.order) {
      visits.add(
          new Visit(
              item,
              items.get(item).entry(fine.way[item]),
              items.get(item).kind() == TourItem.Kind.EITHER_WAY && fine.way[item] == 1));
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
