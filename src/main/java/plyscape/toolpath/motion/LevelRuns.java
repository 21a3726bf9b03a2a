package plyscape.toolpath.motion;

import java.util.ArrayList;
import java.util.List;

/**
 * The runs to and fro by which what stands along a line is taken down level by level: the line is
 * gone along once at its floor, and where more stands than one run may take, that is taken down
 * first, over no more of the line than it stands on. Depths in mm, positive down.
 */
final class LevelRuns {

  /** Beyond the wood the cutter turns this far out, mm. */
  private static final double OUT_MM = 0.3;

  /** Depths this near are the same, mm. */
  private static final double SAME_MM = 1e-4;

  /** Neighbouring sections, both ends included. */
  private record Stretch(int low, int high) {}

  /**
   * The cutter goes on to a section.
   *
   * @param section which
   * @param depthMm how deep
   * @param goneMm how deep what stood there was gone before
   */
  record Place(int section, double depthMm, double goneMm) {}

  private final double[] way;
  private final double[] levels;

  /**
   * Turning and coming down to the next level takes as long as this much way: rests nearer to each
   * other are cut as one, mm.
   */
  private final double turnMm;

  private final double[] gone;
  private final List<Place> places = new ArrayList<>();
  private int at;
  private double depth;

  /** Whether a stretch has been met that ends in wood at both ends. */
  private boolean stuck;

  /**
   * @param way so far to each section, mm
   * @param standing depth of the highest wood that the cutter meets at each, mm
   * @param levels depths that are reached one after the other, the floor last
   * @param turnMm way that takes as long as turning and coming down to the next level, mm
   */
  LevelRuns(double[] way, double[] standing, double[] levels, double turnMm) {
    this.turnMm = turnMm;
    this.way = way;
    this.levels = levels;
    gone = standing.clone();
  }

  /**
   * The way over all sections; none where a stretch ends in wood at both ends.
   *
   * @param start the end at which the cutter is
   */
  List<Place> from(int start) {
    at = start;
    depth = levels[levels.length - 1];
    sweep(new Stretch(0, way.length - 1), levels.length - 1);
    return stuck ? List.of() : places;
  }

  /** Length of the way, with what turning takes, mm. */
  double lengthMm() {
    double sum = turnMm;
    for (int k = 1; k < places.size(); k++) {
      Place before = places.get(k - 1);
      Place place = places.get(k);
      sum += Math.abs(way[place.section()] - way[before.section()]);
      sum += place.depthMm() > before.depthMm() + SAME_MM ? turnMm : 0;
    }
    return sum;
  }

  /** Takes a stretch down to a level, from an end that is open. */
  private void sweep(Stretch all, int level) {
    boolean lowOpen = gone(all.low(), level);
    boolean highOpen = gone(all.high(), level);
    stuck |= !lowOpen && !highOpen;
    if (stuck) {
      return;
    }
    boolean nearLow = way[at] - way[all.low()] <= way[all.high()] - way[at];
    boolean up = !highOpen || lowOpen && nearLow;
    over(up ? all.low() : all.high(), levels[level]);
    Stretch above = above(all, up, level);
    while (above != null && !stuck) {
      int begin = up ? above.low() : above.high();
      int end = up ? above.high() : above.low();
      run(begin, level);
      sweep(above, level - 1);
      Stretch next = above(all, up, level);
      if (mm(at, end) < mm(at, begin)) {
        int far = up ? all.high() : all.low();
        boolean last = next == null && mm(far, end) <= turnMm;
        run(last ? far : end, level);
        if (last) {
          // All is done on the way back.
          run(begin, level);
          return;
        }
      }
      run(begin, level);
      above = next;
    }
    run(up ? all.high() : all.low(), level);
  }

  private double mm(int a, int b) {
    return Math.abs(way[a] - way[b]);
  }

  private boolean gone(int i, int level) {
    return gone[i] >= levels[level] - SAME_MM;
  }

  /**
   * The first stretch within another where more stands than one run at a level may take, led out of
   * that wood; null if there is none.
   */
  private Stretch above(Stretch within, boolean up, int level) {
    int from = -1;
    int last = -1;
    int step = up ? 1 : -1;
    int end = (up ? within.high() : within.low()) + step;
    for (int i = up ? within.low() : within.high(); level > 0 && i != end; i += step) {
      if (from >= 0 && mm(i, last) > turnMm) {
        break;
      }
      if (!gone(i, level - 1)) {
        from = from < 0 ? i : from;
        last = i;
      }
    }
    return from < 0 ? null : out(Math.min(from, last), Math.max(from, last), within);
  }

  private Stretch out(int first, int last, Stretch within) {
    int low = first;
    while (low > within.low() && mm(first, low) < OUT_MM) {
      low--;
    }
    int high = last;
    while (high < within.high() && mm(last, high) < OUT_MM) {
      high++;
    }
    return new Stretch(low, high);
  }

  /** Goes on to a section at a level. */
  private void run(int to, int level) {
    int step = to >= at ? 1 : -1;
    for (int i = at; i != to + step; i += step) {
      places.add(new Place(i, levels[level], gone[i]));
      gone[i] = Math.max(gone[i], levels[level]);
    }
    at = to;
    depth = levels[level];
  }

  /** Over to where a run begins and to its depth, through what is gone. */
  private void over(int to, double toDepth) {
    int from = at;
    int step = to > from ? 1 : -1;
    // The first run is come down to, wherever it begins.
    for (int i = places.isEmpty() ? to : from; i != to; i += step) {
      double so = mm(i, from) / mm(to, from);
      double straight = depth + so * (toDepth - depth);
      places.add(new Place(i, Math.min(gone[i], straight), gone[i]));
    }
    at = to;
    depth = toDepth;
  }
}
