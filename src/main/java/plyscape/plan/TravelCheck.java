package plyscape.plan;

import java.util.List;
import plyscape.fault.JobFault;
import plyscape.gcode.ProgramFrame;
import plyscape.job.Job;
import plyscape.machine.Machine;
import plyscape.machine.Move;
import plyscape.text.Numbers;
import plyscape.toolpath.task.Pass;
import plyscape.toolpath.task.ToolRun;

/**
 * Tells early, and as a matter of the job, that the machine's axes are too short for it. Looks at
 * the ends of moves only; the simulation looks at the bulges of arcs too, and has the last word.
 */
final class TravelCheck {

  /** Rounding of the written words. */
  private static final double SLACK_MM = 0.0015;

  private TravelCheck() {}

  /**
   * Checks the span that each axis needs, the program's zero included (contract, section 5).
   *
   * @param thicknessMm of the pressed panel
   * @throws JobFault if an axis is too short
   */
  static void require(Job job, double thicknessMm, List<ToolRun> runs) {
    Machine machine = job.machine();
    ProgramFrame frame =
        ProgramFrame.of(machine, job.panel().widthMm(), job.panel().heightMm(), thicknessMm);
    double[] low = {frame.zeroX(), frame.zeroY(), frame.zeroDepth()};
    double[] high = low.clone();
    for (ToolRun run : runs) {
      for (Pass pass : run.passes()) {
        for (Move move : pass.moves()) {
          widen(low, high, move.x(), move.y(), move.depth());
        }
      }
    }
    double[] limit = {machine.travelXMm(), machine.travelYMm(), machine.travelZMm()};
    for (int axis = 0; axis < 3; axis++) {
      double span = high[axis] - low[axis];
      if (span > limit[axis] + SLACK_MM) {
        String name = "XYZ".substring(axis, axis + 1);
        throw new JobFault(
            "the job needs "
                + Numbers.fixed(span, 1)
                + " mm of "
                + name
                + " travel, zero point included, and machine.travel gives "
                + Numbers.trimmed(limit[axis], 1)
                + " mm",
            axis == 2
                ? "lower safe_height, or zero_z: top"
                : "a smaller panel, a wider border, or zero: centre would help");
      }
    }
  }

  private static void widen(double[] low, double[] high, double... point) {
    for (int axis = 0; axis < 3; axis++) {
      low[axis] = Math.min(low[axis], point[axis]);
      high[axis] = Math.max(high[axis], point[axis]);
    }
  }
}
