package plyscape.machine;

/**
 * How cutters may be led on a machine, whichever cutter it is. Immutable.
 *
 * @param slotFeed feed in a cut as wide as the cutter, as a fraction of the tool's feed
 * @param climb whether walls are cut in climb direction, or conventionally
 * @param rampDegrees steepest way down into standing wood
 * @param wallAllowanceMm left at walls for the last round, mm; 0 for one stepover of the cutter
 * @param leastChipMm thinnest chip a tooth that still cuts, mm; thinner ones rub and burn
 */
public record CutRules(
    double slotFeed,
    boolean climb,
    double rampDegrees,
    double wallAllowanceMm,
    double leastChipMm) {

  /**
   * Half the feed in a full slot, ramps of 5 degrees (common practice: 2 to 5), no chip under 0.02
   * mm a tooth (references.md gives 0.03 to 0.08 for small cutters in wood).
   */
  public static final CutRules USUAL = new CutRules(0.5, true, 5, 0, 0.02);

  /** Checks the ranges. */
  public CutRules {
    if (!(slotFeed > 0 && slotFeed <= 1)) {
      throw new IllegalArgumentException("slot feed must be over 0, at most 1: " + slotFeed);
    }
    if (!(rampDegrees > 0 && rampDegrees < 90)) {
      throw new IllegalArgumentException("ramp must be between 0 and 90 degrees: " + rampDegrees);
    }
    Check.notNegative("wall allowance", wallAllowanceMm);
    Check.notNegative("least chip", leastChipMm);
  }
}
