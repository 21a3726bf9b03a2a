package plyscape.toolpath;

import java.util.ArrayList;
import java.util.List;
import plyscape.machine.Machine;
import plyscape.machine.MotionModel;
import plyscape.machine.Move;
import plyscape.machine.Tool;

/**
 * About how long the pieces of one place take: each from rest to rest by the time model, at the
 * feeds that its widths of cut allow, and the ways between them. Without entries and arcs; near
 * enough to tell which of two ways to clear the same ground is faster (see the tests).
 */
final class DryRun implements PieceOrder.Cutter {

  /** A way up, over and down costs this and its acceleration, s. */
  private static final double LIFT_S = 0.5;

  private final Lattice lattice;
  private final byte[] state;
  private final Tool tool;
  private final Machine machine;
  private final PathOptions options;
  private final MotionModel model;
  private final RapidTime rapids;
  private final Sweep sweep;
  private double x = Double.NaN;
  private double y;
  private double seconds;
  private int count;

  /**
   * @param state of the nodes, see {@link RingCover}; what is cut is marked
   */
  DryRun(Lattice lattice, byte[] state, Tool tool, Machine machine, PathOptions options) {
    this.lattice = lattice;
    this.state = state;
    this.tool = tool;
    this.machine = machine;
    this.options = options;
    model = new MotionModel(machine);
    rapids = new RapidTime(machine);
    sweep = new Sweep(lattice);
  }

  /** So far, s. */
  double seconds() {
    return seconds;
  }

  /** What it would take to clear, at one stepover, what is left of what was to be cleared, s. */
  double restSeconds() {
    int left = 0;
    for (byte node : state) {
      left += (node & RingCover.WANTED) != 0 ? 1 : 0;
    }
    return left * lattice.nodeAreaMm2() / (tool.stepoverMm() * tool.feedMmPerMin() / 60);
  }

  @Override
  public void cut(StepWork work, Piece piece) {
    Piece placed = piece.closed() && !Double.isNaN(x) ? piece.startingNear(x, y) : piece;
    if (!Double.isNaN(x)) {
      seconds += way(Math.hypot(placed.x()[0] - x, placed.y()[0] - y), piece.closed());
    }
    double radius = tool.radiusMm();
    sweep.all(placed.x()[0], placed.y()[0], placed.x()[0], placed.y()[0], radius, this::clear);
    Chunks chunks =
        Chunks.of(
            new Ring(placed.index(), placed.closed(), placed.x(), placed.y()),
            Math.max(6 * lattice.stepMm(), Math.min(1.2, radius / 2)));
    List<Move> moves = new ArrayList<>();
    for (int c = 0; c < chunks.count(); c++) {
      count = 0;
      for (int i = chunks.start(c); i < chunks.start(c + 1); i++) {
        sweep.fresh(
            chunks.x(i), chunks.y(i), chunks.x(i + 1), chunks.y(i + 1), radius, this::clear);
      }
      double width = count * lattice.nodeAreaMm2() / Math.max(1e-9, chunks.lengthMm(c));
      double feed = tool.feedMmPerMin() * WidthFeed.share(width, tool, options);
      for (int i = chunks.start(c) + 1; i <= chunks.start(c + 1); i++) {
        if (chunks.own(i) || i == chunks.start(c + 1)) {
          moves.add(Move.line(chunks.x(i), chunks.y(i), 0, feed));
        }
      }
    }
    seconds += model.times(placed.x()[0], placed.y()[0], 0, moves).totalS();
    int last = placed.closed() ? 0 : placed.size() - 1;
    x = placed.x()[last];
    y = placed.y()[last];
  }

  /**
   * Seconds from one piece to the next: straight to a near one (a ring is met in passing, which
   * saves about one of the two stops that both were timed with), or over what stands.
   */
  private double way(double mm, boolean ring) {
    double feed = tool.feedMmPerMin() / 60;
    double acceleration = machine.accelerationMmPerS2();
    if (mm > 4 * tool.stepoverMm()) {
      return LIFT_S + rapids.seconds(mm);
    }
    return mm / feed - (ring ? feed / acceleration / 2 : 0);
  }

  private void clear(int first, int last) {
    for (int k = first; k <= last; k++) {
      if (state[k] != RingCover.DONE) {
        state[k] = RingCover.DONE;
        count++;
      }
    }
  }
}
