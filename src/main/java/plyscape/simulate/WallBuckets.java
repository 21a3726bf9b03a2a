package plyscape.simulate;

import java.util.Arrays;
import plyscape.grid.Box;

/**
 * The edges of a table in square buckets over the panel, so that a question looks only at what is
 * near. An edge stands in every bucket that its bounds touch; what sticks out of the panel stands
 * in the buckets at its rim.
 */
final class WallBuckets {

  private static final double SIDE_MM = 0.75;

  final int columns;

  /** Where the edges of each bucket begin in {@link #edges}; one more at the end. */
  final int[] start;

  final int[] edges;

  private final double minX;
  private final double minY;
  private final int rows;

  WallBuckets(EdgeTable table, Box panel) {
    minX = panel.minX();
    minY = panel.minY();
    columns = Math.max(1, (int) Math.ceil(panel.width() / SIDE_MM));
    rows = Math.max(1, (int) Math.ceil(panel.height() / SIDE_MM));
    start = new int[columns * rows + 1];
    for (int e = 0; e < table.count; e++) {
      visit(table, e, (bucket, edge) -> start[bucket + 1]++);
    }
    for (int b = 0; b < columns * rows; b++) {
      start[b + 1] += start[b];
    }
    edges = new int[start[columns * rows]];
    int[] next = Arrays.copyOf(start, columns * rows);
    for (int e = 0; e < table.count; e++) {
      visit(table, e, (bucket, edge) -> edges[next[bucket]++] = edge);
    }
  }

  private interface Visitor {
    void accept(int bucket, int edge);
  }

  private void visit(EdgeTable table, int e, Visitor visitor) {
    int toColumn = column(Math.max(table.x0[e], table.x1[e]));
    int toRow = row(Math.max(table.y0[e], table.y1[e]));
    for (int r = row(Math.min(table.y0[e], table.y1[e])); r <= toRow; r++) {
      for (int c = column(Math.min(table.x0[e], table.x1[e])); c <= toColumn; c++) {
        visitor.accept(r * columns + c, e);
      }
    }
  }

  /** Column of the bucket that holds x, the rim's for what lies outside. */
  int column(double x) {
    return Math.max(0, Math.min(columns - 1, (int) Math.floor((x - minX) / SIDE_MM)));
  }

  /** Row of the bucket that holds y, the rim's for what lies outside. */
  int row(double y) {
    return Math.max(0, Math.min(rows - 1, (int) Math.floor((y - minY) / SIDE_MM)));
  }
}
