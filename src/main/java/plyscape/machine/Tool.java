package plyscape.machine;

/**
 * A cutter and how it may be run. Immutable.
 *
 * @param name unique among the tools
 * @param shape form of the end
 * @param diameterMm cutting diameter
 * @param fluteLengthMm cutting length
 * @param flutes count
 * @param rpm spindle speed
 * @param feedMmPerMin feed in the cut
 * @param plungeMmPerMin feed straight down
 * @param stepdownMm greatest depth taken at once
 * @param stepover greatest width of cut at full feed, as a fraction of the diameter
 */
public record Tool(
    String name,
    Shape shape,
    double diameterMm,
    double fluteLengthMm,
    int flutes,
    double rpm,
    double feedMmPerMin,
    double plungeMmPerMin,
    double stepdownMm,
    double stepover) {

  /** Form of a cutter's end. */
  public enum Shape {
    FLAT,
    BALL,
    TAPERED
  }

  /** Half the diameter. */
  public double radiusMm() {
    return diameterMm / 2;
  }

  /** Greatest width of cut at full feed. */
  public double stepoverMm() {
    return stepover * diameterMm;
  }
}
