package plyscape.terrain;

/** A raster that is held in memory as a whole: what readers of small or unindexed formats give. */
record HeldRaster(String name, int columns, int rows, Affine toGround, GroundCrs crs, double[] values)
    implements Raster {

  /** Checks the count. */
  HeldRaster {
    if (values.length != Math.multiplyExact(columns, rows)) {
      throw new IllegalArgumentException(values.length + " values for " + columns + " x " + rows);
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
