package plyscape.toolpath.task;

import plyscape.machine.Machine;

/**
 * How near rapids come to what stands under them. Immutable.
 *
 * @param faceMm over the untouched face on the way between near places
 * @param floorMm over cut floors: the last bit down goes at plunge feed
 * @param straightMm straight up from a floor, before the way may go aslant
 */
public record RapidRoom(double faceMm, double floorMm, double straightMm) {

  private static final double FACE_MM = 1.0;

  /** Over cut floors at least. */
  private static final double FLOOR_MM = 0.1;

  /** What is left over a floor that stands too high for a cutter that is set too low. */
  private static final double LEFT_MM = 0.04;

  /** Checks ranges. */
  public RapidRoom {
    if (!(floorMm > 0) || !(faceMm >= floorMm) || !(straightMm >= 0)) {
      throw new IllegalArgumentException("room for rapids out of range");
    }
  }

  /** On a flat panel: two cutters may be set to Z0 with the machine's error each. */
  public static RapidRoom of(Machine machine) {
    double floor = Math.max(FLOOR_MM, LEFT_MM + 2 * machine.zErrorMm());
    return new RapidRoom(Math.max(FACE_MM, floor), floor, 0);
  }

  /**
   * On a panel with slopes: the floor may lie higher at a cutter's rim than at its axis, and where
   * another cut ended once more.
   *
   * @param rimMm how much higher the panel may lie at the rim of the widest cutter
   */
  public RapidRoom onSlopes(double rimMm) {
    double floor = floorMm + 2 * rimMm;
    return new RapidRoom(Math.max(faceMm, floor), floor, straightMm + 2 * rimMm);
  }
}
