package plyscape.toolpath.ring;

import java.util.stream.IntStream;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.FieldSmoothing;

/**
 * The field on which the inner rings of a cutter that clears much are drawn: distances to the
 * walls, averaged so that rings turn in the corners of a pocket as wide as the cutter can go
 * without leaving wood between them. It is averaged over a quarter of the spacing everywhere, and
 * over more than a whole one by the share that a corner has room for.
 *
 * <p>Where straight walls meet at an angle 2 t, the field rises by sin t a mm along the middle:
 * rings lie spacing / sin t apart there, and a disk covers its diameter. The field may fall by what
 * is left of that, diameter sin t - spacing, and by as much more on each ring further in. What it
 * falls by is found on a coarse lattice, on which it is smooth, at about the cost of one average.
 */
final class RoundedField {

  /** Nodes of the coarse lattice to a spacing: the narrow average reaches that far. */
  private static final int PARTS = 4;

  /** The wide average reaches so many coarse nodes; 4 and 6 take 0.2 per cent longer. */
  private static final int WIDE = 5;

  /** Share of the diameter that is counted on: rings bend, and corners differ from ring to ring. */
  private static final double COVERED = 0.95;

  /** The least room within so many coarse nodes counts, or rings would grow horns in corners. */
  private static final int AROUND = 1;

  /**
   * Drawn, thinned and made arcs, a ring may come this much nearer to a wall than the field says,
   * mm.
   */
  private static final double DRAWN_MM = 0.01;

  /** And it changes over about so many. */
  private static final int SOFT = 1;

  private final DistanceField field;
  private final LevelField.Spacing spacing;
  private final int[] box;

  /** Lattice steps between coarse nodes. */
  private final int every;

  private final int across;
  private final int up;

  private RoundedField(DistanceField field, LevelField.Spacing spacing, int[] box, int every) {
    this.field = field;
    this.spacing = spacing;
    this.box = box;
    this.every = every;
    across = (box[1] - box[0] + every - 1) / every + 1;
    up = (box[3] - box[2] + every - 1) / every + 1;
  }

  /** Values at the nodes, mm; the distances themselves where the lattice is too coarse. */
  static float[] of(DistanceField field, LevelField.Spacing spacing) {
    int every = (int) Math.round(spacing.stepMm() / PARTS / field.lattice.stepMm());
    int[] box = every < 1 ? null : field.range.boxOver(0);
    return box == null ? field.distance : new RoundedField(field, spacing, box, every).values();
  }

  private float[] values() {
    float[] values = FieldSmoothing.smooth(field.distance, field.lattice.columns(), box, every);
    float[] narrow = coarse(values);
    float[] wide = smooth(narrow, WIDE);
    float[] share = smooth(least(shares(narrow, wide)), SOFT);
    float[] fall = new float[narrow.length];
    for (int k = 0; k < fall.length; k++) {
      fall[k] = share[k] * Math.max(0, narrow[k] - wide[k]);
    }
    IntStream.rangeClosed(box[2], box[3]).parallel().forEach(j -> lower(values, j, fall));
    return values;
  }

  private float[] coarse(float[] values) {
    float[] coarse = new float[across * up];
    for (int v = 0; v < up; v++) {
      int row = Math.min(box[3], box[2] + v * every) * field.lattice.columns();
      for (int u = 0; u < across; u++) {
        coarse[v * across + u] = values[row + Math.min(box[1], box[0] + u * every)];
      }
    }
    return coarse;
  }

  private float[] smooth(float[] coarse, int half) {
    return FieldSmoothing.smooth(coarse, across, new int[] {0, across - 1, 0, up - 1}, half);
  }

  /** The share of the wide average that each place has room for. */
  private float[] shares(float[] narrow, float[] wide) {
    double twoSteps = 2 * every * field.lattice.stepMm();
    // The mean of |x| over two averages is 2/3 of their half width.
    double most = 2.0 / 3 * WIDE * every * field.lattice.stepMm();
    float[] shares = new float[wide.length];
    for (int v = 0; v < up; v++) {
      for (int u = 0; u < across; u++) {
        int k = v * across + u;
        double gx = wide[u + 1 < across ? k + 1 : k] - wide[u > 0 ? k - 1 : k];
        double gy = wide[v + 1 < up ? k + across : k] - wide[v > 0 ? k - across : k];
        double sine = Math.min(1, Math.sqrt(gx * gx + gy * gy) / twoSteps);
        double room = COVERED * 2 * spacing.radiusMm() * sine - spacing.stepMm();
        room *= Math.max(1, (narrow[k] - spacing.radiusMm()) / spacing.stepMm());
        double fall = most * Math.sqrt(1 - sine * sine);
        shares[k] = room <= 0 ? 0 : room >= fall ? 1 : (float) (room / fall);
      }
    }
    return shares;
  }

  /** The least of each place's surroundings. */
  private float[] least(float[] shares) {
    return leastAlong(leastAlong(shares, across, 1, up, across), up, across, across, 1);
  }

  private static float[] leastAlong(float[] of, int count, int step, int lines, int lineStep) {
    float[] least = new float[of.length];
    for (int line = 0; line < lines; line++) {
      for (int i = 0; i < count; i++) {
        float low = 1;
        for (int a = Math.max(0, i - AROUND); a <= Math.min(count - 1, i + AROUND); a++) {
          low = Math.min(low, of[line * lineStep + a * step]);
        }
        least[line * lineStep + i * step] = low;
      }
    }
    return least;
  }

  /**
   * Takes the fall off the values of a row, by quadratic splines between coarse nodes. Around the
   * corner of a wall that stands out the average lies over the distance: not by more than the
   * allowance, or rings would cut the corner.
   */
  private void lower(float[] values, int j, float[] fall) {
    float[] along = new float[across];
    double[] weights = new double[3];
    int v = near(j - box[2], weights);
    for (int u = 0; u < across; u++) {
      double sum = 0;
      for (int d = 0; d < 3; d++) {
        sum += weights[d] * fall[Math.max(0, Math.min(up - 1, v + d - 1)) * across + u];
      }
      along[u] = (float) sum;
    }
    int row = j * field.lattice.columns();
    float most = (float) (spacing.allowanceMm() - DRAWN_MM);
    for (int i = box[0]; i <= box[1]; i++) {
      int u = near(i - box[0], weights);
      double lower =
          weights[0] * along[Math.max(0, u - 1)]
              + weights[1] * along[Math.min(across - 1, u)]
              + weights[2] * along[Math.min(across - 1, u + 1)];
      values[row + i] = Math.min(values[row + i] - (float) lower, field.distance[row + i] + most);
    }
  }

  /** The coarse node nearest to a node, and the weights of the one before, it and the next. */
  private int near(int node, double[] weights) {
    int near = (2 * node + every) / (2 * every);
    double t = (double) node / every - near;
    weights[0] = (0.5 - t) * (0.5 - t) / 2;
    weights[1] = 0.75 - t * t;
    weights[2] = (0.5 + t) * (0.5 + t) / 2;
    return near;
  }
}
