package plyscape.terrain.crs;

/** Maps coordinates of one CRS to another. */
@FunctionalInterface
public interface PlaneMap {

  /**
   * Maps pairs in place.
   *
   * @param xy x, y, x, y ...; longitude before latitude, east before north; NaN where a point can't
   *     be mapped
   * @param count pairs
   */
  void map(double[] xy, int count);

  /** The identity. */
  static PlaneMap same() {
    return (xy, count) -> {};
  }
}
