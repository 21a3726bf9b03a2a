package plyscape.machine;

/**
 * A cutter and how it may be run. Immutable. Lengths and angles that weren't given are 0.
 *
 * @param name unique among the tools
 * @param shape form of the end
 * @param diameterMm cutting diameter, of a tapered cutter its largest
 * @param fluteLengthMm cutting length
 * @param flutes count
 * @param rpm spindle speed
 * @param feedMmPerMin feed in the cut
 * @param plungeMmPerMin feed straight down
 * @param stepdownMm greatest depth taken at once
 * @param stepover greatest width of cut at full feed, as a fraction of the diameter
 * @param tipDiameterMm diameter of the ball at a tapered cutter's tip; 0 is a sharp point
 * @param taperDegrees angle between a tapered cutter's side and its axis
 * @param shankDiameterMm diameter of the plain part above the flutes
 * @param stickoutMm from the tip to the holder's face
 * @param holderDiameterMm diameter of the holder (collet nut) at its face
 * @param spiral which way its flutes wind
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
    double stepover,
    double tipDiameterMm,
    double taperDegrees,
    double shankDiameterMm,
    double stickoutMm,
    double holderDiameterMm,
    Spiral spiral) {

  /** Which way the flutes carry the chips; for people only, paths are the same. */
  public enum Spiral {
    UNSAID,
    UP_CUT,
    DOWN_CUT
  }

  /** Form of a cutter's end. */
  public enum Shape {
    FLAT,
    BALL,
    TAPERED
  }

  /** A cutter of which no more than the cutting part is known. */
  public Tool(
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
    this(
        name,
        shape,
        diameterMm,
        fluteLengthMm,
        flutes,
        rpm,
        feedMmPerMin,
        plungeMmPerMin,
        stepdownMm,
        stepover,
        0,
        0,
        0,
        0,
        0,
        Spiral.UNSAID);
  }

  /** The same cutter by another name. */
  public Tool named(String other) {
    return new Tool(
        other,
        shape,
        diameterMm,
        fluteLengthMm,
        flutes,
        rpm,
        feedMmPerMin,
        plungeMmPerMin,
        stepdownMm,
        stepover,
        tipDiameterMm,
        taperDegrees,
        shankDiameterMm,
        stickoutMm,
        holderDiameterMm,
        spiral);
  }

  /**
   * What the way its flutes wind means for thin plies, in a few words, or nothing when it isn't
   * said. Common practice, not from a standard.
   */
  public String spiralNote() {
    return switch (spiral) {
      case UNSAID -> "";
      case UP_CUT -> "up-cut: clears chips, but lifts the fibres of the top ply at its edges";
      case DOWN_CUT ->
          "down-cut: presses the fibres down for clean edges, but packs chips in slots";
    };
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
