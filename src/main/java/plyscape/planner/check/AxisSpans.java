package plyscape.planner.check;

import java.util.Optional;
import plyscape.fault.JobFault;
import plyscape.gcode.ProgramFrame;
import plyscape.job.Job;
import plyscape.machine.Machine;
import plyscape.text.Template;

/**
 * The part of each axis that a program needs, its zero included: widened point by point, in panel
 * coordinates, depth positive down.
 */
final class AxisSpans {

  /** Rounding of the written words. */
  private static final double SLACK_MM = 0.0015;

  private final double[] low;
  private final double[] high;

  private AxisSpans(double[] zero) {
    low = zero;
    high = zero.clone();
  }

  /** The program's zero and its safe height. */
  static AxisSpans of(Job job, double thicknessMm) {
    Machine machine = job.machine();
    ProgramFrame frame =
        ProgramFrame.of(machine, job.panel().widthMm(), job.panel().heightMm(), thicknessMm);
    AxisSpans spans = new AxisSpans(new double[] {frame.zeroX(), frame.zeroY(), frame.zeroDepth()});
    spans.widen(frame.zeroX(), frame.zeroY(), -machine.safeHeightMm());
    return spans;
  }

  /** Takes in a point. */
  void widen(double x, double y, double depthMm) {
    double[] point = {x, y, depthMm};
    for (int axis = 0; axis < 3; axis++) {
      low[axis] = Math.min(low[axis], point[axis]);
      high[axis] = Math.max(high[axis], point[axis]);
    }
  }

  /** The fault of the first axis that is too short, or none. */
  Optional<JobFault> fault(Machine machine) {
    double[] limit = {machine.travelXMm(), machine.travelYMm(), machine.travelZMm()};
    for (int axis = 0; axis < 3; axis++) {
      double span = high[axis] - low[axis];
      if (span > limit[axis] + SLACK_MM) {
        String name = "XYZ".substring(axis, axis + 1);
        return Optional.of(
            new JobFault(
                Template.fill(
                    "the job needs %.1f mm of %s travel, zero point included, and machine.travel"
                        + " gives %.1t mm",
                    span, name, limit[axis]),
                help(axis, machine)));
      }
    }
    return Optional.empty();
  }

  private static String help(int axis, Machine machine) {
    if (axis == 2) {
      return machine.zeroZ() == Machine.ZeroZ.BOTTOM
          ? "lower safe_height, or zero_z: top"
          : "lower safe_height, or leave the deepest plies out of terrain.plies and the zones";
    }
    return machine.zero() == Machine.Zero.CENTRE
        ? "a smaller panel or a wider border would help"
        : "a smaller panel, a wider border, or zero: centre would help";
  }

  /** Throws that fault. */
  void require(Machine machine) {
    fault(machine)
        .ifPresent(
            fault -> {
              throw fault;
            });
  }
}
