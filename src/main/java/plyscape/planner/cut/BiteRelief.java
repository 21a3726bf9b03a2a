package plyscape.planner.cut;

import java.util.ArrayList;
import java.util.List;
import plyscape.gcode.Program;
import plyscape.machine.Move;
import plyscape.machine.Tool;
import plyscape.plan.CutoutArea;
import plyscape.plan.Landscape;
import plyscape.simulate.Bite;
import plyscape.simulate.Cut;
import plyscape.simulate.CutResult;
import plyscape.simulate.Simulation;
import plyscape.simulate.Verification;
import plyscape.toolpath.task.ToolRun;

/**
 * Mends moves that the simulation finds to bite deeper than their cutter's stepdown: the way there
 * is cut higher up first, to and fro, and then as planned. A net: the planner sees slivers down to
 * an eighth of its lattice step by itself, and flat plans hardly ever come here; sculpted faces on
 * panels that aren't flat do now and then. A round mends one bite a program and costs a simulation
 * of all programs.
 */
final class BiteRelief {

  private static final int ROUNDS = 24;

  /** A bite is taken in parts of at most this share of the stepdown. */
  private static final double SHARE = 0.9;

  /** Of the plunge feed, as depths are rounded to 0.001 mm. */
  private static final double STEEPEST = 0.95;

  private final Landscape regions;
  private final ProgramMaker maker;
  private final List<CutoutArea> cutouts;
  private final double cellMm;

  /** Programs as they are written, and how they cut. */
  record Outcome(List<ProgramMaker.Made> made, CutResult result) {}

  BiteRelief(Landscape regions, ProgramMaker maker, List<CutoutArea> cutouts, double cellMm) {
    this.regions = regions;
    this.maker = maker;
    this.cutouts = cutouts;
    this.cellMm = cellMm;
  }

  /** The programs with softer bites; as they are when nothing bites too deep or nothing helps. */
  Outcome of(List<ToolRun> runs, List<ProgramMaker.Made> made, CutResult result) {
    List<ToolRun> now = new ArrayList<>(runs);
    List<ProgramMaker.Made> programs = new ArrayList<>(made);
    CutResult cut = result;
    BiteTries tries = new BiteTries();
    for (int round = 0; round < ROUNDS; round++) {
      boolean some = false;
      for (int i = 0; i < programs.size(); i++) {
        ToolRun softer = mended(now.get(i), programs.get(i), cut.verification(), tries);
        if (softer != null) {
          now.set(i, softer);
          programs.set(i, maker.make(i + 1, softer));
          some = true;
        }
      }
      if (!some) {
        break;
      }
      cut = simulated(programs);
    }
    return new Outcome(List.copyOf(programs), cut);
  }

  /** A run with what the simulation found in its program mended; null when there is nothing. */
  private ToolRun mended(ToolRun run, ProgramMaker.Made made, Verification found, BiteTries tries) {
    String file = made.written().file();
    ToolRun lifted = LiftedRapids.of(run, made.parsed(), file, found.collisions(), safe());
    if (lifted != null) {
      return lifted;
    }
    return found.bitesTooDeep().stream()
        .filter(bite -> bite.file().equals(file))
        .findFirst()
        .filter(tries::worthwhile)
        .map(bite -> softer(run, made.parsed(), bite))
        .orElse(null);
  }

  private double safe() {
    return -regions.job().machine().safeHeightMm();
  }

  private CutResult simulated(List<ProgramMaker.Made> programs) {
    Simulation simulation = Proof.begin(regions, cutouts, cellMm);
    programs.forEach(p -> simulation.cut(new Cut(p.parsed(), p.written().tool())));
    return Proof.of(regions, simulation);
  }

  /** A run with one bite softened; null when the move isn't found. */
  static ToolRun softer(ToolRun run, Program parsed, Bite bite) {
    WrittenMove at = WrittenMove.at(run, parsed, bite.line());
    return at == null ? null : at.with(run, relieved(run, at, bite));
  }

  private static List<Move> relieved(ToolRun run, WrittenMove where, Bite bite) {
    List<Move> moves = run.passes().get(where.pass()).moves();
    Move before = where.before();
    int m = where.index();
    int end = m + 1;
    double gone = 0;
    Move at = before;
    while (end < moves.size()
        && moves.get(end).kind() != Move.Kind.RAPID
        && gone <= run.tool().diameterMm()) {
      gone += Math.hypot(moves.get(end).x() - at.x(), moves.get(end).y() - at.y());
      at = moves.get(end);
      end++;
    }
    List<Move> out = new ArrayList<>(moves.subList(0, m));
    int parts = (int) Math.ceil(bite.biteMm() / (SHARE * run.tool().stepdownMm()));
    for (int part = 1; part < parts; part++) {
      double level =
          deeperMm(run, where, bite) + bite.depthMm() - bite.biteMm() * (1 - (double) part / parts);
      higher(before, moves.subList(m, end), level, run.tool(), out);
    }
    out.addAll(moves.subList(m, moves.size()));
    return out;
  }

  /** By how much the cutter's tip is deeper in the flat plan than what bites, mm. */
  private static double deeperMm(ToolRun run, WrittenMove where, Bite bite) {
    return run.tool().shape() == Tool.Shape.FLAT
        ? where.deeperMm()
        : Math.max(0, where.move(run).depth() - bite.depthMm()); // a flank may bite
  }

  /** A stretch no deeper than a level, there and back, beginning and ending at its start. */
  private static void higher(
      Move before, List<Move> stretch, double level, Tool tool, List<Move> out) {
    double start = Math.min(before.depth(), level);
    double feed = tool.feedMmPerMin();
    if (start < before.depth()) {
      out.add(Move.line(before.x(), before.y(), start, feed));
    }
    List<Move> ends = new ArrayList<>(List.of(Move.line(before.x(), before.y(), start, feed)));
    for (Move move : stretch) {
      Move raised = at(move, Math.min(move.depth(), level));
      out.add(raised);
      ends.add(raised);
    }
    for (int i = ends.size() - 1; i > 0; i--) {
      out.add(back(ends.get(i), ends.get(i - 1), tool.plungeMmPerMin()));
    }
    if (start < before.depth()) {
      out.add(Move.line(before.x(), before.y(), before.depth(), tool.plungeMmPerMin()));
    }
  }

  private static Move at(Move move, double depth) {
    return move.isArc()
        ? Move.arc(
            move.kind() == Move.Kind.CLOCKWISE,
            move.x(),
            move.y(),
            depth,
            move.centreX(),
            move.centreY(),
            move.feedMmPerMin())
        : Move.line(move.x(), move.y(), depth, move.feedMmPerMin());
  }

  /** The way from a move's end back to where it began, no faster down than by the plunge feed. */
  private static Move back(Move move, Move from, double plunge) {
    double drop = from.depth() - move.depth();
    double way = Math.hypot(Math.hypot(from.x() - move.x(), from.y() - move.y()), drop);
    double feed =
        drop > 0
            ? Math.min(move.feedMmPerMin(), STEEPEST * plunge * way / drop)
            : move.feedMmPerMin();
    return move.isArc()
        ? Move.arc(
            move.kind() != Move.Kind.CLOCKWISE,
            from.x(),
            from.y(),
            from.depth(),
            move.centreX(),
            move.centreY(),
            feed)
        : Move.line(from.x(), from.y(), from.depth(), feed);
  }
}
