package plyscape.toolpath.motion;

import java.util.ArrayList;
import java.util.List;
import plyscape.machine.Tool;

/**
 * Makes one line of those that go on straight at one feed, so that programs stay small. None goes
 * down by more than the stepdown: steps down on the spot stay steps.
 */
final class LineThinning {

  /** Lines may be thinned by this, mm. */
  private static final double THIN_MM = 0.0015;

  /** And by this in depth, mm: bites are measured from one way to the next. */
  private static final double DEPTH_MM = 0.0003;

  /** Places that one line may stand for. */
  private static final int MOST_THINNED = 200;

  /** Depths that are written alike differ by less, mm. */
  private static final double SAME_MM = 1e-6;

  private LineThinning() {}

  /**
   * The ends of lines that go on straight at one feed.
   *
   * @param points X, Y, depth and share of the feed to it of each
   * @param tool of whose feed those are shares
   * @return X, Y, depth and feed, mm/min; without the first point
   */
  static List<double[]> ends(List<double[]> points, Tool tool) {
    List<double[]> ends = new ArrayList<>();
    int from = 0;
    while (from < points.size() - 1) {
      int to = from + 1;
      while (to + 1 < points.size()
          && to - from < MOST_THINNED
          && points.get(to + 1)[3] == points.get(from + 1)[3]
          && points.get(to + 1)[2] - points.get(from)[2] <= tool.stepdownMm() + SAME_MM
          && straight(points, from, to + 1)) {
        to++;
      }
      double[] end = points.get(to).clone();
      end[3] = points.get(from + 1)[3] * tool.feedMmPerMin();
      ends.add(end);
      from = to;
    }
    return ends;
  }

  private static boolean straight(List<double[]> points, int from, int to) {
    double[] a = points.get(from);
    double[] b = points.get(to);
    double dx = b[0] - a[0];
    double dy = b[1] - a[1];
    double dz = b[2] - a[2];
    double squared = dx * dx + dy * dy + dz * dz;
    if (squared < 1e-12) {
      return false;
    }
    double before = 0;
    for (int k = from + 1; k < to; k++) {
      double[] p = points.get(k);
      double ex = p[0] - a[0];
      double ey = p[1] - a[1];
      double ez = p[2] - a[2];
      double t = (ex * dx + ey * dy + ez * dz) / squared;
      if (t < before - 1e-9
          || t > 1
          || Math.hypot(ex - t * dx, ey - t * dy) > THIN_MM
          || Math.abs(ez - t * dz) > DEPTH_MM) {
        return false;
      }
      before = t;
    }
    return true;
  }
}
