package plyscape.terrain;

import java.io.IOException;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.grid.Grid;
import plyscape.grid.GroundFrame;
import plyscape.grid.UtmZone;
import plyscape.job.Job;
import plyscape.job.TerrainSpec;
import plyscape.terrain.GroundRaster.Window;

/** Reads the terrain of a job: reproject, crop, fill voids, smooth, fit into the panel, in this order. */
public final class TerrainReader {

  private TerrainReader() {}

  /**
   * Reads the terrain over the carved area.
   *
   * @param spec which raster, and how it is taken
   * @param panel the panel that it is fitted into
   * @param smallestToolMm diameter of the smallest cutter: cells far finer than it are thinned out
   * @param warnings what the user should know is added here
   * @throws InputFault when the file isn't an elevation raster that can be read
   * @throws plyscape.fault.JobFault when the crop or panel leaves no ground to carve
   */
  public static Terrain read(
      TerrainSpec spec, Job.PanelSpec panel, double smallestToolMm, Warnings warnings) {
    try (Raster raster = RasterOpener.open(spec.file(), warnings)) {
      Place place = Place.file(spec.file().toString());
      GroundRaster ground = onGround(raster, place, warnings);
      Box crop = GroundCrop.of(spec, raster.crs(), ground, warnings);
      Box carved = PanelFit.carved(crop, panel);
      GroundFrame frame = new GroundFrame(ground.crs().id(), crop, carved, ground.crs().metresPerUnit());
      return take(spec, raster.name(), ground, frame, smallestToolMm, place);
    } catch (IOException e) {
      throw RasterOpener.unreadable(spec.file(), e);
    }
  }

  private static GroundRaster onGround(Raster raster, Place place, Warnings warnings) {
    GroundCrs crs = raster.crs();
    if (crs.kind() == GroundCrs.Kind.GEOGRAPHIC) {
      double x = raster.toGround().x(raster.columns() / 2.0, raster.rows() / 2.0);
      double y = raster.toGround().y(raster.columns() / 2.0, raster.rows() / 2.0);
      String utm = UtmZone.at(x, y).code();
      return new WarpedRaster(
          raster, CrsLookup.describe(utm, place), CrsLookup.between(crs.id(), utm, place),
          CrsLookup.between(utm, crs.id(), place), place);
    }
    if (crs.kind() == GroundCrs.Kind.NONE) {
      warnings.add(
          "no-crs", "the raster has no CRS; its coordinates are taken as metres", raster.name());
    }
    if (raster.toGround().axisParallel()) {
      return new AlignedRaster(raster);
    }
    warnings.add("turned-raster", "the raster's rows run aslant; it is resampled north up", raster.name());
    return new WarpedRaster(raster, crs, PlaneMap.same(), PlaneMap.same(), place);
  }

  private static Terrain take(
      TerrainSpec spec, String name, GroundRaster ground, GroundFrame frame, double toolMm, Place place)
      throws IOException {
    CellFrame all = ground.frame();
    Window window = CropWindow.around(frame.ground(), all);
    double[] values = ground.read(window);
    CropWindow core = CropWindow.centresIn(frame.ground(), all, window);
    boolean[] isVoid = new boolean[values.length];
    for (int i = 0; i < values.length; i++) {
      isVoid[i] = Double.isNaN(values[i]);
    }
    if (!VoidFill.fill(values, window.columns(), window.rows())) {
      throw new InputFault(place, "every cell in the crop is void", "crop to where the raster has values");
    }
    double cellXMm = all.cellX() * frame.panel().width() / frame.ground().width();
    double cellYMm = all.cellY() * frame.panel().height() / frame.ground().height();
    GaussianBlur.blur(
        values, window.columns(), window.rows(), spec.smoothingMm() / cellXMm, spec.smoothingMm() / cellYMm);
    CropWindow.Range range = core.range(values, isVoid);
    if (range.valid() == 0) {
      throw new InputFault(place, "every cell in the crop is void", "crop to where the raster has values");
    }
    CellFrame cells =
        new CellFrame(
            frame.panelX(all.minX() + window.column() * all.cellX()),
            frame.panelY(all.minY() + window.row() * all.cellY()),
            cellXMm, cellYMm, window.columns(), window.rows());
    Grid grid = Thinning.thin(new Grid(cells, values), toolMm);
    return new Terrain(
        name, frame.crs(), frame, grid, range.min(), range.max(), all.cellX() * ground.crs().metresPerUnit(),
        range.voids());
  }
}
