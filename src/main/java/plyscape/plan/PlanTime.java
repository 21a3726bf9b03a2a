package plyscape.plan;

/**
 * Expected times in s, without tool changes and spindle start; and the bound no plan that respects
 * the stepover beats. Immutable.
 */
public record PlanTime(double cutS, double rapidS, double totalS, double lowerBoundS) {

  /** Nothing is cut. */
  static final PlanTime NONE = new PlanTime(0, 0, 0, 0);

  /** Checks that no time is negative. */
  public PlanTime {
    if (!(cutS >= 0 && rapidS >= 0 && totalS >= 0 && lowerBoundS >= 0)) {
      throw new IllegalArgumentException(
          "times " + cutS + ", " + rapidS + ", " + totalS + ", " + lowerBoundS);
    }
  }

  /** The sums, for panels cut one after the other. */
  PlanTime plus(PlanTime other) {
    return new PlanTime(
        cutS + other.cutS,
        rapidS + other.rapidS,
        totalS + other.totalS,
        lowerBoundS + other.lowerBoundS);
  }
}
