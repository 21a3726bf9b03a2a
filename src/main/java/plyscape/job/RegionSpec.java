package plyscape.job;

/**
 * What regions have to be like. Immutable.
 *
 * @param minimumAreaMm2 smaller ones are given to a neighbour
 * @param surface flat terraces, or faces that follow the terrain
 * @param standing what wood left standing has to be like
 */
public record RegionSpec(double minimumAreaMm2, SurfaceSpec surface, StandingSpec standing) {

  /** Checks the area. */
  public RegionSpec {
    if (!(minimumAreaMm2 >= 0)) {
      throw new IllegalArgumentException("no least area: " + minimumAreaMm2 + " mm2");
    }
  }
}
