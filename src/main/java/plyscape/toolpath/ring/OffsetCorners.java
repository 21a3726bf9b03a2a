package plyscape.toolpath.ring;

import java.util.ArrayList;
import java.util.List;
import plyscape.toolpath.lattice.CoarseMap;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.EdgeBuckets;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.PocketEdges;

/**
 * The corners of the way along the walls, exactly: places as far from two walls as the cutter's
 * radius and no nearer to any other. The region that the cutter's centre may be in ends in them,
 * and where it is narrower than a lattice step, the lattice shows nothing of it.
 *
 * <p>Each lattice square that the way may pass is asked for pairs of walls; the place between two
 * is found by Newton's method, and when a third wall is nearer there, it takes the place of the one
 * it looks more alike.
 */
final class OffsetCorners {

  /**
   * Distance short of the radius at which a place still counts, mm: outlines are rounded to 0.001,
   * the G-code's coordinates too.
   */
  static final double FIT_MM = 0.0015;

  /** Walls that turn by less than this leave no corner worth a point: under 0.0011 r is lost. */
  private static final double TURN_COSINE = Math.cos(Math.toRadians(5));

  private static final int MOST_WALLS = 16;

  private final DistanceField field;
  private final EdgeBuckets walls;
  private final double radius;
  private final double step;
  private final int[] candidates = new int[MOST_WALLS];
  private final double[] awayX = new double[MOST_WALLS];
  private final double[] awayY = new double[MOST_WALLS];
  private int candidateCount;
  private final List<double[]> corners = new ArrayList<>();
  private double wayX;
  private double wayY;

  /** For one pocket and one cutter radius, mm. */
  OffsetCorners(DistanceField field, EdgeBuckets walls, double radiusMm) {
    this.field = field;
    this.walls = walls;
    // Places that are hardly too tight count: then a gap as wide as the cutter has corners.
    this.radius = radiusMm - FIT_MM;
    step = field.lattice.stepMm();
  }

  /**
   * All corners, each once, as {x, y} in mm, in the order of the lattice's rows.
   *
   * @param about blocks in which a distance near the radius may be
   */
  List<double[]> find(CoarseMap about) {
    Lattice lattice = field.lattice;
    int columns = lattice.columns();
    for (int j = 2; j < lattice.rows() - 3; j++) {
      for (int i = 2; i < columns - 3; i++) {
        if (!about.has(i, j)) {
          i = about.lastOfBlock(i);
          continue;
        }
        int node = j * columns + i;
        if (passes(node, columns)) {
          square(lattice.x(i) + step / 2, lattice.y(j) + step / 2, node, columns);
        }
      }
    }
    return corners;
  }

  /** Whether a place of the wanted distance may lie in a square. */
  private boolean passes(int node, int columns) {
    float[] d = field.distance;
    double low = radius - 0.75 * step;
    double high = radius + 0.75 * step;
    return between(d[node], low, high)
        || between(d[node + 1], low, high)
        || between(d[node + columns], low, high)
        || between(d[node + columns + 1], low, high);
  }

  private static boolean between(double d, double low, double high) {
    return d > low && d < high;
  }

  private void square(double middleX, double middleY, int node, int columns) {
    candidateCount = 0;
    for (int at = node - columns; at <= node + 2 * columns; at += columns) {
      for (int k = at - 1; k <= at + 2; k++) {
        gather(field.nearest[k], middleX, middleY);
      }
    }
    for (int a = 0; a < candidateCount; a++) {
      for (int b = a + 1; b < candidateCount; b++) {
        if (awayX[a] * awayX[b] + awayY[a] * awayY[b] < TURN_COSINE) {
          solve(candidates[a], candidates[b], middleX, middleY);
        }
      }
    }
  }

  private void gather(int edge, double middleX, double middleY) {
    if (edge < 0 || candidateCount == MOST_WALLS) {
      return;
    }
    for (int c = 0; c < candidateCount; c++) {
      if (candidates[c] == edge) {
        return;
      }
    }
    double d = away(edge, middleX, middleY);
    if (d < radius + 1.5 * step) {
      candidates[candidateCount] = edge;
      awayX[candidateCount] = wayX;
      awayY[candidateCount++] = wayY;
    }
  }

  /** Distance of a place from a wall; the direction away from it goes into (wayX, wayY). */
  private double away(int edge, double px, double py) {
    PocketEdges edges = field.edges;
    double t = edges.along(edge, px, py);
    double dx = px - edges.ax[edge] - t * (edges.bx[edge] - edges.ax[edge]);
    double dy = py - edges.ay[edge] - t * (edges.by[edge] - edges.ay[edge]);
    double d = Math.max(1e-9, Math.hypot(dx, dy));
    wayX = dx / d;
    wayY = dy / d;
    return d;
  }

  /** Finds the corner between two walls near a place and keeps it if it lies in the square. */
  private void solve(int first, int second, double middleX, double middleY) {
    double px = middleX;
    double py = middleY;
    int a = first;
    int b = second;
    for (int change = 0; change < 6; change++) {
      for (int time = 0; time < 12; time++) {
        double da = radius - away(a, px, py);
        double ax = wayX;
        double ay = wayY;
        double db = radius - away(b, px, py);
        double det = ax * wayY - ay * wayX;
        if (Math.abs(det) < 0.02) {
          return;
        }
        double dx = (da * wayY - db * ay) / det;
        double dy = (ax * db - wayX * da) / det;
        px += dx;
        py += dy;
        if (Math.abs(px - middleX) > 2 * step || Math.abs(py - middleY) > 2 * step) {
          return;
        }
        if (Math.abs(dx) + Math.abs(dy) < 1e-7) {
          break;
        }
      }
      if (walls.distance(px, py, radius + 0.001) >= radius - 2e-4) {
        keep(a, b, px, py, middleX, middleY);
        return;
      }
      int nearer = walls.nearest();
      if (nearer == a || nearer == b) {
        return;
      }
      away(nearer, px, py);
      double nearX = wayX;
      double nearY = wayY;
      away(a, px, py);
      double likeA = wayX * nearX + wayY * nearY;
      away(b, px, py);
      if (likeA > wayX * nearX + wayY * nearY) {
        a = nearer;
      } else {
        b = nearer;
      }
    }
  }

  private void keep(int a, int b, double px, double py, double middleX, double middleY) {
    double half = step / 2 + 1e-6;
    if (Math.abs(px - middleX) > half || Math.abs(py - middleY) > half) {
      return;
    }
    away(a, px, py);
    double ax = wayX;
    double ay = wayY;
    away(b, px, py);
    if (ax * wayX + ay * wayY > TURN_COSINE) {
      return;
    }
    for (int k = corners.size() - 1; k >= 0 && corners.get(k)[1] > py - 3 * step; k--) {
      if (Math.hypot(corners.get(k)[0] - px, corners.get(k)[1] - py) < 0.002) {
        return;
      }
    }
    corners.add(new double[] {px, py});
  }
}
