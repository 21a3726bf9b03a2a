package plyscape.toolpath.slot;

import plyscape.machine.Tool;
import plyscape.toolpath.task.PathOptions;

/**
 * How deep and how fast a cutter may go in a slot as wide as itself, or along a rest.
 *
 * @param biteMm most depth taken in one go
 * @param stepdownMm most depth beside walls, the cutter's stepdown
 * @param slope greatest fall along the way, mm a mm
 * @param reachMm how far ahead of its centre the cutter meets wood that a section doesn't show: its
 *     radius where sections show what stands across them, 0 where all that stands under the cutter
 * @param runMm there is no use in turning sooner than this, mm
 * @param gapMm sections done between two that aren't are gone over if they are shorter than this
 */
public record SlotLimits(
    double biteMm, double stepdownMm, double slope, double reachMm, double runMm, double gapMm) {

  /** Of the stepdown: what sections show of the wood is good to so much of it in bends. */
  private static final double SURE = 0.85;

  /** Turning takes as long as going so far, mm. */
  private static final double SLOT_RUN_MM = 1;

  private static final double REST_RUN_MM = 0.5;

  /** Ground between stretches that is gone over each time, where there are many times, mm. */
  private static final double SLOT_GAP_MM = 5;

  /** The same where there are few. */
  private static final double REST_GAP_MM = 9;

  /** Checks that all are over 0. */
  public SlotLimits {
    if (!(biteMm > 0 && stepdownMm > 0 && slope > 0)
        || !(reachMm >= 0 && runMm >= 0 && gapMm >= 0)) {
      throw new IllegalArgumentException("slot limits out of range");
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
        bite,
        tool.stepdownMm(),
        slope(options),
        tool.radiusMm(),
        SLOT_RUN_MM,
        SLOT_GAP_MM);
  }

  /** The limits of a cutter along a rest, of which each section shows all that stands under it. */
  public static SlotLimits alongRest(Tool tool, PathOptions options) {
    double stepdown = tool.stepdownMm();
    return new SlotLimits(stepdown, stepdown, slope(options), 0, REST_RUN_MM, REST_GAP_MM);
  }

  private static double slope(PathOptions options) {
    return Math.tan(Math.toRadians(options.rampDegrees()));
  }
}
