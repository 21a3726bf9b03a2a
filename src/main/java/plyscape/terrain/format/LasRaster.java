package plyscape.terrain.format;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.terrain.crs.GroundCrs;
import plyscape.terrain.crs.ProjectionFile;
import plyscape.terrain.raster.Affine;
import plyscape.terrain.raster.HeldRaster;
import plyscape.terrain.raster.Raster;
import plyscape.terrain.raster.RasterHead;
import plyscape.terrain.raster.RasterLimits;
import plyscape.text.Numbers;

/**
 * Makes a raster of the ground points (class 2) of a LAS point cloud: the mean of those in a cell,
 * cells without one being void. The cell's size is reported: the job's, or one that holds about
 * four points on the average.
 */
public final class LasRaster {

  /** Points that a cell holds on the average, so that few cells stay empty. */
  private static final double POINTS_A_CELL = 4;

  private LasRaster() {}

  /**
   * Reads a whole file.
   *
   * @param cellM size of the cells, in the cloud's units, or null for what fits
   */
  public static Raster open(Path file, Double cellM, Warnings warnings) throws IOException {
    LasPoints points = LasPoints.read(file);
    GroundCrs crs = points.crs();
    if (crs.kind() == GroundCrs.Kind.NONE) {
      crs = ProjectionFile.beside(file, warnings);
    }
    double cell = cellM != null ? cellM / crs.metresPerUnit() : fitting(points);
    Grid grid = new Grid(file, points, cell);
    double[] values = grid.means(points);
    int empty = (int) Arrays.stream(values).filter(Double::isNaN).count();
    warnings.add(
        "points-gridded",
        String.format(
            Locale.ROOT,
            "%d ground points of %d were gathered in cells of %s m by their mean (terrain.cell"
                + " sets another size); %d of %d cells have none",
            points.count(),
            points.all(),
            Numbers.trimmed(cell * crs.metresPerUnit(), 6),
            empty,
            values.length),
        file.getFileName().toString());
    return new HeldRaster(
        new RasterHead(
            file.getFileName().toString(),
            grid.columns,
            grid.rows,
            Affine.northUp(grid.west, grid.north, cell, cell),
            RasterHead.Origin.POINTS,
            crs),
        values);
  }

  /** A round size (1, 2 or 5 times a power of ten) that holds enough points. */
  private static double fitting(LasPoints points) {
    double wide = Math.max(points.maxX() - points.minX(), 1e-3);
    double high = Math.max(points.maxY() - points.minY(), 1e-3);
    double side = Math.sqrt(POINTS_A_CELL * wide * high / points.count());
    double ten = Math.pow(10, Math.floor(Math.log10(side)));
    for (double step : new double[] {1, 2, 5}) {
      if (step * ten >= side * 0.999) {
        return step * ten;
      }
    }
    return 10 * ten;
  }

  /** Cells on whole multiples of their size, so that neighbouring clouds share them. */
  private static final class Grid {
    final double west;
    final double north;
    final double cell;
    final int columns;
    final int rows;

    Grid(Path file, LasPoints points, double cell) {
      this.cell = cell;
      west = Math.floor(points.minX() / cell) * cell;
      north = Math.ceil(points.maxY() / cell) * cell;
      double wide = Math.floor((points.maxX() - west) / cell) + 1;
      double high = Math.floor((north - points.minY()) / cell) + 1;
      if (wide > 1e9 || high > 1e9) {
        throw new InputFault(
            Place.file(file.toString()),
            "its points span " + wide + " x " + high + " cells",
            "set terrain.cell to a larger size");
      }
      columns = (int) wide;
      rows = (int) high;
      RasterLimits.requireSize(Place.file(file.toString()), columns, rows);
      HeldRaster.checkRoom(file, columns, rows, Double.BYTES + Integer.BYTES);
    }

    double[] means(LasPoints points) {
      double[] sums = new double[columns * rows];
      int[] counts = new int[sums.length];
      for (int i = 0; i < points.count(); i++) {
        int column = (int) Math.min((points.x(i) - west) / cell, columns - 1);
        int row = (int) Math.min((north - points.y(i)) / cell, rows - 1);
        sums[row * columns + column] += points.z(i);
        counts[row * columns + column]++;
      }
      for (int i = 0; i < sums.length; i++) {
        sums[i] = counts[i] == 0 ? Double.NaN : sums[i] / counts[i];
      }
      return sums;
    }
  }
}
