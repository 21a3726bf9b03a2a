package plyscape.planner.advice;

import java.util.Locale;
import plyscape.fault.Warnings;
import plyscape.layup.advice.NextMeasurement;
import plyscape.plan.Landscape;

/** Says which measurement by place would lower the expected area of wrong colour most. */
public final class MeasureAdvice {

  /** Plus or minus of good calipers or a glass with a scale, mm (common practice, no source). */
  private static final double MEASURING_MM = 0.02;

  /** Expected shares of wrong colour below this aren't worth a word. */
  private static final double LEAST_SHARE = 1e-4;

  private MeasureAdvice() {}

  /** Warns, with code {@code measure-next}, where it helps. */
  public static void warn(Landscape panel, Warnings warnings) {
    NextMeasurement.of(panel.job().layup(), panel.job().allowance(), panel.spots(), MEASURING_MM)
        .filter(next -> next.before() >= LEAST_SHARE)
        .ifPresent(
            next ->
                warnings.add(
                    "measure-next",
                    String.format(
                        Locale.ROOT,
                        "%.2f %% of the area is expected to show a wrong ply; the bottom of ply %d"
                            + " (%s) measured at %s would bring that to %.2f %%",
                        100 * next.before(),
                        next.plyNumber(),
                        panel.job().layup().ply(next.plyNumber()).name(),
                        next.where(),
                        100 * next.after()),
                    "ply " + next.plyNumber()));
  }
}
