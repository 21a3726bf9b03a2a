package plyscape.toolpath.motion;

import java.util.ArrayList;
import java.util.List;
import plyscape.machine.Machine;
import plyscape.machine.Tool;
import plyscape.toolpath.cover.StepWork;
import plyscape.toolpath.depth.DepthPlan;
import plyscape.toolpath.lattice.Ring;
import plyscape.toolpath.lattice.Stock;
import plyscape.toolpath.ring.Chunks;
import plyscape.toolpath.ring.Piece;
import plyscape.toolpath.task.Pass;
import plyscape.toolpath.task.PathOptions;

/**
 * Turns the ordered pieces of one cutter into moves and cuts them in the planner's stock, at a feed
 * that falls where the cutter takes more than its stepover. A new pass begins whenever the step
 * changes.
 */
public final class PassCutter {

  /** Arcs along a wall may come nearer to it than the lines they stand for by this, mm. */
  private static final double WALL_SIDE_MM = 0.002;

  private final CutterHead head;
  private final PieceEntry entry;
  private final PieceGlide glide;
  private final List<Pass> passes = new ArrayList<>();
  private StepWork work;

  /** Where rings of the step being cut begin. */
  private GrainStart starts;

  /**
   * @param stock panel as the cutters before left it
   * @param start where the cutter hangs, at safe height
   */
  public PassCutter(Stock stock, Tool tool, Machine machine, PathOptions options, double[] start) {
    head = new CutterHead(stock, tool, machine, options, start);
    entry = new PieceEntry(head);
    glide = new PieceGlide(head, entry);
  }

  /** Lifts to safe height; the passes. */
  public List<Pass> passes() {
    if (work != null) {
      head.lift(-head.machine.safeHeightMm());
      endPass();
      work = null;
    }
    return List.copyOf(passes);
  }

  private void endPass() {
    DepthPlan.Step step = work.step();
    MoveList moves = head.moves;
    passes.add(
        new Pass(work.field().level().plyNumber(), step.depthMm(), step.fromMm(), moves.moves()));
    head.moves = new MoveList(moves.x, moves.y, moves.depth);
  }

  private void begin(StepWork next) {
    if (work != null) {
      if (head.down) {
        head.leaveWall();
      }
      endPass();
    }
    work = next;
    head.depth = next.step().depthMm();
    head.way = new Clearway(next.field().field(), head.stock, head.radius, head.depth);
    // A ring met in passing begins a lead later: a stepover from the corner even then.
    starts =
        new GrainStart(
            next.field().level().grainDegrees(),
            (PieceGlide.LEADS[0] + 1) * head.tool.stepoverMm());
    if (head.here == null) {
      head.here = head.way;
    }
    head.headingX = Double.NaN;
  }

  /** Cuts a piece of a step. */
  @SuppressWarnings("ReferenceEquality") // another step of the same shape is another step
  public void cut(StepWork of, Piece piece) {
    if (of != work) {
      begin(of);
    }
    Piece along = piece.closed() ? starts.place(piece, head.moves.x, head.moves.y) : piece;
    Piece entered = head.level() ? glide.onto(piece, along) : null;
    if (entered == null) {
      entered = entry.enter(piece.closed() ? entry.started(piece, along) : piece);
    }
    head.here = head.way;
    follow(entered);
    head.alongWall = entered.wall();
  }

  private void follow(Piece piece) {
    Ring ring = new Ring(piece.index(), piece.closed(), piece.x(), piece.y());
    Chunks chunks =
        Chunks.of(ring, Math.max(6 * head.stock.lattice.stepMm(), Math.min(1, head.radius / 3)));
    double[] shares = head.feeds.cut(chunks, head.depth);
    MoveList path = new MoveList(head.moves.x, head.moves.y, head.depth);
    for (int c = 0; c < chunks.count(); c++) {
      double feed = head.tool.feedMmPerMin() * shares[c];
      boolean changes = c + 1 < chunks.count() && shares[c + 1] != shares[c];
      for (int i = chunks.start(c) + 1; i <= chunks.start(c + 1); i++) {
        boolean end = i == chunks.start(c + 1) && (changes || c + 1 == chunks.count());
        if (end || chunks.own(i)) {
          path.line(chunks.x(i), chunks.y(i), head.depth, feed);
        }
      }
    }
    double left =
        piece.wall() && !head.options.climb() ? WALL_SIDE_MM : PathOptions.ARC_TOLERANCE_MM;
    double right =
        piece.wall() && head.options.climb() ? WALL_SIDE_MM : PathOptions.ARC_TOLERANCE_MM;
    head.moves.addAll(
        ArcFitter.fit(head.moves.x, head.moves.y, head.depth, path.moves(), left, right));
    int n = piece.size();
    int before = piece.closed() ? n - 1 : n - 2;
    int last = piece.closed() ? 0 : n - 1;
    double d = Math.hypot(piece.x()[last] - piece.x()[before], piece.y()[last] - piece.y()[before]);
    head.headingX = (piece.x()[last] - piece.x()[before]) / d;
    head.headingY = (piece.y()[last] - piece.y()[before]) / d;
  }
}
