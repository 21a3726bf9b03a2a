package plyscape.region;

import java.util.List;
import org.locationtech.jts.geom.Envelope;
import plyscape.planar.Chain;

/** A pocket on a raster: which cells' centres lie in it, and through which cells a wall passes. */
final class WallRaster {

  final double cell;
  final Envelope box = new Envelope();
  final int columns;
  final int rows;
  final boolean[] inside;
  final boolean[] wall;

  /**
   * Draws the walls.
   *
   * @param cellUnits side of a cell, grid units; it grows when there would be more cells than so
   *     many
   * @param mostCells about
   */
  WallRaster(List<Chain> walls, double cellUnits, double mostCells) {
    for (Chain chain : walls) {
      for (int i = 0; i < chain.x.length; i++) {
        box.expandToInclude(chain.x[i], chain.y[i]);
      }
    }
    cell = Math.max(cellUnits, Math.sqrt(box.getWidth() * box.getHeight() / mostCells));
    // A cell of margin all around, which is outside.
    columns = (int) (box.getWidth() / cell) + 3;
    rows = (int) (box.getHeight() / cell) + 3;
    inside = new boolean[columns * rows];
    wall = new boolean[columns * rows];
    for (Chain chain : walls) {
      for (int i = 0; i + 1 < chain.x.length; i++) {
        toggle(chain.x[i], chain.y[i], chain.x[i + 1], chain.y[i + 1]);
        mark(chain.x[i], chain.y[i], chain.x[i + 1], chain.y[i + 1]);
      }
    }
    for (int r = 0; r < rows; r++) {
      for (int c = 1; c < columns; c++) {
        inside[r * columns + c] ^= inside[r * columns + c - 1];
      }
    }
  }

  /** The walls of the pocket of all regions of a ply and deeper. */
  static List<Chain> walls(RegionMap map, int ply) {
    return map.chains().stream()
        .filter(c -> map.ply(c.left()) >= ply != map.ply(c.right()) >= ply)
        .toList();
  }

  /** Cells that a tool's centre can't be in: outside, or a wall passes. */
  boolean[] blocked() {
    boolean[] blocked = new boolean[inside.length];
    for (int i = 0; i < blocked.length; i++) {
      blocked[i] = wall[i] || !inside[i];
    }
    return blocked;
  }

  /** Grid X of the western side of a column. */
  double x(int column) {
    return box.getMinX() + (column - 1) * cell;
  }

  /** Grid Y of the southern side of a row. */
  double y(int row) {
    return box.getMinY() + (row - 1) * cell;
  }

  private double column(double x) {
    return (x - box.getMinX()) / cell + 1;
  }

  private double row(double y) {
    return (y - box.getMinY()) / cell + 1;
  }

  /**
   * Turns inside to outside and back in the first cell of each row whose centre lies east of the
   * segment.
   */
  private void toggle(int x0, int y0, int x1, int y1) {
    if (y0 == y1) {
      return;
    }
    double low = row(Math.min(y0, y1));
    double high = row(Math.max(y0, y1));
    for (int r = (int) Math.ceil(low - 0.5); r + 0.5 < high; r++) {
      double y = box.getMinY() + (r + 0.5 - 1) * cell;
      double x = x0 + (y - y0) * ((double) x1 - x0) / ((double) y1 - y0);
      inside[r * columns + (int) Math.ceil(column(x) - 0.5)] ^= true;
    }
  }

  private void mark(int x0, int y0, int x1, int y1) {
    double u = column(x0);
    double v = row(y0);
    double du = column(x1) - u;
    double dv = row(y1) - v;
    int steps = (int) Math.ceil(2 * Math.hypot(du, dv)) + 1;
    for (int k = 0; k <= steps; k++) {
      wall[(int) (v + dv * k / steps) * columns + (int) (u + du * k / steps)] = true;
    }
  }
}
