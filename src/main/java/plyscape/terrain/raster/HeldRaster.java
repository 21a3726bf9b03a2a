package plyscape.terrain.raster;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import plyscape.fault.InputFault;
import plyscape.fault.JobFault;
import plyscape.fault.Place;
import plyscape.text.Template;

/** A raster that is held in memory as a whole: what readers of small or unindexed formats give. */
public record HeldRaster(RasterHead head, double[] values) implements Raster {

  /** Checks the count. */
  public HeldRaster {
    if (values.length != Math.multiplyExact(head.columns(), head.rows())) {
      throw new IllegalArgumentException(values.length + " values for " + head);
    }
  }

  /**
   * A fault when so many cells are over the limit or can't be held at once.
   *
   * @param cellBytes memory that a cell takes while it is read
   */
  public static void checkRoom(Path file, long columns, long rows, int cellBytes) {
    RasterLimits.requireSize(Place.file(file.toString()), columns, rows);
    if (columns * rows * cellBytes > Runtime.getRuntime().maxMemory() / 5 * 3) {
      throw new JobFault(
          Template.fill(
              "%s has %s x %s cells, too many for a format that is read as a whole",
              file, columns, rows),
          "convert it to a tiled GeoTIFF, of which only the crop is read, or give Java more"
              + " memory");
    }
  }

  /** A fault when the file is too short for what its head says, before memory is taken for that. */
  public static void checkLength(Path file, long columns, long rows, double leastBytes)
      throws IOException {
    long size = Files.size(file);
    if (size < leastBytes) {
      throw new InputFault(
          Place.file(file.toString()),
          "its head says " + columns + " x " + rows + " cells, which " + size + " bytes can't hold",
          "check that the file is whole");
    }
  }

  @Override
  public double[] read(int column, int row, int wide, int high) {
    double[] out = new double[Math.multiplyExact(wide, high)];
    for (int r = 0; r < high; r++) {
      System.arraycopy(values, (row + r) * columns() + column, out, r * wide, wide);
    }
    return out;
  }

  @Override
  public void close() {}
}
