package plyscape.machine;

/**
 * How a cutter may be run. Immutable. Speeds and depths that aren't known are 0.
 *
 * @param rpm spindle speed
 * @param feedMmPerMin feed in the cut
 * @param plungeMmPerMin feed straight down
 * @param stepdownMm greatest depth taken at once
 * @param stepover greatest width of cut at full feed, as a fraction of the diameter
 * @param thinFeedMmPerMin feed allowed where the bite is thin; 0 for no more than the feed
 */
public record CuttingData(
    double rpm,
    double feedMmPerMin,
    double plungeMmPerMin,
    double stepdownMm,
    double stepover,
    double thinFeedMmPerMin) {

  /** What is known of a cutter of which only the form is given. */
  public static final CuttingData UNKNOWN = new CuttingData(0, 0, 0, 0, 0.45, 0);

  /** Checks that nothing is negative and the stepover is a fraction. */
  public CuttingData {
    Check.notNegative("rpm", rpm);
    Check.notNegative("feed", feedMmPerMin);
    Check.notNegative("plunge", plungeMmPerMin);
    Check.notNegative("stepdown", stepdownMm);
    Check.notNegative("thin feed", thinFeedMmPerMin);
    if (!(stepover > 0 && stepover <= 1)) {
      throw new IllegalArgumentException("stepover must be over 0, at most 1: " + stepover);
    }
    if (thinFeedMmPerMin > 0 && thinFeedMmPerMin < feedMmPerMin) {
      throw new IllegalArgumentException(
          "thin feed " + thinFeedMmPerMin + " under the feed " + feedMmPerMin);
    }
  }

  /** The same on a machine that goes no faster: no feed is over it. */
  public CuttingData atMost(double mmPerMin) {
    return new CuttingData(
        rpm,
        Math.min(feedMmPerMin, mmPerMin),
        Math.min(plungeMmPerMin, mmPerMin),
        stepdownMm,
        stepover,
        Math.min(thinFeedMmPerMin, mmPerMin));
  }

  /** Without a feed of its own for thin bites. */
  public CuttingData(
      double rpm, double feedMmPerMin, double plungeMmPerMin, double stepdownMm, double stepover) {
    this(rpm, feedMmPerMin, plungeMmPerMin, stepdownMm, stepover, 0);
  }
}
