package plyscape.gcode;

import java.util.ArrayList;
import java.util.List;
import plyscape.machine.ArcGeometry;
import plyscape.machine.Machine;
import plyscape.machine.Move;

/**
 * The moves that take a program up again at a line, panel mm. Immutable.
 *
 * <p>From safe height down over path that was cut before the stop: the last moves before the line
 * are repeated, their depth held to a ramp of {@link #RAMP_DEGREES} from the top face at its
 * beginning, so that the cutter meets only air (or the wood it would have met had the run not
 * stopped). When the cut began nearer than the ramp is long, the program's own way down is taken
 * again.
 *
 * @param approach the rapids and the repeated moves
 * @param rest the program from the line on
 * @param rampMm length of the ramp, 0 when the program's own way down is taken
 * @param x where it begins
 */
public record Restart(List<Move> approach, List<Move> rest, double rampMm, double x, double y) {

  /**
   * Gentle for any cutter: common practice is 2 to 5 degrees (references.md, section 5, marked as
   * practice).
   */
  private static final double RAMP_DEGREES = 3;

  private static final double SLOPE = Math.tan(Math.toRadians(RAMP_DEGREES));

  /** Height over the face to which the rapid comes down at least, mm. */
  private static final double OVER_FACE_MM = 0.5;

  /** Ways down that are shorter aren't worth a move, mm. */
  private static final double LEAST_MM = 1e-3;

  /** Straight down through air that was found by the run before, mm/min. */
  private static final double SLOW_FEED = 300;

  /** Restart of a program at the first motion at or after a line. */
  public static Restart of(Program program, int line, Machine machine, UncutFace face) {
    double over = Math.max(OVER_FACE_MM, face.roomMm());
    List<Program.Block> blocks = program.blocks();
    int at = 0;
    while (at < blocks.size() && blocks.get(at).line() < line) {
      at++;
    }
    int begin = rampStart(program, at, face, over);
    boolean own = begin == 0 || isEntry(program, begin, face);
    double[] start = start(program, begin);
    double above = face.depthMm(start[0], start[1]) - over;
    double highest = face.highestDepthMm() - over;
    List<Move> approach = new ArrayList<>();
    approach.add(Move.rapid(start[0], start[1], -machine.safeHeightMm()));
    if (own) {
      if (start[2] > above) { // a rapid within the pocket led here: down to it, but not as a rapid
        down(start, above, highest, approach);
        approach.add(
            Move.line(start[0], start[1], start[2], Math.min(SLOW_FEED, feedNear(blocks, begin))));
      }
      for (int i = begin; i < at; i++) {
        approach.add(blocks.get(i).move());
      }
    } else {
      down(start, above, highest, approach);
      ramp(program, begin, at, above, approach);
    }
    List<Move> rest = blocks.subList(at, blocks.size()).stream().map(Program.Block::move).toList();
    double ramp = own ? 0 : length(program, begin, at);
    return new Restart(List.copyOf(approach), rest, ramp, start[0], start[1]);
  }

  /** Back over cutting moves until the ramp has room; stops at a rapid, where the cut began. */
  private static int rampStart(Program program, int at, UncutFace face, double over) {
    List<Program.Block> blocks = program.blocks();
    int begin = at;
    double ramp = 0;
    while (begin > 0 && !isEntry(program, begin, face)) {
      Move before = blocks.get(begin - 1).move();
      double deepest = before.depth();
      for (int i = begin; i < at; i++) {
        deepest = Math.max(deepest, blocks.get(i).move().depth());
      }
      if (ramp * SLOPE >= deepest - face.depthMm(before.x(), before.y()) + over) {
        break;
      }
      begin--;
      ramp += length(program, begin);
    }
    return begin;
  }

  /** The moves from a block up to another, no deeper than the ramp has come. */
  private static void ramp(Program program, int begin, int at, double above, List<Move> out) {
    double gone = 0;
    for (int i = begin; i < at; i++) {
      gone += length(program, i);
      Move m = program.blocks().get(i).move();
      double depth = Math.min(m.depth(), gone * SLOPE + above);
      out.add(new Move(m.kind(), m.x(), m.y(), depth, m.centreX(), m.centreY(), m.feedMmPerMin()));
    }
  }

  /** Added from the last to the first, as the way back was found. */
  private static double length(Program program, int begin, int at) {
    double sum = 0;
    for (int i = at - 1; i >= begin; i--) {
      sum += length(program, i);
    }
    return sum;
  }

  /** Down by rapid to over the highest place of the face, and on to over the face here. */
  private static void down(double[] at, double above, double highest, List<Move> out) {
    out.add(Move.rapid(at[0], at[1], highest));
    if (above > highest + LEAST_MM) {
      out.add(Move.line(at[0], at[1], above, SLOW_FEED));
    }
  }

  /** All moves. */
  public List<Move> moves() {
    List<Move> all = new ArrayList<>(approach);
    all.addAll(rest);
    return all;
  }

  /** The same under comments, for {@link GcodeWriter}. */
  public List<PassText> passes() {
    return List.of(
        new PassText("down again over what is cut", approach),
        new PassText("on from where it stopped", rest));
  }

  /**
   * Whether a cut begins at a block: the tool comes from over the face or from a rapid, so it
   * stands in air before it.
   */
  private static boolean isEntry(Program program, int block, UncutFace face) {
    double[] start = start(program, block);
    return start[2] <= face.depthMm(start[0], start[1])
        || program.blocks().get(block - 1).move().kind() == Move.Kind.RAPID;
  }

  private static double[] start(Program program, int block) {
    if (block == 0) {
      return new double[] {program.startX(), program.startY(), program.startDepth()};
    }
    Move m = program.blocks().get(block - 1).move();
    return new double[] {m.x(), m.y(), m.depth()};
  }

  private static double length(Program program, int block) {
    double[] from = start(program, block);
    Move m = program.blocks().get(block).move();
    return m.isArc()
        ? ArcGeometry.of(from[0], from[1], m.depth(), m).length()
        : Math.hypot(m.x() - from[0], m.y() - from[1]);
  }

  /** Feed of the cutting move nearest to a block. */
  private static double feedNear(List<Program.Block> blocks, int at) {
    for (int d = 0; d < blocks.size(); d++) {
      for (int i : new int[] {at - d, at + d}) {
        if (i >= 0 && i < blocks.size() && blocks.get(i).move().feedMmPerMin() > 0) {
          return blocks.get(i).move().feedMmPerMin();
        }
      }
    }
    return SLOW_FEED;
  }
}
