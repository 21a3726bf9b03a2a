package plyscape.toolpath.slot;

import java.util.ArrayList;
import java.util.List;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.EdgeBuckets;

/**
 * Turns a middle line into cross-sections for a cutter: from each place the cutter's centre may go
 * towards both feet until it touches. Where a wall turns inward the corner is put in, where it
 * turns outward more sections, and at a dead end the sides are led on until they meet the wall
 * across. No place is nearer to a wall than the radius less {@link #FIT_MM} and what a chord takes,
 * under 0.003 mm.
 */
final class SlotSections {

  /** How much narrower than the cutter a place may be: outlines are rounded to 0.001 mm. */
  static final double FIT_MM = 0.002;

  /** Sides nearer to each other than this are one. */
  private static final double SAME_MM = 1e-6;

  /** Walls that turn by less than this sine have no corner between them. */
  private static final double LEAST_TURN = 0.02;

  /** Walls that go on at an end by less than this cosine aren't followed. */
  private static final double AHEAD = 0.5;

  private final DistanceField field;
  private final EdgeBuckets walls;
  private final double radius;
  private final List<double[]> rows = new ArrayList<>();

  /** For one pocket and one cutter radius, mm. */
  SlotSections(DistanceField field, EdgeBuckets walls, double radiusMm) {
    this.field = field;
    this.walls = walls;
    radius = radiusMm;
  }

  /** The sections of a line of at least two places; null when nothing is left of it. */
  SlotWay of(List<MidPoint> line, boolean closed) {
    rows.clear();
    double[] before = null;
    int n = line.size();
    for (int i = 0; i < n; i++) {
      MidPoint at = line.get(i);
      MidPoint from = line.get(i > 0 ? i - 1 : closed ? n - 1 : 0);
      MidPoint to = line.get(i + 1 < n ? i + 1 : closed ? 0 : n - 1);
      double[] row = row(at, to.x() - from.x(), to.y() - from.y());
      if (before != null) {
        between(before, row, 3);
      }
      rows.add(row);
      before = row;
    }
    if (closed) {
      between(before, rows.get(0), 3);
    } else {
      end(0, 1);
      end(rows.size() - 1, rows.size() - 2);
    }
    return rows.size() < 2 ? null : way(closed);
  }

  /** Middle, left and right of a place, going in a direction. */
  private double[] row(MidPoint at, double dx, double dy) {
    double out = at.clearMm() > radius ? radius / at.clearMm() : 1;
    double firstX = at.firstX() + out * (at.x() - at.firstX());
    double firstY = at.firstY() + out * (at.y() - at.firstY());
    double secondX = at.secondX() + out * (at.x() - at.secondX());
    double secondY = at.secondY() + out * (at.y() - at.secondY());
    boolean left = dx * (at.firstY() - at.y()) - dy * (at.firstX() - at.x()) > 0;
    return left
        ? new double[] {at.x(), at.y(), firstX, firstY, secondX, secondY}
        : new double[] {at.x(), at.y(), secondX, secondY, firstX, firstY};
  }

  /** Puts in what lies between two sections: corners, and places on arcs. */
  private void between(double[] a, double[] b, int halvings) {
    double[] left = side(a, b, 2);
    double[] right = side(a, b, 4);
    if (left == null && right == null) {
      return;
    }
    double x = (a[0] + b[0]) / 2;
    double y = (a[1] + b[1]) / 2;
    left = left == null ? new double[] {(a[2] + b[2]) / 2, (a[3] + b[3]) / 2} : left;
    right = right == null ? new double[] {(a[4] + b[4]) / 2, (a[5] + b[5]) / 2} : right;
    double[] row = {x, y, left[0], left[1], right[0], right[1]};
    if (halvings > 1) {
      between(a, row, halvings - 1);
    }
    rows.add(row);
    if (halvings > 1) {
      between(row, b, halvings - 1);
    }
  }

  /** The place on the way along a wall between two of its places; null if it is hardly off. */
  private double[] side(double[] a, double[] b, int k) {
    double dx = b[k] - a[k];
    double dy = b[k + 1] - a[k + 1];
    double length = Math.hypot(dx, dy);
    if (length < 0.004) {
      return null;
    }
    double[] corner = corner(a, b, k, length);
    if (corner != null) {
      return corner;
    }
    double x = (a[k] + b[k]) / 2;
    double y = (a[k + 1] + b[k + 1]) / 2;
    double d = walls.distance(x, y, radius + length + 0.01);
    int wall = walls.nearest();
    if (wall < 0 || Math.abs(d - radius) < 0.002 || d < 1e-6) {
      return null;
    }
    // Towards the wall or off it, to where it is touched; a wall farther off only where it is on
    // this side.
    double t = field.edges.along(wall, x, y);
    double wx = field.edges.ax[wall] + t * (field.edges.bx[wall] - field.edges.ax[wall]);
    double wy = field.edges.ay[wall] + t * (field.edges.by[wall] - field.edges.ay[wall]);
    double across = dx * (wy - y) - dy * (wx - x);
    if (d > radius && across > 0 != (k == 2)) {
      return null;
    }
    double[] moved = {wx + (x - wx) * radius / d, wy + (y - wy) * radius / d};
    return fits(moved[0], moved[1]) ? moved : null;
  }

  /**
   * Where the ways along two straight walls meet between two places; null if there is no corner.
   */
  private double[] corner(double[] a, double[] b, int k, double length) {
    double dx = (b[k] - a[k]) / length;
    double dy = (b[k + 1] - a[k + 1]) / length;
    double[] from = tangent(a[k], a[k + 1], dx, dy);
    double[] to = tangent(b[k], b[k + 1], dx, dy);
    if (from == null || to == null) {
      return null;
    }
    double sine = from[0] * to[1] - from[1] * to[0];
    if (Math.abs(sine) < LEAST_TURN) {
      return null;
    }
    double on = length * (dx * to[1] - dy * to[0]) / sine;
    double before = length * (from[0] * dy - from[1] * dx) / sine;
    double off = on * Math.abs(from[0] * dy - from[1] * dx);
    if (on < 0 || before < 0 || on > 3 * length || before > 3 * length || off < 0.004) {
      return null;
    }
    double[] corner = {a[k] + on * from[0], a[k + 1] + on * from[1]};
    return fits(corner[0], corner[1])
            && fits((a[k] + corner[0]) / 2, (a[k + 1] + corner[1]) / 2)
            && fits((b[k] + corner[0]) / 2, (b[k + 1] + corner[1]) / 2)
        ? corner
        : null;
  }

  /**
   * The direction along the nearest wall, turned so that it goes along another; null without one.
   */
  private double[] tangent(double x, double y, double dx, double dy) {
    double d = walls.distance(x, y, radius + 0.01);
    int wall = walls.nearest();
    if (wall < 0 || d < 1e-6) {
      return null;
    }
    double t = field.edges.along(wall, x, y);
    double nx = (field.edges.ax[wall] + t * (field.edges.bx[wall] - field.edges.ax[wall]) - x) / d;
    double ny = (field.edges.ay[wall] + t * (field.edges.by[wall] - field.edges.ay[wall]) - y) / d;
    double along = dy * nx - dx * ny;
    return along > 0 ? new double[] {-ny, nx} : new double[] {ny, -nx};
  }

  private boolean fits(double x, double y) {
    return walls.distance(x, y, radius + 0.01) >= radius - FIT_MM;
  }

  /**
   * Leads both sides on at an end, each along its wall, the middle in the direction in which it
   * came.
   */
  private void end(int last, int before) {
    double[] at = rows.get(last);
    double dx = at[0] - rows.get(before)[0];
    double dy = at[1] - rows.get(before)[1];
    double length = Math.hypot(dx, dy);
    if (length < SAME_MM) {
      return;
    }
    double most = Math.hypot(at[2] - at[4], at[3] - at[5]) / 2 + 1.5 * field.lattice.stepMm();
    double[] end = at.clone();
    double reach = 0;
    double[] ahead = {dx / length, dy / length};
    for (int k = 0; k < 6; k += 2) {
      double[] along = k == 0 ? null : tangent(at[k], at[k + 1], ahead[0], ahead[1]);
      along = along == null || along[0] * ahead[0] + along[1] * ahead[1] < AHEAD ? ahead : along;
      double far = free(at[k], at[k + 1], along[0], along[1], most);
      end[k] = at[k] + far * along[0];
      end[k + 1] = at[k + 1] + far * along[1];
      reach = Math.max(reach, far);
    }
    if (reach > 0.003) {
      rows.add(last == 0 ? 0 : rows.size(), end);
    }
  }

  /** How far the cutter's centre may go straight on, mm. */
  private double free(double x, double y, double ux, double uy, double most) {
    double low = 0;
    double step = most / 8;
    while (low + step <= most + 1e-12 && fits(x + (low + step) * ux, y + (low + step) * uy)) {
      low += step;
    }
    for (double half = step / 2; half > 5e-4; half /= 2) {
      if (low + half <= most && fits(x + (low + half) * ux, y + (low + half) * uy)) {
        low += half;
      }
    }
    return low;
  }

  private SlotWay way(boolean closed) {
    int n = rows.size();
    double[][] columns = new double[6][n];
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < 6; k++) {
        columns[k][i] = rows.get(i)[k];
      }
    }
    return new SlotWay(
        columns[0], columns[1], columns[2], columns[3], columns[4], columns[5], closed);
  }
}
