package plyscape.simulate;

/**
 * The deepest bite of a program: how much wood stood above the floor that one of its moves cut, off
 * the rim of 0.05 mm at walls. Immutable.
 *
 * @param file the program
 * @param line of the move
 * @param x place, panel mm
 * @param depthMm of the floor that was cut there
 * @param biteMm wood above it, which the move took at once
 * @param stepdownMm most that the program's cutter is to take; 0 where that isn't known
 */
public record Bite(
    String file, int line, double x, double y, double depthMm, double biteMm, double stepdownMm) {

  /** Z is rounded to 0.001 mm at both ends of a step. */
  private static final double ROUNDING_MM = 0.0015;

  /** Share of the stepdown; 0 where that isn't known. */
  public double share() {
    return stepdownMm > 0 ? biteMm / stepdownMm : 0;
  }

  /** Whether the cutter bites deeper than its stepdown, whatever its form. */
  public boolean tooDeep() {
    return stepdownMm > 0 && biteMm > stepdownMm + ROUNDING_MM;
  }
}
