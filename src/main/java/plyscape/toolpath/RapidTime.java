package plyscape.toolpath;

import plyscape.machine.Machine;

/** How long a rapid takes from rest to rest. */
final class RapidTime {

  private RapidTime() {}

  /** Seconds for a straight rapid of so many mm: a trapezoid of speed, or a triangle when short. */
  static double seconds(double mm, Machine machine) {
    double a = machine.accelerationMmPerS2();
    double v = machine.rapidMmPerMin() / 60;
    return mm < v * v / a ? 2 * Math.sqrt(mm / a) : mm / v + v / a;
  }
}
