package plyscape.region;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import plyscape.grid.Box;
import plyscape.planar.GridUnits;
import plyscape.planar.OutlineLayer;

/**
 * Traces the outlines of "at or above a break" over the carved area by marching squares: crossings
 * interpolated linearly on lattice edges, so no staircases; the two ambiguous cases are decided by
 * the bilinear value at the saddle (Nielson and Hamann 1991, "The asymptotic decider"), under which
 * contours of different breaks never cross. A value on a break is at or above it. Each outline has
 * the high ground on its left and is closed along the box's edge, so the outlines of break i wind
 * once around every place whose elevation isn't below it.
 */
final class ContourTracer {

  /** Rows that are looked through at a time. */
  private static final int STRIP_ROWS = 64;

  private final ContourLattice lattice;
  private final int columns;
  private final int rows;
  private final LatticeRim rim;
  private final double[] breaks;

  private final int[] boxX;
  private final int[] boxY;

  private ContourTracer(ContourLattice lattice, Box carved, List<Double> breaksM) {
    this.lattice = lattice;
    columns = lattice.columns();
    rows = lattice.rows();
    rim = new LatticeRim(columns, rows);
    breaks = breaksM.stream().mapToDouble(Double::doubleValue).toArray();
    boxX = new int[] {GridUnits.of(carved.minX()), GridUnits.of(carved.maxX())};
    boxY = new int[] {GridUnits.of(carved.minY()), GridUnits.of(carved.maxY())};
  }

  /**
   * The outlines of each break, in the order of the breaks.
   *
   * @param breaksM strictly falling
   */
  static List<OutlineLayer> trace(ContourLattice lattice, Box carved, List<Double> breaksM) {
    ContourTracer tracer = new ContourTracer(lattice, carved, breaksM);
    int[][] starts = tracer.starts();
    return IntStream.range(0, tracer.breaks.length)
        .parallel()
        .mapToObj(i -> tracer.new OneBreak(i, starts[i]).trace())
        .toList();
  }

  /**
   * For each break the cells whose south edge is crossed northwards (high west, low east), in scan
   * order.
   */
  private int[][] starts() {
    List<int[][]> strips =
        IntStream.range(0, (rows - 1 + STRIP_ROWS - 1) / STRIP_ROWS)
            .parallel()
            .mapToObj(this::stripStarts)
            .toList();
    int[][] out = new int[breaks.length][];
    for (int i = 0; i < out.length; i++) {
      int index = i;
      out[i] = strips.stream().flatMapToInt(strip -> Arrays.stream(strip[index])).toArray();
    }
    return out;
  }

  private int[][] stripStarts(int strip) {
    int[][] out = new int[breaks.length][64];
    int[] used = new int[breaks.length];
    double[] z = new double[columns];
    int end = Math.min((strip + 1) * STRIP_ROWS, rows - 1);
    for (int row = strip * STRIP_ROWS; row < end; row++) {
      lattice.row(row, z);
      for (int c = 0, west = level(z[0]); c < columns - 1; c++) {
        int east = level(z[c + 1]);
        for (int i = west; i < east; i++) {
          if (used[i] == out[i].length) {
            out[i] = Arrays.copyOf(out[i], used[i] * 2);
          }
          out[i][used[i]++] = row * columns + c;
        }
        west = east;
      }
    }
    for (int i = 0; i < out.length; i++) {
      out[i] = Arrays.copyOf(out[i], used[i]);
    }
    return out;
  }

  /** Breaks above an elevation: its index into the list of plies. */
  private int level(double z) {
    int i = 0;
    while (i < breaks.length && z < breaks[i]) {
      i++;
    }
    return i;
  }

  /**
   * The walk for one break. Cells are named by their south-west node; their edges are 0 S, 1 E, 2
   * N, 3 W.
   */
  private final class OneBreak {

    private final double value;
    private final int[] starts;

    /** Which of the starts a line has passed. */
    private final boolean[] seen;

    private final OutlineLayer out = new OutlineLayer();
    private int[] x = new int[256];
    private int[] y = new int[256];
    private int used;

    OneBreak(int index, int[] starts) {
      this.value = breaks[index];
      this.starts = starts;
      this.seen = new boolean[starts.length];
    }

    OutlineLayer trace() {
      traceOpen();
      for (int i = 0; i < starts.length; i++) {
        if (!seen[i]) {
          used = 0;
          walk(starts[i], 0);
          out.add(x, y, used, false);
        }
      }
      return out;
    }

    private boolean high(int node) {
      return lattice.z(node) >= value;
    }

    /**
     * Lines that enter and leave through the box's edge, and the stretches along it that close
     * them.
     */
    private void traceOpen() {
      int sides = rim.sides();
      // Counter-clockwise around the box: a line starts where high ground ends, and ends where it
      // begins again. The stretch before the first start belongs to the last end, so one lap and
      // the first start again.
      int[] startAt = new int[16];
      int found = 0;
      for (int s = 0; s < sides; s++) {
        int[] nodes = rim.side(s);
        if (high(nodes[0]) && !high(nodes[1])) {
          if (found == startAt.length) {
            startAt = Arrays.copyOf(startAt, found * 2);
          }
          startAt[found++] = s;
        }
      }
      if (found == 0) {
        if (high(0)) {
          out.add(
              new int[] {boxX[0], boxX[1], boxX[1], boxX[0], boxX[0]},
              new int[] {boxY[0], boxY[0], boxY[1], boxY[1], boxY[0]},
              5,
              true);
        }
        return;
      }
      for (int k = 0; k < found; k++) {
        used = 0;
        int[] nodes = rim.side(startAt[k]);
        int exitCell = walk(nodes[2], nodes[3]);
        int endSide = rim.of(exitCell >> 2, exitCell & 3);
        int endX = x[used - 1];
        int endY = y[used - 1];
        out.add(x, y, used, false);
        int next = Arrays.binarySearch(startAt, 0, found, endSide);
        next = -next - 1 == found ? 0 : -next - 1;
        alongBox(endSide, endX, endY, startAt[next]);
      }
    }

    /**
     * The stretch of the box's edge from the end of one line to the start of the next,
     * counter-clockwise.
     */
    private void alongBox(int fromSide, int fromX, int fromY, int toSide) {
      used = 0;
      push(fromX, fromY);
      int[] cornerAfter = rim.corners();
      int lap = cornerAfter[3];
      int to = toSide > fromSide ? toSide : toSide + lap;
      for (int k = 0; k < 8; k++) {
        int corner = cornerAfter[k & 3] + (k >= 4 ? lap : 0);
        if (corner > fromSide && corner <= to) {
          push(
              boxX[(k & 3) == 0 || (k & 3) == 1 ? 1 : 0],
              boxY[(k & 3) == 1 || (k & 3) == 2 ? 1 : 0]);
        }
      }
      int[] nodes = rim.side(toSide);
      pushCrossing(Math.min(nodes[0], nodes[1]), Math.max(nodes[0], nodes[1]));
      out.add(x, y, used, true);
    }

    /**
     * Follows the line that enters a cell through an edge until it closes or leaves the lattice;
     * cell * 4 + exit edge.
     */
    private int walk(int cell, int entry) {
      int startCell = cell;
      int startEntry = entry;
      pushEdge(cell, entry);
      while (true) {
        if (entry == 0) {
          seen[Arrays.binarySearch(starts, cell)] = true;
        }
        int exit = exit(cell, entry);
        pushEdge(cell, exit);
        int next = neighbour(cell, exit);
        if (next < 0) {
          return cell * 4 + exit;
        }
        cell = next;
        entry = (exit + 2) & 3;
        if (cell == startCell && entry == startEntry) {
          return cell * 4 + exit;
        }
      }
    }

    private int exit(int cell, int entry) {
      boolean aheadRight = high(corner(cell, (entry + 2) & 3));
      boolean aheadLeft = high(corner(cell, (entry + 3) & 3));
      if (aheadLeft == aheadRight) {
        return aheadLeft ? (entry + 1) & 3 : (entry + 3) & 3;
      }
      if (aheadLeft) {
        return (entry + 2) & 3;
      }
      return saddle(cell) >= value ? (entry + 1) & 3 : (entry + 3) & 3;
    }

    private double saddle(int cell) {
      double sw = lattice.z(cell);
      double se = lattice.z(cell + 1);
      double nw = lattice.z(cell + columns);
      double ne = lattice.z(cell + columns + 1);
      return (sw * ne - se * nw) / (sw + ne - se - nw);
    }

    private int neighbour(int cell, int edge) {
      int c = cell % columns;
      int r = cell / columns;
      return switch (edge) {
        case 0 -> r == 0 ? -1 : cell - columns;
        case 1 -> c == columns - 2 ? -1 : cell + 1;
        case 2 -> r == rows - 2 ? -1 : cell + columns;
        default -> c == 0 ? -1 : cell - 1;
      };
    }

    private void pushEdge(int cell, int edge) {
      switch (edge) {
        case 0 -> pushCrossing(cell, cell + 1);
        case 1 -> pushCrossing(cell + 1, cell + 1 + columns);
        case 2 -> pushCrossing(cell + columns, cell + columns + 1);
        default -> pushCrossing(cell, cell + columns);
      }
    }

    /**
     * The crossing between two nodes, always reckoned from the lower, so that both cells of an edge
     * get the same.
     */
    private void pushCrossing(int a, int b) {
      double za = lattice.z(a);
      double zb = lattice.z(b);
      double t = (value - za) / (zb - za);
      int ca = a % columns;
      int ra = a / columns;
      double px = lattice.xMm(ca);
      double py = lattice.yMm(ra);
      if (b - a == 1) {
        px += t * (lattice.xMm(ca + 1) - px);
      } else {
        py += t * (lattice.yMm(ra + 1) - py);
      }
      push(GridUnits.of(px), GridUnits.of(py));
    }

    private void push(int px, int py) {
      if (used > 0 && x[used - 1] == px && y[used - 1] == py) {
        return;
      }
      if (used == x.length) {
        x = Arrays.copyOf(x, used * 2);
        y = Arrays.copyOf(y, used * 2);
      }
      x[used] = px;
      y[used++] = py;
    }
  }

  private int corner(int cell, int corner) {
    return switch (corner) {
      case 0 -> cell;
      case 1 -> cell + 1;
      case 2 -> cell + columns + 1;
      default -> cell + columns;
    };
  }
}
