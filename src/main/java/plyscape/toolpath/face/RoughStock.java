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
 * the cutter's disk, one that changes depth at the shallower of its ends.
 */
final class RoughStock {

  /** Chords stand in for arcs, this near, mm. */
  private static final double CHORD_MM = 0.003;

  private final FaceLattice lattice;
  private final Sweep sweep;

  RoughStock(FaceLattice lattice) {
    this.lattice = lattice;
    sweep =
        new Sweep(
            new Lattice(lattice.minU, lattice.minV, lattice.stepMm, lattice.columns, lattice.rows));
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
        double shallow = Math.min(depth, move.depth());
        if (move.isArc()) {
          arc(x, y, move, shallow, radius);
        } else {
          line(x, y, move.x(), move.y(), shallow, radius);
        }
        if (move.depth() > shallow) {
          line(move.x(), move.y(), move.x(), move.y(), move.depth(), radius);
        }
      }
      x = move.x();
      y = move.y();
      depth = move.depth();
    }
  }

  private void arc(double x, double y, Move move, double depth, double radius) {
    ArcGeometry arc = ArcGeometry.of(x, y, 0, move);
    double step = 2 * Math.acos(Math.max(0, 1 - CHORD_MM / arc.radius()));
    int n = (int) Math.max(1, Math.ceil(Math.abs(arc.sweep()) / step));
    double px = x;
    double py = y;
    for (int k = 1; k <= n; k++) {
      double angle = arc.startAngle() + arc.sweep() * k / n;
      double qx = k == n ? move.x() : move.centreX() + arc.radius() * Math.cos(angle);
      double qy = k == n ? move.y() : move.centreY() + arc.radius() * Math.sin(angle);
      line(px, py, qx, qy, depth, radius);
      px = qx;
      py = qy;
    }
  }

  private void line(double ax, double ay, double bx, double by, double depth, double radius) {
    if (depth <= 0) {
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
