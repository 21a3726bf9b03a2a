package plyscape.terrain;

import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import plyscape.fault.InputFault;
import plyscape.fault.JobFault;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.job.GroundCover;
import plyscape.job.TerrainOptions;
import plyscape.job.TerrainSpec;
import plyscape.terrain.crs.CrsLookup;
import plyscape.terrain.crs.GroundCrs;
import plyscape.terrain.crs.PlaneMap;
import plyscape.text.Numbers;
import plyscape.text.Template;

/**
 * The box of ground that is carved, exact, on the ground CRS: the crop, or a box about a centre, or
 * the raster's whole extent.
 */
final class GroundCrop {

  private static final int EDGE_STEPS = 64;

  /** Metres in a degree of latitude, about; for boxes that only have to be large enough. */
  private static final double METRES_PER_DEGREE = 111_000;

  /** Rounding in a crop's numbers isn't worth a word. */
  private static final double OUTSIDE_UNSAID = 1e-6;

  /** A panel of which more is made up than known isn't what was meant. */
  private static final double OUTSIDE_MOST = 0.5;

  private GroundCrop() {}

  /**
   * The ground box, as asked: it may stick out of the raster.
   *
   * @param rasterCrs the raster's own CRS, in which a crop without CRS is meant
   * @param ground the raster on the ground
   * @param free what of the panel may be carved, mm
   */
  static Box of(
      TerrainSpec spec, GroundCrs rasterCrs, GroundRaster ground, Box free, Warnings warnings) {
    Box extent = ground.extent();
    Box asked = asked(spec, rasterCrs, ground.crs(), free);
    if (asked == null) {
      return extent;
    }
    double minX = Math.max(asked.minX(), extent.minX());
    double minY = Math.max(asked.minY(), extent.minY());
    double maxX = Math.min(asked.maxX(), extent.maxX());
    double maxY = Math.min(asked.maxY(), extent.maxY());
    if (!(maxX > minX) || !(maxY > minY)) {
      throw outside(spec, rasterCrs, ground, asked);
    }
    double share = 1 - (maxX - minX) / asked.width() * ((maxY - minY) / asked.height());
    if (share <= OUTSIDE_UNSAID) {
      return new Box(minX, minY, maxX, maxY);
    }
    String said =
        Template.fill(
            "%.1f %% of the crop lies outside the terrain (%s)", 100 * share, text(extent));
    GroundCover cover = spec.options().cover();
    boolean meant =
        cover.outline() != null || cover.voids().rule() != GroundCover.Voids.Rule.FILL_SMALL;
    if (share > OUTSIDE_MOST && !meant) {
      throw new JobFault(
          said,
          "make the crop smaller, move it, or list the neighbouring rasters in terrain.file; if it"
              + " is meant, set terrain.voids to fill, leave or a ply");
    }
    warnings.add(
        "crop-outside",
        said
            + ", where nothing is known"
            + (filled(cover.voids()) ? ": it is filled from the edge" : ""),
        "terrain.crop");
    return asked;
  }

  private static boolean filled(GroundCover.Voids voids) {
    return voids.rule() == GroundCover.Voids.Rule.FILL
        || voids.rule() == GroundCover.Voids.Rule.FILL_SMALL;
  }

  /** A fault with both boxes in the CRS that the crop is given in. */
  private static JobFault outside(
      TerrainSpec spec, GroundCrs rasterCrs, GroundRaster ground, Box asked) {
    String from = from(spec, rasterCrs);
    String groundCrs = ground.crs().id();
    Box given = asked;
    Box extent = ground.extent();
    if (spec.crop() != null && !from.equals(groundCrs)) {
      given = spec.crop();
      Place place = new Place("", 0, 0, "terrain.crop_crs");
      extent = WarpedRaster.bounds(edge(extent), CrsLookup.between(groundCrs, from, place), place);
    } else {
      from = groundCrs;
    }
    boolean swapped =
        given.minY() < extent.maxX()
            && given.maxY() > extent.minX()
            && given.minX() < extent.maxY()
            && given.maxX() > extent.minY();
    return new JobFault(
        Template.fill(
            "the crop (%s) lies outside the terrain (%s)%s",
            text(given), text(extent), from.isEmpty() ? "" : ", both in " + CrsLookup.label(from)),
        swapped
            ? "x (or longitude) comes before y (or latitude): they seem to be swapped"
            : "give a crop within the terrain, or set terrain.crop_crs to the CRS that it is in");
  }

  private static Box asked(TerrainSpec spec, GroundCrs rasterCrs, GroundCrs groundCrs, Box free) {
    if (spec.crop() != null) {
      return boxIn(groundCrs.id(), spec, rasterCrs);
    }
    TerrainOptions options = spec.options();
    if (options.centre() == null) {
      return null;
    }
    double[] xy = centre(spec, rasterCrs, groundCrs.id());
    double metresPerMm =
        options.scale() != null ? options.scale() / 1000 : options.groundWidthM() / free.width();
    double halfX = free.width() * metresPerMm / 2 / groundCrs.metresPerUnit();
    double halfY = free.height() * metresPerMm / 2 / groundCrs.metresPerUnit();
    return new Box(xy[0] - halfX, xy[1] - halfY, xy[0] + halfX, xy[1] + halfY);
  }

  /** The centre that the job asks for, in the ground CRS. */
  static double[] centre(TerrainSpec spec, GroundCrs rasterCrs, String groundCrs) {
    double[] xy = {spec.options().centre().x(), spec.options().centre().y()};
    map(spec, rasterCrs, groundCrs).map(xy, 1);
    if (!Double.isFinite(xy[0] + xy[1])) {
      throw new JobFault(
          "terrain.centre can't be mapped to the terrain's ground", "check terrain.crop_crs");
    }
    return xy;
  }

  /**
   * About what the crop needs in the raster's own CRS, at least as large; null without a crop, or
   * when it can't be mapped.
   */
  static Box inRaster(TerrainSpec spec, GroundCrs rasterCrs) {
    if (spec.crop() != null) {
      return boxIn(rasterCrs.id(), spec, rasterCrs);
    }
    TerrainOptions options = spec.options();
    if (options.centre() == null) {
      return null;
    }
    double[] xy = {options.centre().x(), options.centre().y()};
    map(spec, rasterCrs, rasterCrs.id()).map(xy, 1);
    if (!Double.isFinite(xy[0] + xy[1])) {
      return null;
    }
    // A panel side is at most 5 m, so a map scale bounds the ground too.
    double metres =
        options.groundWidthM() != null ? 2 * options.groundWidthM() : 5 * options.scale();
    boolean degrees = rasterCrs.kind() == GroundCrs.Kind.GEOGRAPHIC;
    double dY = metres / (degrees ? METRES_PER_DEGREE : rasterCrs.metresPerUnit());
    double dX = degrees ? dY / Math.max(0.05, Math.cos(Math.toRadians(xy[1]))) : dY;
    return new Box(xy[0] - dX, xy[1] - dY, xy[0] + dX, xy[1] + dY);
  }

  private static Box boxIn(String crs, TerrainSpec spec, GroundCrs rasterCrs) {
    if (spec.cropCrs().isEmpty()
        && rasterCrs.kind() == GroundCrs.Kind.GEOGRAPHIC
        && !degrees(spec.crop())) {
      throw new InputFault(
          new Place("", 0, 0, "terrain.crop"),
          "found " + text(spec.crop()) + ", which can't be degrees, and the terrain is in degrees",
          "give longitudes and latitudes, or name the crop's own CRS as terrain.crop_crs");
    }
    PlaneMap map = map(spec, rasterCrs, crs);
    return from(spec, rasterCrs).equals(crs)
        ? spec.crop()
        : WarpedRaster.bounds(edge(spec.crop()), map, new Place("", 0, 0, "terrain.crop"));
  }

  private static boolean degrees(Box box) {
    return box.minX() >= -541 && box.maxX() <= 541 && box.minY() >= -180 && box.maxY() <= 180;
  }

  private static String from(TerrainSpec spec, GroundCrs rasterCrs) {
    return spec.cropCrs().isEmpty() ? rasterCrs.id() : CrsLookup.asId(spec.cropCrs());
  }

  private static PlaneMap map(TerrainSpec spec, GroundCrs rasterCrs, String to) {
    Place place = new Place("", 0, 0, "terrain.crop_crs");
    String from = from(spec, rasterCrs);
    if (to.isEmpty() && !from.isEmpty()) {
      throw new InputFault(
          place,
          "the terrain has no CRS, so " + from + " can't be converted to it",
          "give the crop in the terrain's own coordinates, or set terrain.crs");
    }
    return CrsLookup.between(from, to, place);
  }

  private static double[] edge(Box box) {
    double[] xy = new double[8 * EDGE_STEPS];
    for (int i = 0; i < EDGE_STEPS; i++) {
      double t = (double) i / EDGE_STEPS;
      double[] u = {t, 1, 1 - t, 0};
      double[] v = {0, t, 1, 1 - t};
      for (int side = 0; side < 4; side++) {
        int at = 2 * (side * EDGE_STEPS + i);
        xy[at] = box.minX() + u[side] * box.width();
        xy[at + 1] = box.minY() + v[side] * box.height();
      }
    }
    return xy;
  }

  private static String text(Box box) {
    return DoubleStream.of(box.minX(), box.minY(), box.maxX(), box.maxY())
        .mapToObj(value -> Double.isFinite(value) ? Numbers.trimmed(value, 6) : "?")
        .collect(Collectors.joining(", "));
  }
}
