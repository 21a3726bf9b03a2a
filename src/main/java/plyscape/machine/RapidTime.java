package plyscape.machine;

/** How long a machine's rapids take from rest to rest. */
public final class RapidTime {

  private final double acceleration;
  private final double speed;

  /** From here on the full speed is reached, mm. */
  private final double longMm;

  /** Of a machine. */
  public RapidTime(Machine machine) {
    acceleration = machine.accelerationMmPerS2();
    speed = machine.rapidMmPerMin() / 60;
    longMm = speed * speed / acceleration;
  }

  /** Seconds for a straight rapid of so many mm: a trapezoid of speed, or a triangle when short. */
  public double seconds(double mm) {
    return mm < longMm ? 2 * Math.sqrt(mm / acceleration) : (mm + longMm) / speed;
  }
}
