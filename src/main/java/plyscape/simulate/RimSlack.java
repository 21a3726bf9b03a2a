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

  /** Ways and rings of a closer look, each as many. */
  private static final int CLOSE_WAYS = 32;

  private static final int CLOSE_RINGS = 4;

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

  /** At a place, mm, about: by eight ways from it. */
  double atMm(double x, double y) {
    if (bent == null || radiusMm == 0) {
      return 0;
    }
    double most = 0;
    for (double[] way : WAYS) {
      most = Math.max(most, changeMm(x, y, radiusMm * way[0], radiusMm * way[1]));
    }
    return most + taperMm(x, y);
  }

  /**
   * At a place where a floor is off its depth, mm: looked at closely where eight ways don't explain
   * that. The face is steepest between two of them, or turns within the radius.
   */
  double atMm(double x, double y, double offMm) {
    double about = atMm(x, y);
    if (Math.abs(offMm) <= about || bent == null || radiusMm == 0) {
      return about;
    }
    double most = 0;
    for (int ring = 1; ring <= CLOSE_RINGS; ring++) {
      double r = radiusMm * ring / CLOSE_RINGS;
      for (int way = 0; way < CLOSE_WAYS; way++) {
        double angle = 2 * Math.PI * way / CLOSE_WAYS;
        most = Math.max(most, changeMm(x, y, r * Math.cos(angle), r * Math.sin(angle)));
      }
    }
    return Math.max(about, most + taperMm(x, y));
  }

  private double changeMm(double x, double y, double dx, double dy) {
    return Math.abs(bent.faceMm(x + dx, y + dy) - bent.faceMm(x, y));
  }

  private double taperMm(double x, double y) {
    double taper = bent.bottom() == null ? 0 : bent.bottom().slope(x, y);
    for (BentPanel.Level level : bent.plies()) {
      taper = Math.max(taper, level.slope(x, y));
    }
    return taper * radiusMm;
  }
}
