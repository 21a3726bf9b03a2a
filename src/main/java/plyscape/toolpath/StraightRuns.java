package plyscape.toolpath;

import java.util.ArrayList;
import java.util.List;

/**
 * Straight runs side by side over a part, at an even spacing from one of its edges to the other:
 * the other way to clear what lies inside the rings along the walls. Their ring indices fall from
 * the first run to the last, all of them above that of the ring that follows the wall, so that they
 * are cut one after the other and before it.
 */
final class StraightRuns {

  /** Lowest index of a run, and of a ring that runs stand for. */
  static final int LOWEST_INDEX = 4;

  /** Runs shorter than this are left to the ring around the part, in spacings. */
  private static final double SHORTEST = 0.5;

  private final InnerPart part;
  private final double spacing;

  /**
   * @param part to be cleared
   * @param spacingMm at most this far apart
   */
  StraightRuns(InnerPart part, double spacingMm) {
    this.part = part;
    spacing = spacingMm;
  }

  /**
   * The runs along a direction.
   *
   * @param degrees direction, from X counterclockwise
   * @param fromLeft whether the first run is the one farthest to the left of the direction
   */
  List<Ring> along(double degrees, boolean fromLeft) {
    double ux = Math.cos(Math.toRadians(degrees));
    double uy = Math.sin(Math.toRadians(degrees));
    double[] across = part.extent(-uy, ux);
    double[] ahead = part.extent(ux, uy);
    int gaps = (int) Math.ceil((across[1] - across[0]) / spacing - 1e-6);
    double first = gaps > 0 ? across[0] : (across[0] + across[1]) / 2;
    double apart = gaps > 0 ? (across[1] - across[0]) / gaps : 0;
    List<Ring> runs = new ArrayList<>();
    for (int line = 0; line <= gaps; line++) {
      int index = LOWEST_INDEX + 2 * (fromLeft ? line : gaps - line);
      stretches(ux, uy, first + line * apart, ahead, index, runs);
    }
    return runs;
  }

  /** Adds the stretches of one line that lie in the part. */
  private void stretches(
      double ux, double uy, double off, double[] ahead, int index, List<Ring> runs) {
    double h = part.stepMm();
    int steps = (int) ((ahead[1] - ahead[0]) / h);
    double start = Double.NaN;
    for (int s = 0; s <= steps + 1; s++) {
      double t = ahead[0] + s * h;
      boolean in = s <= steps && part.holds(t * ux - off * uy, t * uy + off * ux);
      if (in && Double.isNaN(start)) {
        start = t;
      } else if (!in && !Double.isNaN(start)) {
        double end = t - h;
        if (end - start >= SHORTEST * spacing) {
          double[] x = {start * ux - off * uy, end * ux - off * uy};
          double[] y = {start * uy + off * ux, end * uy + off * ux};
          runs.add(new Ring(index, false, x, y));
        }
        start = Double.NaN;
      }
    }
  }
}
