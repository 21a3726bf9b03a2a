package plyscape.machine;

import java.util.Objects;

/**
 * How work is set up on a machine. Immutable.
 *
 * @param zero where X0 Y0 of the program is on the panel
 * @param zeroZ where Z0 of the program is
 * @param safeHeightMm height over the top face for moves between far places
 * @param toolChangeS what changing the tool takes, s
 * @param spinUpS what the spindle takes from M3 to its full speed, s; nothing is cut before
 */
public record SettingUp(
    Machine.Zero zero,
    Machine.ZeroZ zeroZ,
    double safeHeightMm,
    double toolChangeS,
    double spinUpS) {

  /** Zero at the lower left of the top face; a minute for a change (common practice, no source). */
  public static final SettingUp USUAL =
      new SettingUp(Machine.Zero.LOWER_LEFT, Machine.ZeroZ.TOP, 4, 60, 5);

  /** Checks that heights are positive, times not negative. */
  public SettingUp {
    Objects.requireNonNull(zero);
    Objects.requireNonNull(zeroZ);
    Check.positive("safe height", safeHeightMm);
    Check.notNegative("tool change", toolChangeS);
    Check.notNegative("spin-up", spinUpS);
  }
}
