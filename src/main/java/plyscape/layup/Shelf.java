package plyscape.layup;

import java.util.List;

/**
 * The sheets on the shelf and what is wanted of them. Immutable.
 *
 * @param name of the layup to be
 * @param plies how many are wanted, or null
 * @param glueLine between each two plies
 * @param flatnessMm plus or minus, of the pressed panel
 * @param veneers in the order in which the terrain should show them, high ground first
 * @param wishes zones that want a sheet of their own
 */
public record Shelf(
    String name,
    Integer plies,
    GlueLine glueLine,
    double flatnessMm,
    List<Veneer> veneers,
    List<Wish> wishes) {

  /** A zone and the veneer that it wants. */
  public record Wish(String zone, String veneer) {}
}
