package plyscape.bands;

import java.util.List;

/**
 * Which elevations take which ply: falling breaks between the plies that the terrain may take.
 * Immutable.
 *
 * @param plyNumbers plies from high ground to low, those that can occur, each once; at least one;
 *     in layup order but for a sea, which comes last
 * @param breaksM strictly falling elevations, one fewer than the plies; a value on a break belongs
 *     to the upper ply
 */
public record Bands(List<Integer> plyNumbers, List<Double> breaksM) {

  /** The ply of an elevation: the first listed whose lower break is not above it. */
  public int plyAt(double elevationM) {
    for (int i = 0; i < breaksM.size(); i++) {
      if (elevationM >= breaksM.get(i)) {
        return plyNumbers.get(i);
      }
    }
    return plyNumbers.get(plyNumbers.size() - 1);
  }
}
