package plyscape.gcode;

import java.util.List;
import plyscape.machine.Move;

/**
 * A parsed program: what the machine would do, in panel coordinates.
 *
 * @param file its name
 * @param blocks motions in order
 * @param problems what was odd but could be read
 */
public record Program(String file, List<Block> blocks, List<Problem> problems) {

  /**
   * One motion and where it stands.
   *
   * @param line line of the file, from 1
   * @param move the motion
   * @param spindleOn whether the spindle turned
   */
  public record Block(int line, Move move, boolean spindleOn) {}

  /** Something odd at a place. */
  public record Problem(int line, int column, String message) {}
}
