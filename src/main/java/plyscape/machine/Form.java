package plyscape.machine;

import java.util.Objects;

/**
 * What a cutter looks like below its shank. Immutable. Lengths and angles that aren't known are 0.
 *
 * @param shape form of the end
 * @param diameterMm cutting diameter, of a tapered cutter its largest
 * @param fluteLengthMm cutting length
 * @param flutes count
 * @param tipDiameterMm diameter of the ball at a tapered cutter's tip; 0 is a sharp point
 * @param taperDegrees angle between a tapered cutter's side and its axis
 * @param spiral which way its flutes wind
 */
public record Form(
    Tool.Shape shape,
    double diameterMm,
    double fluteLengthMm,
    int flutes,
    double tipDiameterMm,
    double taperDegrees,
    Tool.Spiral spiral) {

  /** Checks sizes; a tip is no wider than the cutter. */
  public Form {
    Objects.requireNonNull(shape);
    Objects.requireNonNull(spiral);
    Check.positive("diameter", diameterMm);
    Check.notNegative("flute length", fluteLengthMm);
    Check.positive("flutes", flutes);
    Check.notNegative("tip diameter", tipDiameterMm);
    Check.notNegative("taper", taperDegrees);
    if (tipDiameterMm > diameterMm || taperDegrees >= 90) {
      throw new IllegalArgumentException(
          "tip " + tipDiameterMm + ", taper " + taperDegrees + " with diameter " + diameterMm);
    }
  }

  /** A cutter with straight sides and two flutes. */
  public static Form of(Tool.Shape shape, double diameterMm, double fluteLengthMm) {
    return new Form(shape, diameterMm, fluteLengthMm, 2, 0, 0, Tool.Spiral.UNSAID);
  }
}
