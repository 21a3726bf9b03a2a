package plyscape.layup;

import java.util.List;
import java.util.SortedMap;

/**
 * A panel's plies, top to bottom, with its glue lines and what was measured on it. Immutable.
 *
 * @param file the layup file's name, for messages
 * @param name free text
 * @param plies top to bottom, at least one; numbers 1..n in order
 * @param glueLineMm thickness of each of the n-1 glue lines, 0 or more
 * @param glueLineToleranceMm plus or minus
 * @param measuredThicknessMm calipers on the pressed panel, or null
 * @param measuredThicknessToleranceMm plus or minus
 * @param measuredBottomsMm ply number to the measured depth of its bottom; may be empty
 * @param measuredBottomsToleranceMm plus or minus
 * @param flatnessMm plus or minus, how far the pressed panel is from flat
 */
public record Layup(
    String file,
    String name,
    List<Ply> plies,
    double glueLineMm,
    double glueLineToleranceMm,
    Double measuredThicknessMm,
    double measuredThicknessToleranceMm,
    SortedMap<Integer, Double> measuredBottomsMm,
    double measuredBottomsToleranceMm,
    double flatnessMm) {

  /** The same panel of other plies. */
  public Layup withPlies(List<Ply> others) {
    return new Layup(
        file,
        name,
        others,
        glueLineMm,
        glueLineToleranceMm,
        measuredThicknessMm,
        measuredThicknessToleranceMm,
        measuredBottomsMm,
        measuredBottomsToleranceMm,
        flatnessMm);
  }

  /** The same with another flatness, plus or minus mm. */
  public Layup withFlatness(double otherMm) {
    return new Layup(
        file,
        name,
        plies,
        glueLineMm,
        glueLineToleranceMm,
        measuredThicknessMm,
        measuredThicknessToleranceMm,
        measuredBottomsMm,
        measuredBottomsToleranceMm,
        otherMm);
  }

  /** The same with another measured thickness and its plus or minus, mm. */
  public Layup withThickness(double measuredMm, double toleranceMm) {
    return new Layup(
        file,
        name,
        plies,
        glueLineMm,
        glueLineToleranceMm,
        measuredMm,
        toleranceMm,
        measuredBottomsMm,
        measuredBottomsToleranceMm,
        flatnessMm);
  }

  /** The same with other measured bottoms and their plus or minus, mm; none when empty. */
  public Layup withBottoms(SortedMap<Integer, Double> measuredMm, double toleranceMm) {
    return new Layup(
        file,
        name,
        plies,
        glueLineMm,
        glueLineToleranceMm,
        measuredThicknessMm,
        measuredThicknessToleranceMm,
        measuredMm,
        toleranceMm,
        flatnessMm);
  }
}
