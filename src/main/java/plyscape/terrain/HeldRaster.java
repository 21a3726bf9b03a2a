package plyscape.terrain;

import java.nio.file.Path;
import plyscape.fault.JobFault;

/** A raster that is held in memory as a whole: what readers of small or unindexed formats give. */
record HeldRaster(
    String name,
    int columns,
    int rows,
    Affine toGround,
    boolean placed,
    GroundCrs crs,
    double[] values)
    implements Raster {

  /** Checks the count. */
  HeldRaster {
    if (values.length != Math.multiplyExact(columns, rows)) {
      throw new IllegalArgumentException(values.length + " values for " + columns + " x " + rows);
    }
  }

  /** A fault when so many cells can't be held at once. */
  static void checkRoom(Path file, long columns, long rows) {
    long cells = columns * rows;
    if (cells > Integer.MAX_VALUE - 8
        || cells * Double.BYTES > Runtime.getRuntime().maxMemory() / 5 * 3) {
      throw new JobFault(
          file
              + " has "
              + columns
              + " x "
              + rows
              + " cells, too many for a format that is read as a whole",
          "convert it to a tiled GeoTIFF, of which only the crop is read, or give Java more memory");
    }
  }

  @Override
  public double[] read(int column, int row, int wide, int high) {
    double[] out = new double[Math.multiplyExact(wide, high)];
    for (int r = 0; r < high; r++) {
      System.arraycopy(values, (row + r) * columns + column, out, r * wide, wide);
    }
    return out;
  }

  @Override
  public void close() {}
}
