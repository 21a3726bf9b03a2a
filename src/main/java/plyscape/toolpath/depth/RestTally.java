package plyscape.toolpath.depth;

import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import plyscape.toolpath.lattice.Stock;

/** How much wood stands at which depth with which level to reach, counted in lattice nodes. */
public final class RestTally {

  /** By the bits of the depth where it stands, then the level. */
  private final Map<Long, int[]> counts = new HashMap<>();

  private long last = -1;
  private int[] ofLast;

  /** One more node. */
  public void add(float standing, int level) {
    long place = (long) Float.floatToRawIntBits(standing) << 32 | level;
    if (place != last || ofLast == null) { // neighbours are mostly alike
      ofLast = counts.computeIfAbsent(place, p -> new int[1]);
      last = place;
    }
    ofLast[0]++;
  }

  /**
   * Area cut in all, in nodes, when full steps are at these depths; infinite when a step would be
   * too deep.
   */
  double cost(Collection<Double> planes, double[] depthsMm, double stepdownMm) {
    double sum = 0;
    for (Map.Entry<Long, int[]> entry : counts.entrySet()) {
      double standing = Float.intBitsToFloat((int) (entry.getKey() >> 32));
      double target = depthsMm[entry.getKey().intValue()];
      int cuts = 1;
      for (double plane : planes) {
        if (plane > standing + Stock.SAME_MM
            && plane < target - 1e-9
            && target - standing > stepdownMm + 1e-6) {
          if (plane - standing > stepdownMm + 1e-6) {
            return Double.POSITIVE_INFINITY;
          }
          cuts++;
          standing = plane;
        }
      }
      if (target - standing > stepdownMm + 1e-6) {
        return Double.POSITIVE_INFINITY;
      }
      sum += (double) cuts * entry.getValue()[0];
    }
    // Of equal ones that with fewer steps.
    return sum * (1 + 1e-6 * planes.size());
  }
}
