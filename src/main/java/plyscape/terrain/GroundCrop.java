package plyscape.terrain;

import java.util.Locale;
import plyscape.fault.InputFault;
import plyscape.fault.JobFault;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.job.TerrainSpec;

/** The box of ground that is carved: the crop, exact, on the ground CRS; without a crop the raster's whole extent. */
final class GroundCrop {

  private static final int EDGE_STEPS = 64;

  private GroundCrop() {}

  /**
   * The ground box.
   *
   * @param rasterCrs the raster's own CRS, in which a crop without CRS is meant
   * @param ground the raster on the ground
   */
  static Box of(TerrainSpec spec, GroundCrs rasterCrs, GroundRaster ground, Warnings warnings) {
    Box extent = ground.extent();
    if (spec.crop() == null) {
      return extent;
    }
    Box asked = onGround(spec, rasterCrs, ground.crs());
    double slack = 1e-6 * ground.frame().cellX();
    double minX = Math.max(asked.minX(), extent.minX());
    double minY = Math.max(asked.minY(), extent.minY());
    double maxX = Math.min(asked.maxX(), extent.maxX());
    double maxY = Math.min(asked.maxY(), extent.maxY());
    if (!(maxX > minX) || !(maxY > minY)) {
      throw new JobFault(
          "terrain.crop (" + text(asked) + ") lies outside the terrain (" + text(extent) + ")",
          "give a crop within the terrain, or set terrain.crop_crs");
    }
    double out =
        Math.max(
            Math.max(minX - asked.minX(), asked.maxX() - maxX), Math.max(minY - asked.minY(), asked.maxY() - maxY));
    if (out > slack) {
      warnings.add(
          "crop-outside",
          String.format(Locale.ROOT, "the crop sticks out of the terrain by %.6g; only the part within is taken", out),
          "terrain.crop");
    }
    return new Box(minX, minY, maxX, maxY);
  }

  private static Box onGround(TerrainSpec spec, GroundCrs rasterCrs, GroundCrs groundCrs) {
    String from = spec.cropCrs().isEmpty() ? rasterCrs.id() : spec.cropCrs();
    if (from.equals(groundCrs.id())) {
      return spec.crop();
    }
    Place place = new Place("", 0, 0, "terrain.crop_crs");
    if (groundCrs.id().isEmpty()) {
      throw new InputFault(
          place, "the terrain has no CRS, so " + from + " can't be converted to it", "give the crop in the terrain's own coordinates");
    }
    PlaneMap map = CrsLookup.between(from, groundCrs.id(), place);
    return WarpedRaster.bounds(edge(spec.crop()), map, new Place("", 0, 0, "terrain.crop"));
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
    return String.format(
        Locale.ROOT, "%.6g, %.6g, %.6g, %.6g", box.minX(), box.minY(), box.maxX(), box.maxY());
  }
}
