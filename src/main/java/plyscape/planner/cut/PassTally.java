package plyscape.planner.cut;

import plyscape.machine.ArcGeometry;
import plyscape.machine.Move;
import plyscape.plan.ToolProgram;

/** Adds up lengths, times and entries of the moves of one pass after another. */
final class PassTally {

  private double x;
  private double y;
  private double depth;
  private double cutMm;
  private double rapidMm;
  private double cutS;
  private double rapidS;
  private int plunges;
  private boolean goingDown;
  private boolean afterRapid = true;
  private boolean followsFaces;

  PassTally(double startX, double startY, double startDepth) {
    x = startX;
    y = startY;
    depth = startDepth;
  }

  /**
   * Begins the next pass where the last one ended.
   *
   * @param finishing whether it goes up and down with the faces: then only the way down after a
   *     rapid is an entry
   */
  void reset(boolean finishing) {
    followsFaces = finishing;
    cutMm = 0;
    rapidMm = 0;
    cutS = 0;
    rapidS = 0;
    plunges = 0;
    goingDown = false;
  }

  /** Adds a move that took so long. */
  void add(Move move, double seconds) {
    double length =
        move.isArc()
            ? ArcGeometry.of(x, y, depth, move).length()
            : Math.sqrt(sq(move.x() - x) + sq(move.y() - y) + sq(move.depth() - depth));
    boolean cutting = move.kind() != Move.Kind.RAPID;
    if (cutting) {
      cutMm += length;
      cutS += seconds;
    } else {
      rapidMm += length;
      rapidS += seconds;
    }
    boolean down = cutting && move.depth() > Math.max(depth, 0);
    if (down && !goingDown && (afterRapid || !followsFaces)) {
      plunges++;
    }
    goingDown = down;
    afterRapid = !cutting;
    x = move.x();
    y = move.y();
    depth = move.depth();
  }

  /** The sums since the last reset. */
  ToolProgram.PassSummary summary(int plyNumber, double depthMm, double stepdownFromMm) {
    return new ToolProgram.PassSummary(
        plyNumber, depthMm, stepdownFromMm, cutMm, rapidMm, plunges, cutS, rapidS);
  }

  private static double sq(double a) {
    return a * a;
  }
}
