package plyscape.terrain.crs;

/**
 * The coordinate reference system of a raster, as far as the stages need it. Immutable.
 *
 * @param id authority code such as {@code EPSG:32630}, or WKT; "" without a CRS
 * @param kind what its coordinates are
 * @param metresPerUnit length of a coordinate unit; 1 for degrees and for no CRS
 */
public record GroundCrs(String id, Kind kind, double metresPerUnit) {

  /** What the coordinates of a CRS are. */
  public enum Kind {
    NONE,
    PROJECTED,
    GEOGRAPHIC
  }

  /** No CRS. */
  public static final GroundCrs NONE = new GroundCrs("", Kind.NONE, 1);
}
