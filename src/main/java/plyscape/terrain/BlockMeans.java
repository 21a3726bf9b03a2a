package plyscape.terrain;

import java.io.IOException;
import java.util.Arrays;
import plyscape.fault.JobFault;
import plyscape.terrain.GroundRaster.Window;

/**
 * Cells of a window read strip by strip into means of blocks, so that no more than a strip of a
 * large raster is held at once. A block is void when fewer than half of its cells have a value.
 *
 * @param columns blocks across
 * @param rows blocks along
 * @param values means, row by row from the south; NaN for void
 * @param range what the cells within the crop hold, before they went into means
 */
record BlockMeans(int columns, int rows, double[] values, CropWindow.Range range) {

  private static final int MOST_CELLS_AT_ONCE = 1 << 26;

  /**
   * Reads a window.
   *
   * @param across cells that go to a block in X; blocks count from the window's west edge
   * @param along the same in Y, from the south edge
   * @param core cells that count for the range
   */
  static BlockMeans read(GroundRaster ground, Window window, int across, int along, CropWindow core)
      throws IOException {
    int columns = (window.columns() + across - 1) / across;
    int rows = (window.rows() + along - 1) / along;
    if (window.columns() > MOST_CELLS_AT_ONCE) {
      throw new JobFault(
          "a row of " + window.columns() + " cells is more than can be held", "crop the terrain");
    }
    if (across == 1 && along == 1) {
      return whole(ground, window, core);
    }
    Sums blocks = Sums.of(Math.multiplyExact(columns, rows), across);
    CropWindow.Range range = CropWindow.Range.NONE;
    try (StripReader strips = new StripReader(ground, window)) {
      while (strips.hasNext()) {
        StripReader.Strip strip = strips.next();
        double[] values = strip.values();
        int from = strip.window().row() - window.row();
        for (int row = 0; row < strip.window().rows(); row++) {
          int to = (from + row) / along * columns;
          blocks.add(values, row * window.columns(), window.columns(), to);
        }
        range = range.and(core.range(values, from, strip.window().rows()));
      }
    }
    double[] sums = blocks.sums();
    for (int i = 0; i < sums.length; i++) {
      int wide = Math.min(across, window.columns() - i % columns * across);
      int high = Math.min(along, window.rows() - i / columns * along);
      sums[i] = 2 * blocks.counts()[i] < wide * high ? Double.NaN : sums[i] / blocks.counts()[i];
    }
    return new BlockMeans(columns, rows, sums, range);
  }

  private static BlockMeans whole(GroundRaster ground, Window window, CropWindow core)
      throws IOException {
    double[] all = new double[Math.multiplyExact(window.columns(), window.rows())];
    try (StripReader strips = new StripReader(ground, window)) {
      while (strips.hasNext()) {
        StripReader.Strip strip = strips.next();
        int to = (strip.window().row() - window.row()) * window.columns();
        System.arraycopy(strip.values(), 0, all, to, strip.values().length);
      }
    }
    return new BlockMeans(window.columns(), window.rows(), all, core.range(all, 0, window.rows()));
  }

  /** Sums of the cells with a value in blocks so many cells wide, and how many there are. */
  private record Sums(double[] sums, int[] counts, int across) {

    static Sums of(int blocks, int across) {
      return new Sums(new double[blocks], new int[blocks], across);
    }

    /** Cells of a row, from the western edge of a block on. */
    void add(double[] values, int from, int count, int firstBlock) {
      for (int c = 0, block = firstBlock; c < count; block++) {
        double sum = 0;
        int valid = 0;
        for (int end = Math.min(c + across, count); c < end; c++) {
          double value = values[from + c];
          if (!Double.isNaN(value)) {
            sum += value;
            valid++;
          }
        }
        sums[block] += sum;
        counts[block] += valid;
      }
    }
  }

  /** Which blocks are void. */
  boolean[] voids() {
    boolean[] out = new boolean[values.length];
    for (int i = 0; i < out.length; i++) {
      out[i] = Double.isNaN(values[i]);
    }
    return out;
  }

  @Override
  public String toString() {
    return "BlockMeans[" + columns + " x " + rows + ", " + Arrays.hashCode(values) + "]";
  }
}
