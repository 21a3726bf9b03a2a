package plyscape.toolpath.motion;

import java.util.ArrayList;
import java.util.List;
import plyscape.machine.Machine;
import plyscape.machine.Move;
import plyscape.machine.Tool;
import plyscape.toolpath.cover.StepWork;
import plyscape.toolpath.depth.DepthStep;
import plyscape.toolpath.lattice.Stock;
import plyscape.toolpath.ring.Piece;
import plyscape.toolpath.task.Pass;
import plyscape.toolpath.task.PathOptions;

/**
 * Turns the ordered pieces of one cutter into moves and cuts them in the planner's stock, at a feed
 * that falls where the cutter takes more than its stepover. A new pass begins whenever the step
 * changes.
 */
public final class PassCutter {

  private final Stock stock;
  private final CutterHead head;
  private final PieceEntry entry;
  private final PieceGlide glide;
  private final SlotCutter slots;
  private final StretchCutter stretches;
  private final List<Pass> passes = new ArrayList<>();
  private StepWork work;

  /** Where rings of the step being cut begin. */
  private GrainStart starts;

  /**
   * @param stock panel as the cutters before left it
   * @param start where the cutter hangs, at safe height
   */
  public PassCutter(Stock stock, Tool tool, Machine machine, PathOptions options, double[] start) {
    this.stock = stock;
    head = new CutterHead(stock, tool, machine, options, start);
    entry = new PieceEntry(head);
    glide = new PieceGlide(head, entry);
    stretches = new StretchCutter(head, entry, stock, head.feeds());
    slots = new SlotCutter(head, entry, stock, machine.leastChipMm());
  }

  /** Lifts to safe height; the passes. */
  public List<Pass> passes() {
    if (work != null) {
      end(head.park());
      work = null;
    }
    return List.copyOf(passes);
  }

  private void end(List<Move> moves) {
    DepthStep step = work.step();
    passes.add(new Pass(work.field().level().plyNumber(), step.depthMm(), step.fromMm(), moves));
  }

  private void begin(StepWork next) {
    if (work != null) {
      end(head.endPass());
    }
    work = next;
    double depth = next.step().depthMm();
    head.begin(depth, new Clearway(next.field().field(), stock, head.tool().radiusMm(), depth));
    // A ring met in passing begins a lead later: a stepover from the corner even then.
    starts =
        new GrainStart(
            next.field().level().grainDegrees(),
            (PieceGlide.LEADS[0] + 1) * head.tool().stepoverMm());
  }

  /**
   * Cuts a piece of a step. Where more than a stepdown stands under it, it is cut higher up first;
   * a narrow place sees to that by itself.
   */
  public void cut(StepWork of, Piece piece) {
    if (piece.slot() != null) {
      enter(of);
      slots.cut(piece.slot());
      return;
    }
    List<BiteLimit.Before> before = head.before(of, piece);
    if (piece.wall() && !before.isEmpty()) {
      enter(of);
      if (stretches.cut(piece)) {
        return;
      }
    }
    for (BiteLimit.Before first : shortest(before, piece)) {
      cut(first.work(), first.piece());
    }
    enter(of);
    follow(piece.needed() == null ? piece : piece.needed());
  }

  /** Goes to a piece and along it at the floor. */
  private void follow(Piece piece) {
    Piece along = piece.closed() ? starts.place(piece, head.x(), head.y()) : piece;
    Piece entered = head.level() ? glide.onto(piece, along) : null;
    if (entered == null) {
      entered = entry.enter(piece.closed() ? entry.started(piece, along) : piece);
    }
    head.follow(entered);
  }

  /**
   * What is cut before a piece, from its far end back to where the piece begins if that makes the
   * ways between shorter: then it is the last cut at the floor that runs as walls are to be cut.
   */
  private List<BiteLimit.Before> shortest(List<BiteLimit.Before> before, Piece piece) {
    if (piece.closed() || before.isEmpty()) {
      return before;
    }
    List<BiteLimit.Before> back = new ArrayList<>();
    before.forEach(first -> back.add(0, first.reversed()));
    return way(back, piece) < way(before, piece) ? back : before;
  }

  /** Length of the ways from where the cutter is by some stretches to where a piece begins, mm. */
  private double way(List<BiteLimit.Before> stretches, Piece piece) {
    double x = head.x();
    double y = head.y();
    double sum = 0;
    for (BiteLimit.Before stretch : stretches) {
      double[] px = stretch.piece().x();
      double[] py = stretch.piece().y();
      sum += Math.hypot(px[0] - x, py[0] - y);
      x = px[px.length - 1];
      y = py[py.length - 1];
    }
    return sum + Math.hypot(piece.x()[0] - x, piece.y()[0] - y);
  }

  @SuppressWarnings("ReferenceEquality") // another step of the same shape is another step
  private void enter(StepWork of) {
    if (of != work) {
      begin(of);
    }
  }
}
