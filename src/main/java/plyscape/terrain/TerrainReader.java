package plyscape.terrain;

import java.io.IOException;
import plyscape.fault.InputFault;
import plyscape.fault.JobFault;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.grid.Grid;
import plyscape.grid.GroundFrame;
import plyscape.grid.Turn;
import plyscape.job.Job;
import plyscape.job.TerrainSpec;
import plyscape.terrain.GroundRaster.Window;
import plyscape.terrain.crs.CrsLookup;
import plyscape.terrain.raster.Raster;
import plyscape.terrain.raster.RasterLimits;

/**
 * Reads the terrain of a job: reproject, crop, fill voids, smooth, fit into the panel, in this
 * order.
 */
public final class TerrainReader {

  /**
   * Windows of more cells are thinned out while they are read, if the panel can't show the cells
   * anyway; smaller ones are smoothed, and their range taken, at full resolution first.
   */
  static final long MOST_CELLS = 8_000_000;

  /** Windows of more cells after thinning are too much for what comes after. */
  private static final long MOST_CELLS_KEPT = 40_000_000;

  private TerrainReader() {}

  /**
   * Reads the terrain over the carved area.
   *
   * @param spec which rasters, and how they are taken
   * @param panel the panel that it is fitted into
   * @param smallestToolMm diameter of the smallest cutter: cells far finer than it are thinned out
   * @param warnings what the user should know is added here
   * @throws InputFault when a file isn't an elevation raster that can be read
   * @throws JobFault when the crop or panel leaves no ground to carve
   */
  public static Terrain read(
      TerrainSpec spec, Job.PanelSpec panel, double smallestToolMm, Warnings warnings) {
    try (Raster raster = TerrainSource.open(spec, warnings)) {
      GroundRaster north = TerrainSource.onGround(raster, spec, warnings);
      Turn turn = TurnedGround.turn(spec, panel, raster.crs(), north.crs().id());
      GroundRaster known =
          turn.none() ? north : north.turned(turn, Place.file(spec.file().toString()));
      Box crop = GroundCrop.of(spec, raster.crs(), known, PanelFit.free(panel), warnings);
      TurnedGround.requireKnown(known, crop, turn, warnings);
      GroundRaster ground = PaddedGround.around(known, crop);
      double metresPerUnit = ground.crs().metresPerUnit();
      Box carved = PanelFit.carved(crop, metresPerUnit, panel, spec.options().scale());
      GroundFrame frame = new GroundFrame(ground.crs().id(), crop, carved, metresPerUnit, turn);
      double finestMm =
          spec.options().finestCellMm() != null
              ? spec.options().finestCellMm()
              : smallestToolMm / Thinning.CELLS_PER_TOOL;
      Terrain terrain = take(spec, raster.name(), ground, frame, finestMm);
      ReliefCheck.check(terrain, spec, raster, warnings);
      if (spec.options().scale() == null) {
        PanelFit.hint(carved, panel, warnings);
      }
      return terrain;
    } catch (IOException e) {
      throw RasterLimits.unreadable(spec.file(), e);
    }
  }

  private static Terrain take(
      TerrainSpec spec, String name, GroundRaster ground, GroundFrame frame, double finestMm)
      throws IOException {
    CellFrame all = ground.frame();
    double cellXMm = all.cellX() * frame.panel().width() / frame.ground().width();
    double cellYMm = all.cellY() * frame.panel().height() / frame.ground().height();
    Window window = CropWindow.around(frame.ground(), all);
    int across = 1;
    int along = 1;
    if (window.cells() > MOST_CELLS) {
      across = Thinning.factor(cellXMm, finestMm);
      along = Thinning.factor(cellYMm, finestMm);
      window = CropWindow.inBlocks(window, all, across, along);
    }
    requireRoom(name, window.cells(), (long) across * along);
    CropWindow core = CropWindow.centresIn(frame.ground(), all, window);
    BlockMeans blocks = BlockMeans.read(ground, window, across, along, core);
    boolean[] isVoid = blocks.voids(); // before they are filled
    fillVoids(blocks, spec);
    double[] values = blocks.values();
    GaussianBlur.blur(
        values,
        blocks.columns(),
        blocks.rows(),
        sigma(spec.smoothingMm(), cellXMm, across),
        sigma(spec.smoothingMm(), cellYMm, along));
    boolean asRead = across * along > 1 && spec.smoothingMm() == 0;
    CropWindow.Range range =
        asRead ? blocks.range() : core.inBlocks(across, along).range(values, isVoid);
    CellFrame cells = onPanel(blocks, window, all, frame, cellXMm * across, cellYMm * along);
    Grid grid = Thinning.thin(new Grid(cells, values), finestMm);
    double cellM = all.cellX() * across * ground.crs().metresPerUnit();
    return new Terrain(
        new RasterSource(name, CrsLookup.label(frame.crs()), cellM),
        frame,
        grid,
        new Terrain.Range(range.min(), range.max()),
        VoidCells.of(voids(ground, frame, blocks), cells, isVoid, frame.panel()),
        null);
  }

  private static CellFrame onPanel(
      BlockMeans blocks,
      Window window,
      CellFrame all,
      GroundFrame frame,
      double cellXMm,
      double cellYMm) {
    return new CellFrame(
        frame.panelX(all.minX() + window.column() * all.cellX()),
        frame.panelY(all.minY() + window.row() * all.cellY()),
        cellXMm,
        cellYMm,
        blocks.columns(),
        blocks.rows());
  }

  private static void requireRoom(String name, long cells, long cellsABlock) {
    if (cells / cellsABlock > MOST_CELLS_KEPT) {
      throw new JobFault(
          name + " has " + cells + " cells in the crop, more than can be held",
          "crop it, or set terrain.finest_cell (mm on the panel) to thin it out more");
    }
  }

  private static void fillVoids(BlockMeans blocks, TerrainSpec spec) {
    Place file = Place.file(spec.file().toString());
    if (blocks.range().valid() == 0) {
      throw new InputFault(
          file, "every cell in the crop is void", "crop to where the raster has values");
    }
    if (!VoidFill.fill(blocks.values(), blocks.columns(), blocks.rows())) {
      throw new InputFault(
          file, "too few cells in the crop have a value", "crop to where the raster has values");
    }
  }

  /** How many cells of the file have no value; a warped raster's own cells would be others. */
  private static int voids(GroundRaster ground, GroundFrame frame, BlockMeans blocks)
      throws IOException {
    int here = blocks.range().voids();
    return here == 0 ? 0 : ground.voidsOfFile(frame.ground()).orElse(here);
  }

  /**
   * Sigma in cells or blocks. A mean over n cells smooths as a Gaussian of variance (n * n - 1) /
   * 12 cells would, and that much is taken off.
   */
  private static double sigma(double sigmaMm, double cellMm, int block) {
    double cells = sigmaMm / cellMm;
    double variance = cells * cells - (block * (double) block - 1) / 12;
    return variance > 0 ? Math.sqrt(variance) / block : 0;
  }
}
