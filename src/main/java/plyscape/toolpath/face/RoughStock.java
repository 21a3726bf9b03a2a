package plyscape.toolpath.face;

import java.util.List;
import plyscape.machine.ArcGeometry;
import plyscape.machine.Move;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.Sweep;
import plyscape.toolpath.task.Pass;
import plyscape.toolpath.task.ToolRun;

/**
 * Lowers the stock of a {@link FaceLattice} by what flat cutters have cut: every feed move sweeps
 * the cutter's disk; one that changes depth goes in short stretches, each at the shallower of its
 * ends.
 */
final class RoughStock {

  /** Chords stand in for arcs, this near, mm. */
  private static final double CHORD_MM = 0.003;

  /** A stretch changes its depth by no more than this, mm. */
  private static final double STRETCH_MM = 0.003;

  /** But none is shorter than so many nodes. */
  private static final double STRETCH_NODES = 4;

  private final FaceLattice lattice;
  private final Sweep sweep;

  /** Depth of the highest wood, mm. */
  private final double highest;

  RoughStock(FaceLattice lattice) {
    this.lattice = lattice;
    sweep =
        new Sweep(
            new Lattice(lattice.minU, lattice.minV, lattice.stepMm, lattice.columns, lattice.rows));
    float least = Float.POSITIVE_INFINITY;
    for (float stock : lattice.stock) {
      least = Math.min(least, stock);
    }
    highest = least;
  }

  /** Takes off what the runs cut. */
  void cut(List<ToolRun> runs) {
    for (ToolRun run : runs) {
      for (Pass pass : run.passes()) {
        cut(pass.moves(), run.tool().radiusMm());
      }
    }
  }

  private void cut(List<Move> moves, double radius) {
    double x = Double.NaN;
    double y = Double.NaN;
    double depth = 0;
    for (Move move : moves) {
      if (move.kind() != Move.Kind.RAPID && !Double.isNaN(x)) {
        if (move.isArc()) {
          arc(x, y, depth, move, radius);
        } else {
          slope(
              new double[] {x, y, depth}, new double[] {move.x(), move.y(), move.depth()}, radius);
        }
        if (move.depth() > depth) {
          line(move.x(), move.y(), move.x(), move.y(), move.depth(), radius);
        }
      }
      x = move.x();
      y = move.y();
      depth = move.depth();
    }
  }

  private void arc(double x, double y, double depth, Move move, double radius) {
    ArcGeometry arc = ArcGeometry.of(x, y, 0, move);
    double step = 2 * Math.acos(Math.max(0, 1 - CHORD_MM / arc.radius()));
    int n = (int) Math.max(1, Math.ceil(Math.abs(arc.sweep()) / step));
    double[] from = {x, y, depth};
    for (int k = 1; k <= n; k++) {
      double angle = arc.startAngle() + arc.sweep() * k / n;
      double[] to = {
        k == n ? move.x() : move.centreX() + arc.radius() * Math.cos(angle),
        k == n ? move.y() : move.centreY() + arc.radius() * Math.sin(angle),
        depth + (move.depth() - depth) * k / n
      };
      slope(from, to, radius);
      from = to;
    }
  }

  /** A straight way between two places, x, y and depth each. */
  private void slope(double[] from, double[] to, double radius) {
    double down = to[2] - from[2];
    double length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    int n =
        (int)
            Math.max(
                1,
                Math.min(
                    Math.ceil(Math.abs(down) / STRETCH_MM),
                    length / (STRETCH_NODES * lattice.stepMm)));
    for (int k = 0; k < n; k++) {
      double a = (double) k / n;
      double b = (k + 1.0) / n;
      line(
          from[0] + a * (to[0] - from[0]),
          from[1] + a * (to[1] - from[1]),
          from[0] + b * (to[0] - from[0]),
          from[1] + b * (to[1] - from[1]),
          from[2] + (down > 0 ? a : b) * down,
          radius);
    }
  }

  private void line(double ax, double ay, double bx, double by, double depth, double radius) {
    if (depth <= highest) {
      return;
    }
    float to = (float) depth;
    boolean t = lattice.turned;
    sweep.all(
        t ? ay : ax,
        t ? ax : ay,
        t ? by : bx,
        t ? bx : by,
        radius,
        (first, last) -> {
          for (int node = first; node <= last; node++) {
            lattice.stock[node] = Math.max(lattice.stock[node], to);
          }
        });
  }
}
