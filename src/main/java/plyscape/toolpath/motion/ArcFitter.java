package plyscape.toolpath.motion;

import java.util.ArrayList;
import java.util.List;
import plyscape.machine.Move;

/**
 * Turns runs of short lines into fewer lines and arcs that stay within a tolerance of them, both
 * ways: no point of the old path is further from the new one, and none of the new one from the old.
 * Runs have one feed and one depth; their ends stay exactly; everything else is passed on as it is.
 * Greedy, each line or arc as long as it can be.
 *
 * <p>Usage: {@code List<Move> arcs = ArcFitter.fit(startX, startY, startDepth, moves,
 * PathOptions.ARC_TOLERANCE_MM, PathOptions.ARC_TOLERANCE_MM);} with a wall on the left give 0.001
 * for {@code leftMm}, and the new path comes no nearer to it.
 *
 * <p>Arcs turn by 170 degrees at most with radii from 0.1 to 500 mm, and stand for three segments
 * or more.
 */
public final class ArcFitter {

  private final double leftMm;
  private final double rightMm;
  private final List<Move> out = new ArrayList<>();

  private ArcFitter(double leftMm, double rightMm) {
    this.leftMm = leftMm;
    this.rightMm = rightMm;
  }

  /**
   * Fits a path.
   *
   * @param startX where the first move starts, mm
   * @param startY the same
   * @param startDepth the same, positive down
   * @param moves the path
   * @param leftMm how far the new path may lie to the left of the old one, over 0
   * @param rightMm how far to its right
   */
  public static List<Move> fit(
      double startX,
      double startY,
      double startDepth,
      List<Move> moves,
      double leftMm,
      double rightMm) {
    if (!(leftMm > 0) || !(rightMm > 0)) {
      throw new IllegalArgumentException("tolerance " + leftMm + ", " + rightMm);
    }
    return new ArcFitter(leftMm, rightMm).run(startX, startY, startDepth, moves);
  }

  private List<Move> run(double startX, double startY, double startDepth, List<Move> moves) {
    double x = startX;
    double y = startY;
    double depth = startDepth;
    for (int i = 0; i < moves.size(); ) {
      Move first = moves.get(i);
      int end = i;
      while (end < moves.size() && joins(first, moves.get(end), depth)) {
        end++;
      }
      if (end - i < 2) {
        out.add(first);
        end = i + 1;
      } else {
        stretch(x, y, moves.subList(i, end));
      }
      Move last = moves.get(end - 1);
      x = last.x();
      y = last.y();
      depth = last.depth();
      i = end;
    }
    return out;
  }

  private static boolean joins(Move first, Move move, double depth) {
    return move.kind() == Move.Kind.LINE
        && move.depth() == depth
        && move.feedMmPerMin() == first.feedMmPerMin();
  }

  private void stretch(double startX, double startY, List<Move> lines) {
    int n = lines.size();
    double[] x = new double[n + 1];
    double[] y = new double[n + 1];
    x[0] = startX;
    y[0] = startY;
    for (int i = 0; i < n; i++) {
      x[i + 1] = lines.get(i).x();
      y[i + 1] = lines.get(i).y();
    }
    var candidate = new ArcCandidate(x, y, leftMm, rightMm);
    for (int from = 0; from < n; ) {
      int to = reach(candidate, from, n);
      candidate.fits(from, to);
      Move line = lines.get(to - 1);
      if (candidate.bulge == 0) {
        out.add(line);
      } else if (to - from < 3) {
        // Any two segments lie on a circle: it would be an arc for nothing.
        to = from + 1;
        out.add(lines.get(from));
      } else {
        out.add(
            Move.arc(
                candidate.bulge < 0,
                line.x(),
                line.y(),
                line.depth(),
                candidate.centreX,
                candidate.centreY,
                line.feedMmPerMin()));
      }
      from = to;
    }
  }

  /** The furthest vertex found that one line or arc reaches: doubling steps, then halving. */
  private static int reach(ArcCandidate candidate, int from, int last) {
    int good = from + 1;
    int step = 1;
    int bad = last + 1;
    while (good < last) {
      int next = Math.min(last, good + step);
      if (!candidate.fits(from, next)) {
        bad = next;
        break;
      }
      good = next;
      step *= 2;
    }
    while (bad - good > 1) {
      int middle = (good + bad) >>> 1;
      if (candidate.fits(from, middle)) {
        good = middle;
      } else {
        bad = middle;
      }
    }
    return good;
  }
}
