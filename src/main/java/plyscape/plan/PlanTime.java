package plyscape.plan;

/**
 * Expected times in s, without tool changes and spindle start; and the bound no plan that respects
 * the stepover beats.
 */
public record PlanTime(double cutS, double rapidS, double totalS, double lowerBoundS) {

  /** The sums, for panels cut one after the other. */
  PlanTime plus(PlanTime other) {
    return new PlanTime(
        cutS + other.cutS,
        rapidS + other.rapidS,
        totalS + other.totalS,
        lowerBoundS + other.lowerBoundS);
  }
}
