package plyscape.simulate;

import java.util.Arrays;
import java.util.Comparator;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;
import plyscape.grid.CellFrame;

/**
 * Which cells of a pocket a round cutter can reach without its edge crossing the pocket's wall: the
 * opening of the pocket by the cutter's disk, asked cell by cell.
 *
 * <p>The cutter's centre is tried at cell centres, with exact distances to the walls, and where
 * none near fits, at the roomiest place in each cell. So "reachable" is certain, and "not
 * reachable" may be wrong within half a cell's diagonal of the border between the two.
 */
final class PocketReach {

  /**
   * A cutter fits when its edge crosses the wall by no more than this: outlines are rounded to
   * 0.001 mm.
   */
  private static final double FIT_MM = 0.001;

  private static final byte UNKNOWN = 0;
  private static final byte FITS = 1;
  private static final byte DOUBTFUL = 2;
  private static final byte NOT = 3;

  private static final double[][] WAYS = {
    {1, 0}, {0.7, 0.7}, {0, 1}, {-0.7, 0.7}, {-1, 0}, {-0.7, -0.7}, {0, -1}, {0.7, -0.7},
  };

  private final CellFrame frame;
  private final short[] targetOf;
  private final double[] depths;
  private final Walls walls;
  private final byte[] state;
  private final Map<Integer, double[]> between = new ConcurrentHashMap<>();
  private double level;
  private double radius;
  private int[] offsets = new int[0];

  /**
   * Over a frame.
   *
   * @param targetOf target index of each cell
   * @param depths of the targets
   */
  PocketReach(CellFrame frame, short[] targetOf, double[] depths, Walls walls) {
    this.frame = frame;
    this.targetOf = targetOf;
    this.depths = depths;
    this.walls = walls;
    this.state = new byte[frame.size()];
  }

  /** Turns to the pocket of all targets at least this deep, and a cutter. */
  void turnTo(double levelMm, double radiusMm) {
    Arrays.fill(state, UNKNOWN);
    between.clear();
    level = levelMm;
    radius = radiusMm;
    int nx = (int) Math.floor(radius / frame.cellX());
    int ny = (int) Math.floor(radius / frame.cellY());
    // Nearest first: most cells are reached from their own neighbourhood.
    offsets =
        IntStream.rangeClosed(-ny, ny)
            .boxed()
            .flatMap(dy -> IntStream.rangeClosed(-nx, nx).mapToObj(dx -> new int[] {dx, dy}))
            .filter(o -> Math.hypot(o[0] * frame.cellX(), o[1] * frame.cellY()) <= radius + 1e-9)
            .sorted(
                Comparator.comparingDouble(
                    o -> Math.hypot(o[0] * frame.cellX(), o[1] * frame.cellY())))
            .flatMapToInt(Arrays::stream)
            .toArray();
  }

  /**
   * Whether the cutter can reach a cell's centre.
   *
   * @param doubtCounts whether a doubtful fit counts as one, which is quicker and errs to
   *     "reachable"
   */
  boolean reaches(int column, int row, boolean doubtCounts) {
    boolean doubt = false;
    for (int k = 0; k < offsets.length; k += 2) {
      byte s = state(column + offsets[k], row + offsets[k + 1]);
      if (s == FITS) {
        return true;
      }
      doubt |= s == DOUBTFUL;
    }
    return doubt && (doubtCounts || refined(column, row));
  }

  private byte state(int column, int row) {
    if (column < 0 || row < 0 || column >= frame.columns() || row >= frame.rows()) {
      return NOT;
    }
    int i = row * frame.columns() + column;
    byte s = state[i];
    if (s == UNKNOWN) {
      s = NOT;
      if (targetOf[i] >= 0 && depths[targetOf[i]] >= level) {
        double d = walls.wallDistance(frame.centreX(column), frame.centreY(row), radius, level);
        double halfDiagonal = Math.hypot(frame.cellX(), frame.cellY()) / 2;
        s = d >= radius - FIT_MM ? FITS : d >= radius - halfDiagonal ? DOUBTFUL : NOT;
      }
      state[i] = s; // several threads may write it: always the same
    }
    return s;
  }

  /** Looks between the centres, around the doubtful ones, for a place that fits. */
  private boolean refined(int column, int row) {
    double px = frame.centreX(column);
    double py = frame.centreY(row);
    for (int k = 0; k < offsets.length; k += 2) {
      int c = column + offsets[k];
      int r = row + offsets[k + 1];
      if (state(c, r) == DOUBTFUL) {
        double[] place = between.computeIfAbsent(r * frame.columns() + c, cell -> roomiest(c, r));
        if (place[2] >= radius - FIT_MM && Math.hypot(place[0] - px, place[1] - py) <= radius) {
          return true;
        }
      }
    }
    return false;
  }

  /**
   * Place in a cell with most room to the walls (found by going uphill) and that room: x, y, mm.
   */
  private double[] roomiest(int column, int row) {
    double startX = frame.centreX(column);
    double startY = frame.centreY(row);
    double x = startX;
    double y = startY;
    double room = walls.wallDistance(x, y, radius, level);
    double step = Math.max(frame.cellX(), frame.cellY()) / 4;
    while (step > FIT_MM / 4 && room < radius - FIT_MM) {
      boolean better = false;
      for (double[] way : WAYS) {
        double nx = x + step * way[0];
        double ny = y + step * way[1];
        if (Math.abs(nx - startX) <= frame.cellX() / 2
            && Math.abs(ny - startY) <= frame.cellY() / 2) {
          double d = walls.wallDistance(nx, ny, radius, level);
          if (d > room) {
            room = d;
            x = nx;
            y = ny;
            better = true;
          }
        }
      }
      step = better ? step : step / 2;
    }
    return new double[] {x, y, room};
  }
}
