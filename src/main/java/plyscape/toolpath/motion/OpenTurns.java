package plyscape.toolpath.motion;

import java.util.ArrayList;
import java.util.List;

/**
 * Spreads the straight drops and rises of a way over the open ground on both sides of them: where
 * nothing stands the cutter changes its depth as it goes, and loses no time by stopping for it.
 */
final class OpenTurns {

  /** Places this near are the same, mm. */
  private static final double SAME_MM = 1e-6;

  /** Depths this near are the same, mm. */
  private static final double LEVEL_MM = 1e-4;

  /** A rise is spread over this much way a mm. */
  private static final double RISE = 2;

  /** Tells where nothing stands. */
  interface Ground {
    /** Whether nothing that the cutter meets at a point stands over a depth. */
    boolean gone(double[] point, double depthMm);
  }

  private final List<double[]> points;
  private final Ground ground;
  private final double fall;

  private OpenTurns(List<double[]> points, double fall, Ground ground) {
    this.points = points;
    this.fall = fall;
    this.ground = ground;
  }

  /**
   * The way with its drops and rises spread.
   *
   * @param points X, Y, depth and share of the feed to it of each, mm; the ground may know more by
   *     what follows
   * @param fallMm way that a drop of 1 mm is spread over, mm
   */
  static List<double[]> spread(List<double[]> points, double fallMm, Ground ground) {
    List<double[]> copies = new ArrayList<>();
    points.forEach(point -> copies.add(point.clone()));
    return new OpenTurns(copies, fallMm, ground).run();
  }

  private List<double[]> run() {
    List<double[]> out = new ArrayList<>();
    for (int i = 0; i < points.size(); i++) {
      if (i > 0 && straight(i)) {
        spread(i);
      }
    }
    for (int i = 0; i < points.size(); i++) {
      // A drop that is spread has come to the same place twice.
      if (i == 0 || way(i) > SAME_MM || straight(i)) {
        out.add(points.get(i));
      }
    }
    return out;
  }

  private double way(int i) {
    double[] a = points.get(i - 1);
    double[] b = points.get(i);
    return Math.hypot(b[0] - a[0], b[1] - a[1]);
  }

  /** Whether the way to a point is straight up or down. */
  private boolean straight(int i) {
    return way(i) <= SAME_MM && Math.abs(points.get(i)[2] - points.get(i - 1)[2]) > LEVEL_MM;
  }

  private void spread(int i) {
    double from = points.get(i - 1)[2];
    double to = points.get(i)[2];
    double deep = Math.max(from, to);
    double need = Math.abs(to - from) * (to > from ? fall : RISE);
    int first = i - 1;
    double before = 0;
    while (first > 0 && before < need && open(first - 1, from, deep) && open(first, from, deep)) {
      before += way(first);
      first--;
    }
    int last = i;
    double after = 0;
    while (last + 1 < points.size()
        && before + after < need
        && open(last + 1, to, deep)
        && open(last, to, deep)) {
      after += way(last + 1);
      last++;
    }
    double so = 0;
    for (int k = first; k <= last && before + after > SAME_MM; k++) {
      so += k == first ? 0 : way(k);
      points.get(k)[2] = from + (to - from) * so / (before + after);
    }
  }

  /** Whether a point lies on a level and nothing stands there over a depth. */
  private boolean open(int k, double level, double deep) {
    double[] point = points.get(k);
    return Math.abs(point[2] - level) <= LEVEL_MM && ground.gone(point, deep);
  }
}
