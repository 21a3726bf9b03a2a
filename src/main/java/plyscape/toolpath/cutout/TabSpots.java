package plyscape.toolpath.cutout;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import plyscape.fault.JobFault;

/** Where tabs hold the piece: on straight stretches, as evenly spread as these allow. */
final class TabSpots {

  /** Places along the path that are tried. */
  private static final double STEP_MM = 0.5;

  private TabSpots() {}

  /**
   * Middles of the tabs, lengths along the path, rising.
   *
   * @param count how many
   * @param spanMm along the path over which the cutter is lifted for one tab
   * @throws JobFault if there aren't so many straight stretches
   */
  static List<Double> of(OutlinePath path, int count, double spanMm) {
    List<Double> out = new ArrayList<>();
    double apart = path.lengthMm() / Math.max(1, count);
    // Half a step off the path's start, where every round begins and ends.
    for (int k = 0; k < count; k++) {
      Double best = near(path, (k + 0.5) * apart, apart, spanMm, true);
      best = best == null ? near(path, (k + 0.5) * apart, apart, spanMm, false) : best;
      if (best == null) {
        throw new JobFault(
            String.format(
                Locale.ROOT,
                "no straight stretch of %.1f mm for tab %d of %d on the outline; its longest side"
                    + " has %.1f mm",
                spanMm,
                k + 1,
                count,
                longest(path)),
            "set a smaller outline.tab_width, fewer outline.tabs, or a thinner outline.tool");
      }
      out.add(best);
    }
    return out;
  }

  /**
   * The place nearest to the one wanted that fits, within this tab's share of the path; or null.
   */
  private static Double near(
      OutlinePath path, double wanted, double apart, double spanMm, boolean exact) {
    for (double off = 0; off < apart / 2 - spanMm / 2; off += STEP_MM) {
      for (double middle : new double[] {wanted + off, wanted - off}) {
        if (fits(path, middle, spanMm, exact)) {
          return middle;
        }
      }
    }
    return null;
  }

  private static boolean fits(OutlinePath path, double middle, double spanMm, boolean exact) {
    double from = middle - spanMm / 2;
    double to = middle + spanMm / 2;
    return from > 0
        && to < path.lengthMm()
        && (path.side(from) == path.side(to) || !exact && straight(path, from, to));
  }

  /** Rounded corners of a drawn curve bend little from side to side; tabs may lie there. */
  private static boolean straight(OutlinePath path, double from, double to) {
    double[] a = path.point(from);
    double[] b = path.point(to);
    double chord = Math.hypot(b[0] - a[0], b[1] - a[1]);
    return to - from - chord < 0.01 * (to - from);
  }

  private static double longest(OutlinePath path) {
    double out = 0;
    for (int i = 0; i + 1 < path.at().length; i++) {
      out = Math.max(out, path.at()[i + 1] - path.at()[i]);
    }
    return out;
  }
}
