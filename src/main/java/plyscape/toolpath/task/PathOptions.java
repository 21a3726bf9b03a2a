package plyscape.toolpath.task;

import plyscape.machine.Machine;
import plyscape.machine.Tool;

/**
 * How paths are laid, beside what tools and machine say. Immutable.
 *
 * @param slotFeed feed in a full-width cut, as a fraction of the tool's feed; between the stepover
 *     and the full width it falls in proportion
 * @param rampDegrees steepest way down into standing wood
 * @param room how near rapids come to what stands
 * @param climb whether walls are cut in climb direction (for a spindle turning clockwise) or
 *     conventionally
 * @param wallAllowanceMm left at walls for the last round, mm; 0 for one stepover
 * @param toolChangeS time one more tool costs, s
 */
public record PathOptions(
    double slotFeed,
    double rampDegrees,
    RapidRoom room,
    boolean climb,
    double wallAllowanceMm,
    double toolChangeS) {

  /** How far arcs may lie off the lines that they stand for, mm. */
  public static final double ARC_TOLERANCE_MM = 0.005;

  /** As the machine's settings say. */
  public static PathOptions of(Machine machine) {
    return new PathOptions(
        machine.slotFeed(),
        machine.rampDegrees(),
        RapidRoom.of(machine),
        machine.climb(),
        machine.wallAllowanceMm(),
        machine.toolChangeS());
  }

  /** The same on a panel with slopes, as {@link RapidRoom#onSlopes}. */
  public PathOptions onSlopes(double rimMm) {
    return new PathOptions(
        slotFeed, rampDegrees, room.onSlopes(rimMm), climb, wallAllowanceMm, toolChangeS);
  }

  /** Checks ranges. */
  public PathOptions {
    if (!(slotFeed > 0 && slotFeed <= 1)
        || !(rampDegrees > 0 && rampDegrees <= 45)
        || room == null
        || !(wallAllowanceMm >= 0)
        || !(toolChangeS >= 0)) {
      throw new IllegalArgumentException("path options out of range");
    }
  }

  /** What a cutter leaves at walls for its last round, mm: no more than it takes at full feed. */
  public double wallAllowance(Tool tool) {
    return wallAllowanceMm > 0 ? Math.min(wallAllowanceMm, tool.stepoverMm()) : tool.stepoverMm();
  }

  /** Share of the full feed at a width of cut. */
  public double feedShare(double widthMm, double stepoverMm, double diameterMm) {
    if (widthMm <= stepoverMm || stepoverMm >= diameterMm) {
      return 1;
    }
    double share = Math.min(1, (widthMm - stepoverMm) / (diameterMm - stepoverMm));
    return 1 - (1 - slotFeed) * share;
  }
}
