package plyscape.gcode;

import plyscape.machine.Machine;
import plyscape.machine.Move;
import plyscape.machine.Times;

/**
 * The slow move straight down in the air, over the first entry and just under safe height, that
 * lets the spindle come up to speed before anything is cut (src/contract.md, section 14). A dwell
 * would do, but controls differ in its unit.
 *
 * <p>It is a move of the program like any other, so its length belongs to the first pass; its time
 * is spindle start, which the times of passes leave out.
 */
public final class SpindleStart {

  /** Longest way down, mm; shorter where safe height is low. */
  private static final double MOST_MM = 1;

  /** Share of safe height that it takes at most, so that it ends well over the face. */
  private static final double SHARE = 0.25;

  private static final double NOISE_MM = 0.0015;

  private SpindleStart() {}

  /** How far down it goes, mm. */
  private static double wayMm(double safeHeightMm) {
    return Math.max(0.001, Math.floor(1000 * Math.min(MOST_MM, SHARE * safeHeightMm)) / 1000);
  }

  /** Writes it over a place, coming at safe height. */
  static void write(StringBuilder out, MoveWriter moves, Machine machine, Move over) {
    double safe = machine.safeHeightMm();
    double way = wayMm(safe);
    double feed = Math.max(0.001, Math.floor(1000 * way / machine.spinUpS() * 60) / 1000);
    GcodeComment.append(
        out,
        "slowly through the air for "
            + GcodeNumber.shortest(machine.spinUpS())
            + " s: the spindle comes up to speed");
    moves.restate();
    moves.write(Move.rapid(over.x(), over.y(), -safe));
    moves.write(Move.line(over.x(), over.y(), -safe + way, feed));
  }

  /**
   * Index of the block that is a program's spindle start, or -1: its first cutting move, if that
   * goes straight down from the height at which it began, and no farther than such a move does.
   */
  public static int block(Program program) {
    double x = program.startX();
    double y = program.startY();
    double depth = program.startDepth();
    int index = 0;
    for (Program.Block block : program.blocks()) {
      Move move = block.move();
      if (move.kind() != Move.Kind.RAPID) {
        boolean here =
            move.kind() == Move.Kind.LINE
                && move.x() == x
                && move.y() == y
                && Math.abs(depth - program.startDepth()) <= NOISE_MM
                && move.depth() > depth
                && move.depth() <= depth + wayMm(-program.startDepth()) + NOISE_MM;
        return here ? index : -1;
      }
      x = move.x();
      y = move.y();
      depth = move.depth();
      index++;
    }
    return -1;
  }

  /** Seconds of a program's moves that are its spindle start. */
  public static double seconds(Program program, Times times) {
    int block = block(program);
    return block < 0 ? 0 : times.moveS()[block];
  }
}
