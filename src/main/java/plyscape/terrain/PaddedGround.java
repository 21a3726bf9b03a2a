package plyscape.terrain;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import plyscape.fault.Place;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.grid.Turn;
import plyscape.terrain.crs.GroundCrs;

/** A ground raster with void cells around it, as many as a crop that sticks out needs. */
final class PaddedGround implements GroundRaster {

  private final GroundRaster inner;
  private final int west;
  private final int south;
  private final CellFrame frame;

  private PaddedGround(GroundRaster inner, int west, int south, int east, int north) {
    this.inner = inner;
    this.west = west;
    this.south = south;
    CellFrame f = inner.frame();
    this.frame =
        new CellFrame(
            f.minX() - west * f.cellX(),
            f.minY() - south * f.cellY(),
            f.cellX(),
            f.cellY(),
            Math.addExact(f.columns(), Math.addExact(west, east)),
            Math.addExact(f.rows(), Math.addExact(south, north)));
  }

  /** The raster itself when the crop lies within it. */
  static GroundRaster around(GroundRaster inner, Box crop) {
    CellFrame f = inner.frame();
    Box box = f.box();
    int west = cells(box.minX() - crop.minX(), f.cellX());
    int south = cells(box.minY() - crop.minY(), f.cellY());
    int east = cells(crop.maxX() - box.maxX(), f.cellX());
    int north = cells(crop.maxY() - box.maxY(), f.cellY());
    return west + south + east + north == 0
        ? inner
        : new PaddedGround(inner, west, south, east, north);
  }

  private static int cells(double beyond, double cell) {
    return (int) Math.max(0, Math.ceil(beyond / cell - 1e-6));
  }

  @Override
  public CellFrame frame() {
    return frame;
  }

  @Override
  public GroundCrs crs() {
    return inner.crs();
  }

  @Override
  public GroundRaster turned(Turn turn, Place place) {
    return inner.turned(turn, place);
  }

  @Override
  public boolean covers(double x, double y) {
    return inner.covers(x, y);
  }

  /** What of a window lies on the raster, in its own cells; null for nothing. */
  private Window within(Window w) {
    int c0 = Math.max(w.column() - west, 0);
    int r0 = Math.max(w.row() - south, 0);
    int c1 = Math.min(w.column() - west + w.columns(), inner.frame().columns());
    int r1 = Math.min(w.row() - south + w.rows(), inner.frame().rows());
    return c0 < c1 && r0 < r1 ? new Window(c0, r0, c1 - c0, r1 - r0) : null;
  }

  /** The raster's own strips, and what lies south and north of it in parts as high. */
  @Override
  public List<Window> strips(Window w) {
    Window part = within(w);
    List<Window> own = part == null ? List.of() : inner.strips(part);
    int high = own.stream().mapToInt(Window::rows).max().orElse(64);
    List<Window> out = new ArrayList<>();
    int first = part == null ? w.row() + w.rows() : part.row() + south;
    outer(w, w.row(), first, high, out);
    for (Window strip : own) {
      out.add(new Window(w.column(), strip.row() + south, w.columns(), strip.rows()));
    }
    int last = part == null ? first : first + part.rows();
    outer(w, last, w.row() + w.rows(), high, out);
    return out;
  }

  private static void outer(Window w, int from, int to, int high, List<Window> out) {
    for (int row = from; row < to; row += high) {
      out.add(new Window(w.column(), row, w.columns(), Math.min(high, to - row)));
    }
  }

  @Override
  public OptionalInt voidsOfFile(Box ground) throws IOException {
    return inner.voidsOfFile(ground);
  }

  @Override
  public double[] read(Window w) throws IOException {
    double[] out = new double[Math.multiplyExact(w.columns(), w.rows())];
    Arrays.fill(out, Double.NaN);
    Window part = within(w);
    if (part != null) {
      double[] values = inner.read(part);
      for (int row = 0; row < part.rows(); row++) {
        int to =
            (part.row() + south - w.row() + row) * w.columns() + part.column() + west - w.column();
        System.arraycopy(values, row * part.columns(), out, to, part.columns());
      }
    }
    return out;
  }
}
