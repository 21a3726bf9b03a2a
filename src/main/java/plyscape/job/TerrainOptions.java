package plyscape.job;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;

/**
 * Options of a terrain that few jobs set: what the raster's numbers mean, which part of the ground,
 * at which scale, and what lies under the sea or outside. Immutable.
 *
 * @param more further rasters of a mosaic; the first that has a value wins
 * @param raster what the rasters don't say of themselves
 * @param place which part of the ground, when no crop says so
 * @param finestCellMm cells finer than half of this on the panel are thinned out; null for a third
 *     of the smallest cutter
 * @param cover what lies where no ground is meant
 */
public record TerrainOptions(
    List<Path> more, RasterSpec raster, PlaceSpec place, Double finestCellMm, GroundCover cover) {

  /** Everything by default. */
  public static final TerrainOptions PLAIN =
      new TerrainOptions(List.of(), RasterSpec.AS_IT_SAYS, PlaceSpec.WHOLE, null, GroundCover.NONE);

  /** Copies the list. */
  public TerrainOptions {
    more = List.copyOf(more);
    Objects.requireNonNull(raster);
    Objects.requireNonNull(place);
    Objects.requireNonNull(cover);
  }

  /**
   * What rasters don't say of themselves.
   *
   * @param crs CRS that they are in, whatever they say; "" for what they say
   * @param unit what their numbers are
   * @param nodata value that means none, beside what the file says, or null
   * @param encoding how the colours of a PNG mean elevations
   * @param cellM ground size of the square cells of a raster that isn't placed on the ground,
   *     metres, or null
   */
  public record RasterSpec(String crs, Unit unit, Double nodata, Encoding encoding, Double cellM) {

    /** Nothing is added to what they say. */
    public static final RasterSpec AS_IT_SAYS =
        new RasterSpec("", Unit.FROM_FILE, null, Encoding.AUTO, null);
  }

  /**
   * A place and a size instead of a crop.
   *
   * @param centre middle in {@code cropCrs}, or null
   * @param groundWidthM width about the centre, metres, or null; the height follows from the panel
   * @param scale map scale's denominator, as 25000 in 1:25000, or null to fit the terrain to the
   *     panel
   */
  public record PlaceSpec(Centre centre, Double groundWidthM, Double scale) {

    /** All of the ground or of its crop, as large as it goes. */
    public static final PlaceSpec WHOLE = new PlaceSpec(null, null, null);
  }

  /** CRS of the rasters, whatever they say; "" for what they say. */
  public String crs() {
    return raster.crs();
  }

  /** What the rasters' numbers are. */
  public Unit unit() {
    return raster.unit();
  }

  /** Value that means none, or null. */
  public Double nodata() {
    return raster.nodata();
  }

  /** Ground size of cells that aren't placed on the ground, or null. */
  public Double cellM() {
    return raster.cellM();
  }

  /** Middle of the crop, or null. */
  public Centre centre() {
    return place.centre();
  }

  /** Width of the crop about the centre, or null. */
  public Double groundWidthM() {
    return place.groundWidthM();
  }

  /** Map scale's denominator, or null. */
  public Double scale() {
    return place.scale();
  }

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
    RGB_256,
    /** {@code -10000 + 0.1 (65536 R + 256 G + B)} metres. */
    RGB_TENTH
  }

  /** A point in {@code crop_crs}. */
  public record Centre(double x, double y) {}
}
