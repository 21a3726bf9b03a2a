package plyscape.terrain;

import java.io.IOException;
import java.nio.file.Path;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.ClassGrid;
import plyscape.grid.GroundFrame;
import plyscape.terrain.crs.FrameMaps;
import plyscape.terrain.raster.Affine;
import plyscape.terrain.raster.Raster;
import plyscape.terrain.raster.RasterLimits;

/**
 * Reads rasters of classes, such as land cover: the cells on the carved ground, in the raster's own
 * plane and neither resampled nor smoothed, as a mean of classes means nothing. Palettes are read
 * as the numbers of their colours.
 */
public final class ClassReader {

  /**
   * Of larger windows every second, third ... cell is taken: then cells are far finer than the
   * panel can show.
   */
  private static final long MOST_CELLS = 4_000_000;

  private static final int EDGE_STEPS = 64;

  private ClassReader() {}

  /**
   * Reads what lies on the carved ground, and a cell around it.
   *
   * @throws plyscape.fault.InputFault when the file isn't a raster of one band that can be read
   */
  public static ClassGrid read(Path file, GroundFrame frame, Warnings warnings) {
    try (Raster raster = RasterOpener.openClasses(file, warnings)) {
      int[] w = window(raster, frame, Place.file(file.toString()));
      int columns = w[2] - w[0];
      int rows = w[3] - w[1];
      Affine a = raster.toGround();
      if (columns <= 0 || rows <= 0) {
        return grid(file, raster, a, 0, 0, new double[0]);
      }
      int step = (int) Math.ceil(Math.sqrt((double) columns * rows / MOST_CELLS));
      if (step > 1) {
        warnings.add(
            "classes-thinned",
            "only one in "
                + step
                + " x "
                + step
                + " cells is taken, as they are finer than the panel shows",
            raster.name());
      }
      int outColumns = (columns + step - 1) / step;
      int outRows = (rows + step - 1) / step;
      double[] values = values(raster, w, step, outColumns, outRows);
      Affine part = a.shifted(w[0], w[1]);
      Affine thinned =
          new Affine(
              part.x0(),
              step * a.xCol(),
              step * a.xRow(),
              part.y0(),
              step * a.yCol(),
              step * a.yRow());
      return grid(file, raster, thinned, outColumns, outRows, values);
    } catch (IOException e) {
      throw RasterLimits.unreadable(file, e);
    }
  }

  private static ClassGrid grid(
      Path file, Raster raster, Affine a, int columns, int rows, double[] values) {
    double[] toGround = {a.x0(), a.xCol(), a.xRow(), a.y0(), a.yCol(), a.yRow()};
    return new ClassGrid(file.toString(), raster.crs().id(), toGround, columns, rows, values);
  }

  /** The middle cell of each block of step by step cells. */
  private static double[] values(Raster raster, int[] w, int step, int outColumns, int outRows)
      throws IOException {
    double[] out = new double[outColumns * outRows];
    int columns = w[2] - w[0];
    int each = Math.max(1, raster.rowsAtOnce());
    for (int top = w[1]; top < w[3]; top = Math.min((top / each + 1) * each, w[3])) {
      int high = Math.min((top / each + 1) * each, w[3]) - top;
      double[] strip = raster.read(w[0], top, columns, high);
      for (int r = 0; r < outRows; r++) {
        int row = Math.min(w[1] + r * step + step / 2, w[3] - 1) - top;
        for (int c = 0; row >= 0 && row < high && c < outColumns; c++) {
          out[r * outColumns + c] =
              strip[row * columns + Math.min(c * step + step / 2, columns - 1)];
        }
      }
    }
    return out;
  }

  /** First column, first row, and the ones behind the last, of the cells on the carved ground. */
  private static int[] window(Raster raster, GroundFrame frame, Place place) {
    Box box = frame.ground();
    double[] xy = new double[8 * (EDGE_STEPS + 1)];
    for (int i = 0; i <= EDGE_STEPS; i++) {
      double x = box.minX() + box.width() * i / EDGE_STEPS;
      double y = box.minY() + box.height() * i / EDGE_STEPS;
      double[] points = {x, box.minY(), x, box.maxY(), box.minX(), y, box.maxX(), y};
      System.arraycopy(points, 0, xy, 8 * i, 8);
    }
    boolean known = !frame.crs().isEmpty() && !raster.crs().id().isEmpty();
    FrameMaps.from(frame, known ? raster.crs().id() : frame.crs(), place).map(xy, xy.length / 2);
    Affine cells = raster.toGround().inverse();
    double[] low = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
    double[] high = {Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};
    for (int i = 0; i < xy.length; i += 2) {
      if (Double.isFinite(xy[i] + xy[i + 1])) {
        double[] at = {cells.x(xy[i], xy[i + 1]), cells.y(xy[i], xy[i + 1])};
        for (int k = 0; k < 2; k++) {
          low[k] = Math.min(low[k], at[k]);
          high[k] = Math.max(high[k], at[k]);
        }
      }
    }
    return new int[] {
      (int) Math.max(0, Math.floor(low[0]) - 1),
      (int) Math.max(0, Math.floor(low[1]) - 1),
      (int) Math.min(raster.columns(), Math.ceil(high[0]) + 1),
      (int) Math.min(raster.rows(), Math.ceil(high[1]) + 1)
    };
  }
}
