package plyscape.terrain;

/**
 * Where a terrain comes from. Immutable.
 *
 * @param file name as given
 * @param crs CRS name or code for people, "" when the raster has none
 * @param cellM ground size of a cell in X, metres
 */
public record RasterSource(String file, String crs, double cellM) {

  /** Checks the size. */
  public RasterSource {
    if (!(cellM > 0)) {
      throw new IllegalArgumentException("cells of " + cellM + " m");
    }
  }
}
