package plyscape.plan;

import java.util.Objects;
import plyscape.machine.Tool;

/**
 * What a plan would take with one cutter more. Immutable.
 *
 * @param tool the cutter, as it is thought to be run
 * @param totalS expected time in s, without tool changes
 */
public record CutterEstimate(Tool tool, double totalS) {

  /** Checks both. */
  public CutterEstimate {
    Objects.requireNonNull(tool);
    if (!(totalS >= 0)) {
      throw new IllegalArgumentException("time " + totalS);
    }
  }

  /** For panels cut one after the other. */
  CutterEstimate plus(CutterEstimate other) {
    return new CutterEstimate(tool, totalS + other.totalS);
  }
}
