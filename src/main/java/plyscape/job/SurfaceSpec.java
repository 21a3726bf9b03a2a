package plyscape.job;

import plyscape.job.yaml.Keys;

/**
 * What the faces inside the regions look like. Immutable.
 *
 * @param kind flat terraces, or faces that follow the terrain
 * @param cuspMm how high ridges between two finishing paths may stand on level ground, sculpted
 *     faces only
 */
public record SurfaceSpec(Kind kind, double cuspMm) {

  /** Least and greatest cusp that makes sense: finer takes days, coarser shows as stripes. */
  static final Keys.Range CUSP = Keys.Range.mm(0.002, 0.2);

  /** The usual cusp: sanding takes off five times as much. */
  static final double USUAL_CUSP_MM = 0.02;

  /** One terrace a region. */
  public static final SurfaceSpec FLAT = new SurfaceSpec(Kind.FLAT, USUAL_CUSP_MM);

  /** What a face is. */
  public enum Kind {
    /** One depth a ply. */
    FLAT,
    /** Follows the terrain within the ply's safe window. */
    SCULPTED
  }

  /** Checks the cusp. */
  public SurfaceSpec {
    if (!(cuspMm > 0)) {
      throw new IllegalArgumentException("a cusp must be positive: " + cuspMm);
    }
  }

  /** Whether faces follow the terrain. */
  public boolean sculpted() {
    return kind == Kind.SCULPTED;
  }

  /** Reads the keys {@code surface} and {@code cusp} of a job. */
  static SurfaceSpec read(Keys job) {
    return new SurfaceSpec(
        job.choice("surface", Kind.FLAT, Kind.values()), job.number("cusp", USUAL_CUSP_MM, CUSP));
  }
}
