package plyscape.gcode;

import java.util.List;
import plyscape.machine.Move;

/**
 * A parsed program: the moves that the machine makes, in panel coordinates (mm, depth positive
 * down). Immutable.
 *
 * @param file its name
 * @param startX where the tool is taken to stand at first: over the program's zero, at safe height
 * @param blocks motions in order
 * @param speeds spindle speeds in the order in which they are set
 * @param problems words that aren't of plyscape's dialect, one a kind
 */
public record Program(
    String file,
    double startX,
    double startY,
    double startDepth,
    List<Block> blocks,
    List<Speed> speeds,
    List<Problem> problems) {

  /**
   * One motion and where it stands.
   *
   * @param line line of the file, from 1
   * @param move the motion
   * @param spindleOn whether the spindle turned
   */
  public record Block(int line, Move move, boolean spindleOn) {}

  /** A spindle speed, turns a minute, and its line. */
  public record Speed(int line, double rpm) {}

  /** Something odd at a place. */
  public record Problem(int line, int column, String message) {}

  /** The motions alone. */
  public List<Move> moves() {
    return blocks.stream().map(Block::move).toList();
  }

  /** The motions up to and with a line; the rest as if it had not been run. */
  public Program through(int line) {
    return new Program(
        file,
        startX,
        startY,
        startDepth,
        blocks.stream().filter(b -> b.line() <= line).toList(),
        speeds.stream().filter(s -> s.line() <= line).toList(),
        problems);
  }
}
