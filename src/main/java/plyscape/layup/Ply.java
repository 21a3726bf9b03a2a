package plyscape.layup;

/**
 * One layer of wood as the layup file gives it. Immutable.
 *
 * @param number from 1 at the top
 * @param name unique in the layup
 * @param rgb colour, 0xRRGGBB
 * @param thicknessMm nominal thickness, positive
 * @param toleranceMm plus or minus, 0 when absent
 * @param grainDeg direction of the grain from X, degrees
 * @param wood free text, may be ""
 */
public record Ply(
    int number,
    String name,
    int rgb,
    double thicknessMm,
    double toleranceMm,
    double grainDeg,
    String wood) {

  /** The colour as {@code #rrggbb}. */
  public String colour() {
    return String.format(java.util.Locale.ROOT, "#%06x", rgb);
  }
}
