package plyscape.layup;

/**
 * A kind of sheet on the shelf. Immutable.
 *
 * @param name unique on the shelf
 * @param rgb colour, 0xRRGGBB
 * @param thicknessMm nominal thickness, positive
 * @param toleranceMm plus or minus
 * @param wood free text, may be ""
 * @param count sheets that are there
 */
public record Veneer(
    String name, int rgb, double thicknessMm, double toleranceMm, String wood, int count) {}
