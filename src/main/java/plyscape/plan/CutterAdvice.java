package plyscape.plan;

import java.util.Comparator;
import java.util.Optional;

/**
 * A cutter that would save more than a tenth of the time, its change counted. Immutable.
 *
 * @param estimate the cutter, and the time with it
 * @param savedShare of the time now
 */
public record CutterAdvice(CutterEstimate estimate, double savedShare) {

  /** Less isn't worth a line. */
  private static final double WORTH_SAYING = 0.1;

  /** The one that would save most, if any saves enough. */
  public static Optional<CutterAdvice> of(CutPlan plan) {
    double now = plan.time().totalS();
    double change = plan.job().machine().toolChangeS() * plan.figures().size();
    return plan.estimates().stream()
        .map(e -> new CutterAdvice(e, (now - e.totalS() - change) / now))
        .filter(advice -> advice.savedShare() > WORTH_SAYING)
        .max(Comparator.comparingDouble(CutterAdvice::savedShare));
  }
}
