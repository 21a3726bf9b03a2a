package plyscape.machine;

/**
 * The router's limits. Immutable.
 *
 * @param travelXMm span that the X axis may use
 * @param travelYMm span of Y
 * @param travelZMm span of Z
 * @param rapidMmPerMin speed of G0
 * @param accelerationMmPerS2 of each axis
 * @param corneringMm allowed deviation at corners, which sets the speed through them
 * @param safeHeightMm height over the top face for moves between far places
 * @param zErrorMm plus or minus, of Z
 * @param zero where X0 Y0 of the program is on the panel
 * @param zeroZ where Z0 of the program is
 * @param slotFeed feed in a cut as wide as the cutter, as a fraction of the tool's feed
 * @param climb whether walls are cut in climb direction, or conventionally
 * @param rampDegrees steepest way down into standing wood
 * @param wallAllowanceMm left at walls for the last round, mm; 0 for one stepover of the cutter
 * @param toolChangeS what changing the tool takes, s
 */
public record Machine(
    double travelXMm,
    double travelYMm,
    double travelZMm,
    double rapidMmPerMin,
    double accelerationMmPerS2,
    double corneringMm,
    double safeHeightMm,
    double zErrorMm,
    Zero zero,
    ZeroZ zeroZ,
    double slotFeed,
    boolean climb,
    double rampDegrees,
    double wallAllowanceMm,
    double toolChangeS) {

  /** Half the feed in a full slot. */
  public static final double SLOT_FEED = 0.5;

  /** A ramp of 5 degrees (common practice: 2 to 5). */
  public static final double RAMP_DEGREES = 5;

  /** A minute for a tool change. */
  public static final double TOOL_CHANGE_S = 60;

  /** A machine run in the usual way. */
  public Machine(
      double travelXMm,
      double travelYMm,
      double travelZMm,
      double rapidMmPerMin,
      double accelerationMmPerS2,
      double corneringMm,
      double safeHeightMm,
      double zErrorMm,
      Zero zero,
      ZeroZ zeroZ) {
    this(
        travelXMm,
        travelYMm,
        travelZMm,
        rapidMmPerMin,
        accelerationMmPerS2,
        corneringMm,
        safeHeightMm,
        zErrorMm,
        zero,
        zeroZ,
        SLOT_FEED,
        true,
        RAMP_DEGREES,
        0,
        TOOL_CHANGE_S);
  }

  /** Place of the program's X0 Y0 on the panel. */
  public enum Zero {
    LOWER_LEFT,
    LOWER_RIGHT,
    UPPER_LEFT,
    UPPER_RIGHT,
    CENTRE
  }

  /** Place of the program's Z0: the panel's top face, or the table under it. */
  public enum ZeroZ {
    TOP,
    BOTTOM
  }
}
