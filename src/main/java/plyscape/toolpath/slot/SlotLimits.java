package plyscape.toolpath.slot;

import plyscape.machine.Tool;
import plyscape.toolpath.task.PathOptions;

/**
 * How deep and how fast a cutter may go in a slot as wide as itself.
 *
 * @param biteMm most depth taken in one go
 * @param stepdownMm most depth beside walls, the cutter's stepdown
 * @param slope greatest fall along the way, mm a mm
 * @param reachMm how far ahead of its centre the cutter meets wood, its radius
 */
public record SlotLimits(double biteMm, double stepdownMm, double slope, double reachMm) {

  /** Of the stepdown: what sections show of the wood is good to so much of it in bends. */
  private static final double SURE = 0.85;

  /** Checks that all are over 0. */
  public SlotLimits {
    if (!(biteMm > 0 && stepdownMm > 0 && slope > 0 && reachMm > 0)) {
      throw new IllegalArgumentException("slot limits must be over 0");
    }
  }

  /**
   * The limits of a cutter: a bite that would have to be taken with chips thinner than the least is
   * made shallower instead, for the same wood a minute.
   *
   * @param leastChipMm thinnest chip a tooth
   */
  public static SlotLimits of(Tool tool, PathOptions options, double leastChipMm) {
    double slot = options.slotFeed() * tool.feedMmPerMin();
    double least = Math.min(tool.feedMmPerMin(), leastChipMm * tool.flutes() * tool.rpm());
    double bite = SURE * tool.stepdownMm() * Math.min(1, slot / least);
    return new SlotLimits(
        bite, tool.stepdownMm(), Math.tan(Math.toRadians(options.rampDegrees())), tool.radiusMm());
  }
}
