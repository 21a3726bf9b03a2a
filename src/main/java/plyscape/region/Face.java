package plyscape.region;

/**
 * How the face of one region follows the terrain: elevations from {@code highM} down to {@code
 * lowM} go evenly to cut depths from {@code upperMm} down to {@code lowerMm}; what lies beyond
 * stays at that end. Immutable.
 *
 * @param plyNumber the region's ply
 * @param highM elevation that is cut least, m
 * @param lowM elevation that is cut most, m
 * @param upperMm least depth, mm, positive down
 * @param lowerMm greatest depth; the same for a flat face
 */
public record Face(int plyNumber, double highM, double lowM, double upperMm, double lowerMm) {

  /** Checks the order. */
  public Face {
    if (!(highM >= lowM) || !(upperMm >= 0) || !(lowerMm >= upperMm)) {
      throw new IllegalArgumentException(
          "no face: " + highM + " to " + lowM + " m, " + upperMm + " to " + lowerMm + " mm");
    }
  }

  /** A face at one depth. */
  static Face flat(int plyNumber, double depthMm) {
    return new Face(plyNumber, 0, 0, depthMm, depthMm);
  }

  /** Whether it is at one depth. */
  public boolean flat() {
    return upperMm == lowerMm;
  }

  /** Depth to which a place of an elevation is cut, mm. */
  public double depthMm(double elevationM) {
    if (flat()) {
      return upperMm;
    }
    double share = (highM - elevationM) / (highM - lowM);
    return upperMm + Math.max(0, Math.min(1, share)) * (lowerMm - upperMm);
  }
}
