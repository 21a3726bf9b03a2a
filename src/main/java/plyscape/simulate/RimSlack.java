package plyscape.simulate;

/**
 * How far a floor may lie off its bent depth because a cutter's flat end is level while the panel
 * slopes under it: the slope over the cutter's radius. Immutable.
 */
final class RimSlack {

  private static final double DIAGONAL = Math.sqrt(0.5);

  /** Eight directions. */
  static final double[][] WAYS = {
    {1, 0}, {DIAGONAL, DIAGONAL}, {0, 1}, {-DIAGONAL, DIAGONAL},
    {-1, 0}, {-DIAGONAL, -DIAGONAL}, {0, -1}, {DIAGONAL, -DIAGONAL},
  };

  private final BentPanel bent;
  private final double radiusMm;

  /**
   * Of a panel.
   *
   * @param bent how it lies, or null for a flat one
   * @param radiusMm of the widest flat cutter
   */
  RimSlack(BentPanel bent, double radiusMm) {
    this.bent = bent;
    this.radiusMm = radiusMm;
  }

  /** At a place, mm. */
  double atMm(double x, double y) {
    if (bent == null || radiusMm == 0) {
      return 0;
    }
    double here = bent.faceMm(x, y);
    double most = 0;
    for (double[] way : WAYS) {
      double there = bent.faceMm(x + radiusMm * way[0], y + radiusMm * way[1]);
      most = Math.max(most, Math.abs(there - here));
    }
    double taper = bent.bottom() == null ? 0 : bent.bottom().slope(x, y);
    for (BentPanel.Level level : bent.plies()) {
      taper = Math.max(taper, level.slope(x, y));
    }
    return most + taper * radiusMm;
  }
}
