package plyscape.grid;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;

/**
 * Outlines of marked cells, exact, in raster positions: a ring around each patch of cells that
 * share sides, and one around each of its holes. Cells that only touch in a corner are apart.
 * Straight runs have no points between their ends, and no ring passes a point twice.
 */
public final class CellOutlines {

  private static final int[] STEP_X = {1, 0, -1, 0};
  private static final int[] STEP_Y = {0, 1, 0, -1};

  /** A patch: its outline and its holes, each x, y, x, y ..., without the first point again. */
  public record Patch(int[] shell, List<int[]> holes) {}

  private final boolean[] marked;
  private final int columns;
  private final int rows;

  /**
   * Of each lattice point the sides that start there, a bit a direction; a marked cell is on the
   * left of its sides.
   */
  private final byte[] sides;

  private final int[] patchOf;
  private final TreeMap<Integer, int[]> shells = new TreeMap<>();
  private final TreeMap<Integer, List<int[]>> holes = new TreeMap<>();

  /** Scratch: the place of a lattice point in the ring that is being walked, from 1. */
  private final int[] placeInRing;

  private CellOutlines(boolean[] marked, int columns, int rows) {
    this.marked = marked;
    this.columns = columns;
    this.rows = rows;
    sides = new byte[(columns + 1) * (rows + 1)];
    placeInRing = new int[sides.length];
    patchOf = new int[marked.length];
  }

  /** The patches of marked cells, row by row, in the order of their first cells. */
  public static List<Patch> of(boolean[] marked, int columns, int rows) {
    CellOutlines outlines = new CellOutlines(marked, columns, rows);
    outlines.label();
    outlines.markSides();
    for (int point = 0; point < outlines.sides.length; point++) {
      while (outlines.sides[point] != 0) {
        outlines.walk(point);
      }
    }
    List<Patch> out = new ArrayList<>();
    outlines.shells.forEach(
        (p, shell) -> out.add(new Patch(shell, outlines.holes.getOrDefault(p, List.of()))));
    return out;
  }

  private boolean at(int column, int row) {
    return column >= 0
        && row >= 0
        && column < columns
        && row < rows
        && marked[row * columns + column];
  }

  /** Numbers each patch by its first cell. */
  private void label() {
    Arrays.fill(patchOf, -1);
    int[] stack = new int[64];
    for (int first = 0; first < marked.length; first++) {
      if (!marked[first] || patchOf[first] >= 0) {
        continue;
      }
      int top = 0;
      stack[top++] = first;
      patchOf[first] = first;
      while (top > 0) {
        int cell = stack[--top];
        int column = cell % columns;
        int row = cell / columns;
        for (int d = 0; d < 4; d++) {
          int next = cell + STEP_X[d] + STEP_Y[d] * columns;
          if (at(column + STEP_X[d], row + STEP_Y[d]) && patchOf[next] < 0) {
            patchOf[next] = first;
            if (top == stack.length) {
              stack = Arrays.copyOf(stack, 2 * top);
            }
            stack[top++] = next;
          }
        }
      }
    }
  }

  private void markSides() {
    int wide = columns + 1;
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        if (marked[row * columns + column]) {
          int corner = row * wide + column;
          mark(corner, at(column, row - 1), 1);
          mark(corner + 1, at(column + 1, row), 2);
          mark(corner + wide + 1, at(column, row + 1), 4);
          mark(corner + wide, at(column - 1, row), 8);
        }
      }
    }
  }

  private void mark(int point, boolean inside, int side) {
    if (!inside) {
      sides[point] = (byte) (sides[point] | side);
    }
  }

  /**
   * Walks sides from a point until they are back there, and takes them away; loops are cut off
   * where a point returns.
   */
  private void walk(int start) {
    int wide = columns + 1;
    int[] ring = new int[64];
    int n = 0;
    int point = start;
    int direction = Integer.numberOfTrailingZeros(sides[start]);
    int patch = patchOf[leftCell(point, direction)];
    do {
      if (placeInRing[point] > 0) {
        int from = placeInRing[point] - 1;
        take(Arrays.copyOfRange(ring, from, n), patch);
        for (int i = from + 1; i < n; i++) {
          placeInRing[ring[i]] = 0;
        }
        n = from;
      }
      if (n == ring.length) {
        ring = Arrays.copyOf(ring, 2 * n);
      }
      ring[n++] = point;
      placeInRing[point] = n;
      sides[point] = (byte) (sides[point] & ~(1 << direction));
      point += STEP_X[direction] + STEP_Y[direction] * wide;
      // To the left first: where two cells touch in a corner, that stays with the same cell.
      int next = -1;
      for (int turn : new int[] {1, 0, 3}) {
        if (next < 0 && (sides[point] & 1 << (direction + turn) % 4) != 0) {
          next = (direction + turn) % 4;
        }
      }
      direction = next;
    } while (direction >= 0);
    // All sides are in closed walks, so the last one ends at a point that is still in the ring: the
    // start.
    take(Arrays.copyOf(ring, n), patch);
    for (int i = 0; i < n; i++) {
      placeInRing[ring[i]] = 0;
    }
  }

  private int leftCell(int point, int direction) {
    int column = point % (columns + 1) - (direction == 1 || direction == 2 ? 1 : 0);
    int row = point / (columns + 1) - (direction == 2 || direction == 3 ? 1 : 0);
    return row * columns + column;
  }

  private void take(int[] points, int patch) {
    int n = points.length;
    int wide = columns + 1;
    int[] xy = new int[2 * n];
    int used = 0;
    long area2 = 0;
    for (int i = 0; i < n; i++) {
      int before = points[(i + n - 1) % n];
      int here = points[i];
      int after = points[(i + 1) % n];
      int x = here % wide;
      int y = here / wide;
      area2 += (long) x * (after / wide) - (long) (after % wide) * y;
      if (here - before != after - here) {
        xy[used++] = x;
        xy[used++] = y;
      }
    }
    int[] ring = Arrays.copyOf(xy, used);
    if (area2 > 0) {
      shells.put(patch, ring);
    } else {
      holes.computeIfAbsent(patch, p -> new ArrayList<>()).add(ring);
    }
  }
}
