package plyscape.toolpath.lattice;

import plyscape.grid.Box;

/**
 * The planner's square lattice of nodes over the carved area, with a margin of two nodes around it,
 * panel mm. Node (i, j) stands at (minX + i h, minY + j h) and has the index j * columns + i.
 * Immutable.
 *
 * @param minX X of column 0, mm
 * @param minY Y of row 0, mm
 * @param stepMm distance of neighbours
 * @param columns nodes in X
 * @param rows nodes in Y
 */
public record Lattice(double minX, double minY, double stepMm, int columns, int rows) {

  /**
   * More nodes than this would cost more memory and time than the finer steps are worth; walls are
   * exact anyway.
   */
  private static final double MOST_NODES = 6e6;

  /**
   * The lattice for a carved area and the smallest cutter: a sixth of its radius, so that narrow
   * places are seen, but not finer than 0.06 nor coarser than 0.15 mm unless the panel is very
   * large.
   */
  public static Lattice over(Box carved, double smallestRadiusMm) {
    double step = Math.max(0.06, Math.min(0.15, smallestRadiusMm / 6));
    step = Math.max(step, Math.sqrt(carved.area() / MOST_NODES));
    int columns = (int) Math.ceil(carved.width() / step) + 5;
    int rows = (int) Math.ceil(carved.height() / step) + 5;
    return new Lattice(carved.minX() - 2 * step, carved.minY() - 2 * step, step, columns, rows);
  }

  /** Nodes in all. */
  public int size() {
    return Math.multiplyExact(columns, rows);
  }

  /** X of a column, mm. */
  public double x(int column) {
    return minX + column * stepMm;
  }

  /** Y of a row, mm. */
  public double y(int row) {
    return minY + row * stepMm;
  }

  /** Area that one node stands for, mm2. */
  public double nodeAreaMm2() {
    return stepMm * stepMm;
  }

  /** Index of the node nearest to a point; the point must lie over the lattice. */
  public int nearest(double x, double y) {
    int i = (int) ((x - minX) / stepMm + 0.5);
    int j = (int) ((y - minY) / stepMm + 0.5);
    i = i < 0 ? 0 : i < columns ? i : columns - 1;
    j = j < 0 ? 0 : j < rows ? j : rows - 1;
    return j * columns + i;
  }

  /** Bilinear value of a field at a point; outside the lattice that of the nearest edge point. */
  public double bilinear(float[] field, double x, double y) {
    double u = (x - minX) / stepMm;
    double v = (y - minY) / stepMm;
    u = u < 0 ? 0 : u < columns - 1 ? u : columns - 1.000001;
    v = v < 0 ? 0 : v < rows - 1 ? v : rows - 1.000001;
    int i = (int) u;
    int j = (int) v;
    double fx = u - i;
    double fy = v - j;
    int k = j * columns + i;
    double south = field[k] + fx * (field[k + 1] - field[k]);
    double north = field[k + columns] + fx * (field[k + columns + 1] - field[k + columns]);
    return south + fy * (north - south);
  }
}
