package plyscape.zones;

/** Maps pairs x, y in place; what can't be mapped becomes NaN. */
@FunctionalInterface
interface PointMap {

  void map(double[] xy, int count);

  /** Leaves everything as it is. */
  static PointMap same() {
    return (xy, count) -> {};
  }
}
