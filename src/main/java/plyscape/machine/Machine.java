package plyscape.machine;

import java.util.Objects;

/**
 * A router. Immutable; its parts check themselves.
 *
 * @param travel spans of the axes
 * @param motion speed and accuracy
 * @param settingUp zero, safe height, what a change takes
 * @param rules how cutters are led
 */
public record Machine(Travel travel, Motion motion, SettingUp settingUp, CutRules rules) {

  /** What a job has that doesn't say otherwise; the only place of these defaults. */
  public static final Machine USUAL =
      new Machine(Travel.USUAL, Motion.USUAL, SettingUp.USUAL, CutRules.USUAL);

  /** Checks that no part is missing. */
  public Machine {
    Objects.requireNonNull(travel);
    Objects.requireNonNull(motion);
    Objects.requireNonNull(settingUp);
    Objects.requireNonNull(rules);
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

  /** The same machine with other spans. */
  public Machine with(Travel other) {
    return new Machine(other, motion, settingUp, rules);
  }

  /** The same machine, faster or slower. */
  public Machine with(Motion other) {
    return new Machine(travel, other, settingUp, rules);
  }

  /** The same machine, set up otherwise. */
  public Machine with(SettingUp other) {
    return new Machine(travel, motion, other, rules);
  }

  /** Span of X. */
  public double travelXMm() {
    return travel.xMm();
  }

  /** Span of Y. */
  public double travelYMm() {
    return travel.yMm();
  }

  /** Span of Z. */
  public double travelZMm() {
    return travel.zMm();
  }

  /** Speed of G0. */
  public double rapidMmPerMin() {
    return motion.rapidMmPerMin();
  }

  /** Acceleration of each axis. */
  public double accelerationMmPerS2() {
    return motion.accelerationMmPerS2();
  }

  /** Allowed deviation at corners. */
  public double corneringMm() {
    return motion.corneringMm();
  }

  /** Plus or minus, of Z. */
  public double zErrorMm() {
    return motion.zErrorMm();
  }

  /** Where X0 Y0 is on the panel. */
  public Zero zero() {
    return settingUp.zero();
  }

  /** Where Z0 is. */
  public ZeroZ zeroZ() {
    return settingUp.zeroZ();
  }

  /** Height over the top face for moves between far places. */
  public double safeHeightMm() {
    return settingUp.safeHeightMm();
  }

  /** What changing the tool takes, s. */
  public double toolChangeS() {
    return settingUp.toolChangeS();
  }

  /** What the spindle takes to its full speed, s. */
  public double spinUpS() {
    return settingUp.spinUpS();
  }

  /** Feed in a full slot, as a fraction of the tool's feed. */
  public double slotFeed() {
    return rules.slotFeed();
  }

  /** Whether walls are cut in climb direction. */
  public boolean climb() {
    return rules.climb();
  }

  /** Steepest way down into standing wood. */
  public double rampDegrees() {
    return rules.rampDegrees();
  }

  /** Left at walls for the last round; 0 for one stepover of the cutter. */
  public double wallAllowanceMm() {
    return rules.wallAllowanceMm();
  }

  /** Thinnest chip a tooth that still cuts. */
  public double leastChipMm() {
    return rules.leastChipMm();
  }
}
