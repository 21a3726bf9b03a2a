package plyscape.toolpath.order;

import java.util.function.DoubleUnaryOperator;

/** What it costs to go from where one item of a tour ends to where the next begins. */
@FunctionalInterface
interface TravelCost {

  /**
   * Cost of a gap, in whatever the tour is to be cheap in; never negative.
   *
   * @param from index of the item left, -1 for the start of the tour
   * @param fromX where it is left, mm
   * @param fromY the same
   * @param to index of the item entered
   * @param toX where it is entered, mm
   * @param toY the same
   */
  double of(int from, double fromX, double fromY, int to, double toX, double toY);

  /** No more than {@link #of} gives for the same gap, and worked out with less effort. */
  default double least(int from, double fromX, double fromY, int to, double toX, double toY) {
    return of(from, fromX, fromY, to, toX, toY);
  }

  /** A cost that the length of the gap alone tells. */
  static TravelCost byLength(DoubleUnaryOperator cost) {
    return (from, fromX, fromY, to, toX, toY) -> {
      double dx = toX - fromX;
      double dy = toY - fromY;
      return cost.applyAsDouble(Math.sqrt(dx * dx + dy * dy));
    };
  }
}
