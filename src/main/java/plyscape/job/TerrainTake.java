package plyscape.job;

import java.nio.file.Path;
import java.util.List;

/**
 * How a terrain is taken, beyond what every job says: what the raster's numbers mean, which part of
 * the ground, at which scale, and what lies under the sea or outside. Immutable.
 *
 * @param more further rasters of a mosaic; the first that has a value wins
 * @param crs CRS that the rasters are in, whatever they say; "" for what they say
 * @param unit what the raster's numbers are
 * @param nodata value that means none, beside what the file says, or null
 * @param encoding how the colours of a PNG mean elevations
 * @param cellM ground size of the square cells of a raster that isn't placed on the ground, metres
 * @param centre middle of the crop in {@code cropCrs}, or null
 * @param groundWidthM width of the crop about the centre, metres, or null; its height follows from
 *     the panel
 * @param scale map scale's denominator, as 25000 in 1:25000, or null to fit the terrain to the
 *     panel
 * @param finestCellMm cells finer than half of this on the panel are thinned out; null for a third
 *     of the smallest cutter
 * @param sea what lies at or under a level, or null
 * @param outline what lies outside a polygon, or null
 */
public record TerrainTake(
    List<Path> more,
    String crs,
    Unit unit,
    Double nodata,
    Encoding encoding,
    Double cellM,
    Centre centre,
    Double groundWidthM,
    Double scale,
    Double finestCellMm,
    Sea sea,
    Outline outline) {

  /** Everything by default. */
  public static final TerrainTake PLAIN =
      new TerrainTake(
          List.of(),
          "",
          Unit.FROM_FILE,
          null,
          Encoding.AUTO,
          null,
          null,
          null,
          null,
          null,
          null,
          null);

  /** Unit of elevations. */
  public enum Unit {
    /** What the file says, else metres. */
    FROM_FILE(1),
    M(1),
    /** International foot. */
    FT(0.3048),
    /** US survey foot. */
    US_FT(1200.0 / 3937),
    DM(0.1),
    CM(0.01),
    KM(1000);

    private final double metres;

    Unit(double metres) {
      this.metres = metres;
    }

    /** Metres in one. */
    public double metres() {
      return metres;
    }
  }

  /** How the samples of a PNG mean elevations. */
  public enum Encoding {
    /** Grey as it is; colours by what they look like, with a warning. */
    AUTO,
    GREY,
    /** {@code 256 R + G + B / 256 - 32768} metres. */
    TERRARIUM,
    /** {@code -10000 + 0.1 (65536 R + 256 G + B)} metres. */
    TERRAIN_RGB
  }

  /** A point in {@code crop_crs}. */
  public record Centre(double x, double y) {}

  /**
   * Water up to a level.
   *
   * @param levelM elevation in metres; ground at or under it is sea
   * @param plyNumber its ply
   */
  public record Sea(double levelM, int plyNumber) {}

  /**
   * A polygon along which the terrain is cut.
   *
   * @param map the polygon, picked as in a zone
   * @param outsidePlyNumber ply of everything outside
   */
  public record Outline(MapPick map, int outsidePlyNumber) {}
}
