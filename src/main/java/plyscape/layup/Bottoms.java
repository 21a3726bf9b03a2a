package plyscape.layup;

import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Measured depths of ply bottoms at one place. Immutable.
 *
 * @param depthsMm ply number to depth below the top face, positive; may be empty
 * @param toleranceMm plus or minus of each; may be stated before anything is measured
 */
public record Bottoms(SortedMap<Integer, Double> depthsMm, double toleranceMm) {

  /** None was measured. */
  public static final Bottoms NONE = new Bottoms(new TreeMap<>(), 0);

  /** Checks signs and keeps a copy. */
  public Bottoms {
    depthsMm = Collections.unmodifiableSortedMap(new TreeMap<>(depthsMm));
    if (!(toleranceMm >= 0)) {
      throw new IllegalArgumentException("tolerance of bottoms " + toleranceMm);
    }
    depthsMm.forEach(
        (ply, depth) -> {
          if (ply < 1 || !(depth > 0)) {
            throw new IllegalArgumentException("bottom of ply " + ply + " at " + depth);
          }
        });
  }

  /** Whether nothing was measured. */
  public boolean isEmpty() {
    return depthsMm.isEmpty();
  }
}
