package plyscape.plan;

import java.util.List;
import plyscape.machine.Tool;

/**
 * One G-code file and what is in it. Immutable.
 *
 * @param file its name, such as {@code 01-end-mill-3.nc}
 * @param text the G-code as written
 * @param passes what the passes do
 * @param paths how good its paths are
 * @param way what the tip moves over, from the program's zero
 * @param low what it moves over below safe height
 */
public record ToolProgram(
    String file,
    Tool tool,
    String text,
    List<PassSummary> passes,
    PathFigures paths,
    MotionSpan way,
    MotionSpan low) {

  /**
   * One pass in numbers: lengths in mm, time in s.
   *
   * @param plyNumber ply whose pocket is cut
   * @param depthMm depth of the floor cut here
   * @param stepdownFromMm depth it starts from
   * @param cutMm length of all G1 G2 G3 moves
   * @param rapidMm length of all G0 moves
   * @param plunges entries into stock
   * @param cutS expected time of the cutting moves
   * @param rapidS expected time of the rapids
   */
  public record PassSummary(
      int plyNumber,
      double depthMm,
      double stepdownFromMm,
      double cutMm,
      double rapidMm,
      int plunges,
      double cutS,
      double rapidS) {

    /** Expected time of the pass. */
    public double timeS() {
      return cutS + rapidS;
    }
  }

  /** Expected time of all passes, s. */
  public double timeS() {
    return passes.stream().mapToDouble(PassSummary::timeS).sum();
  }
}
