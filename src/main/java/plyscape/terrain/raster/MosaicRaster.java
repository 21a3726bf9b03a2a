package plyscape.terrain.raster;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.text.Template;

/**
 * Several rasters of one CRS as one, on the cells of the first, made as large as all need. Where
 * they overlap, the first that has a value gives it; where none has, the cell is void. Rasters
 * whose cells don't fall on the first one's are sampled at the cell centres (bilinear).
 */
public final class MosaicRaster implements Raster {

  /**
   * Cells this near to each other, in cells, are taken as the same: SRTM tiles' corners are sums of
   * rounded parts.
   */
  private static final double SAME_CELL = 1e-3;

  private final List<? extends Raster> parts;
  private final RasterHead head;

  public MosaicRaster(List<? extends Raster> parts) {
    this.parts = List.copyOf(parts);
    Raster first = parts.get(0);
    double[] cells = cells(first);
    double wide = cells[2] - cells[0];
    double high = cells[3] - cells[1];
    if (wide * high > Integer.MAX_VALUE - 8.0) {
      throw new InputFault(
          Place.file(first.name()),
          "the mosaic would have over two thousand million cells",
          "leave far-off rasters out");
    }
    this.head =
        new RasterHead(
            first.name() + " and " + (parts.size() - 1) + " more",
            (int) wide,
            (int) high,
            first.toGround().shifted(cells[0], cells[1]),
            RasterHead.Origin.FILE,
            first.crs());
  }

  /** First column and row that the parts take, and the ends of both, in cells of the first part. */
  private double[] cells(Raster first) {
    Affine toCells = first.toGround().inverse();
    double[] out = {0, 0, first.columns(), first.rows()};
    for (Raster part : parts) {
      if (!part.crs().id().equals(first.crs().id())) {
        throw new InputFault(
            Place.file(part.name()),
            Template.fill(
                "its CRS (%s) isn't that of %s (%s)", label(part), first.name(), label(first)),
            "bring the rasters of a mosaic to one CRS");
      }
      Affine a = part.toGround();
      for (int corner = 0; corner < 4; corner++) {
        double col = (corner & 1) * part.columns();
        double row = (corner >> 1) * part.rows();
        double u = toCells.x(a.x(col, row), a.y(col, row));
        double v = toCells.y(a.x(col, row), a.y(col, row));
        out[0] = Math.min(out[0], Math.floor(u + SAME_CELL));
        out[1] = Math.min(out[1], Math.floor(v + SAME_CELL));
        out[2] = Math.max(out[2], Math.ceil(u - SAME_CELL));
        out[3] = Math.max(out[3], Math.ceil(v - SAME_CELL));
      }
    }
    return out;
  }

  private static String label(Raster raster) {
    String id = raster.crs().id();
    return id.isEmpty()
        ? "none"
        : id.contains("[") ? id.substring(0, Math.min(40, id.length())) + "..." : id;
  }

  @Override
  public RasterHead head() {
    return head;
  }

  @Override
  public boolean unitStated() {
    return parts.stream().allMatch(Raster::unitStated);
  }

  @Override
  public int rowsAtOnce() {
    return 256;
  }

  @Override
  public double[] read(int column, int row, int wide, int high) throws IOException {
    double[] out = new double[Math.multiplyExact(wide, high)];
    Arrays.fill(out, Double.NaN);
    for (Raster part : parts) {
      put(part, column, row, wide, high, out);
    }
    return out;
  }

  /**
   * Column and row of the part's first cell among the mosaic's, when the cells are the same; else
   * null.
   */
  private int[] offset(Raster part) {
    Affine toCells = toGround().inverse();
    Affine a = part.toGround();
    int[] out = new int[2];
    for (int corner = 0; corner < 4; corner++) {
      double col = (corner & 1) * part.columns();
      double row = (corner >> 1) * part.rows();
      double u = toCells.x(a.x(col, row), a.y(col, row)) - col;
      double v = toCells.y(a.x(col, row), a.y(col, row)) - row;
      if (corner == 0) {
        out[0] = (int) Math.rint(u);
        out[1] = (int) Math.rint(v);
      }
      if (Math.abs(u - out[0]) > SAME_CELL || Math.abs(v - out[1]) > SAME_CELL) {
        return null;
      }
    }
    return out;
  }

  private void put(Raster part, int column, int row, int wide, int high, double[] out)
      throws IOException {
    int[] at = offset(part);
    if (at == null) {
      sample(part, column, row, wide, out);
      return;
    }
    int c0 = Math.max(column, at[0]);
    int c1 = Math.min(column + wide, at[0] + part.columns());
    int r0 = Math.max(row, at[1]);
    int r1 = Math.min(row + high, at[1] + part.rows());
    if (c0 >= c1 || r0 >= r1) {
      return;
    }
    double[] values = part.read(c0 - at[0], r0 - at[1], c1 - c0, r1 - r0);
    for (int r = r0; r < r1; r++) {
      for (int c = c0; c < c1; c++) {
        int i = (r - row) * wide + c - column;
        if (Double.isNaN(out[i])) {
          out[i] = values[(r - r0) * (c1 - c0) + c - c0];
        }
      }
    }
  }

  private void sample(Raster part, int column, int row, int wide, double[] out) throws IOException {
    Affine toCells = part.toGround().inverse();
    double[] at = new double[2 * out.length];
    for (int i = 0; i < out.length; i++) {
      double col = column + i % wide + 0.5;
      double r = row + i / wide + 0.5;
      double x = toGround().x(col, r);
      double y = toGround().y(col, r);
      at[2 * i] = toCells.x(x, y);
      at[2 * i + 1] = toCells.y(x, y);
      if (at[2 * i] < 0
          || at[2 * i] > part.columns()
          || at[2 * i + 1] < 0
          || at[2 * i + 1] > part.rows()) {
        at[2 * i] = Double.NaN;
      }
    }
    double[] values = BilinearSampler.sample(part, at);
    for (int i = 0; i < out.length; i++) {
      if (Double.isNaN(out[i])) {
        out[i] = values[i];
      }
    }
  }

  @Override
  public void close() throws IOException {
    for (Raster part : parts) {
      part.close();
    }
  }
}
