package plyscape.toolpath.slot;

import java.util.Arrays;
import plyscape.toolpath.lattice.CoarseMap;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.PocketEdges;

/**
 * The middle lines of a pocket (its medial axis) where it is about as wide as a cutter. Where a
 * line between two lattice nodes goes from one wall's side to another's, the place as far from both
 * is found exactly; places on the sides of one lattice square are neighbours, three or more meet in
 * a junction within it. Lines into corners between walls that meet at more than a right angle or so
 * are left out: the cutter reaches those along the walls.
 *
 * <p>Every place is on the middle line to 0.001 mm and its distance from the walls exact; between
 * neighbours, a lattice step or so apart, the line strays by what a chord does.
 */
final class CentreLines {

  /** Walls seen under a smaller angle than this from a place are one wall or a corner. */
  private static final double SPREAD_COSINE = Math.cos(Math.toRadians(80));

  private final DistanceField field;
  private final double leastMm;
  private final double mostMm;

  /** Distances from the walls of the nodes next to a place of use. */
  private final double lowMm;

  private final double highMm;

  private final BetweenWalls between;
  private final CentreGraph graph = new CentreGraph();

  /**
   * @param leastMm distance from the walls at which a place is of use
   * @param mostMm distance beyond which the pocket is no longer narrow
   */
  CentreLines(DistanceField field, double leastMm, double mostMm) {
    this.field = field;
    this.leastMm = leastMm;
    this.mostMm = mostMm;
    lowMm = leastMm - field.lattice.stepMm();
    highMm = mostMm + field.lattice.stepMm();
    between = new BetweenWalls(field);
  }

  /** All lines. */
  CentreGraph find() {
    Lattice lattice = field.lattice;
    CoarseMap about = field.range.between(lowMm, highMm);
    int columns = lattice.columns();
    int[][] level = new int[2][columns];
    int[] west = new int[columns];
    Arrays.fill(level[1], -1);
    for (int j = 2; j < lattice.rows() - 3; j++) {
      int row = j;
      int base = j * columns;
      int[] north = level[j % 2];
      int[] south = level[1 - j % 2];
      Arrays.fill(north, -1);
      Arrays.fill(west, -1);
      about.eachRun(
          row,
          (first, last) -> {
            int end = Math.min(last - base, columns - 4);
            for (int i = Math.max(2, first - base); i <= end; i++) {
              int above = base + columns + i;
              if (narrow(above)) {
                west[i] = place(i, row, above - columns, above);
                north[i] = place(i, row + 1, above, above + 1);
              }
            }
          });
      about.eachRun(
          row,
          (first, last) -> {
            int end = Math.min(last - base, columns - 5);
            for (int i = Math.max(2, first - base); i <= end; i++) {
              square(south[i], north[i], west[i], west[i + 1]);
            }
          });
    }
    return graph;
  }

  /** Whether a place next to the node may be of use. */
  private boolean narrow(int node) {
    float distance = field.distance[node];
    return distance >= lowMm && distance <= highMm;
  }

  /** The place between the walls on the line between two neighbouring nodes, or -1. */
  private int place(int column, int row, int node, int other) {
    if (!narrow(node) || !narrow(other)) {
      return -1;
    }
    int first = field.nearest[node];
    int second = field.nearest[other];
    if (first == second || first < 0 || second < 0) {
      return -1;
    }
    double h = field.lattice.stepMm();
    double ax = field.lattice.x(column);
    double ay = field.lattice.y(row);
    double bx = other == node + 1 ? ax + h : ax;
    double by = other == node + 1 ? ay : ay + h;
    if (oneSide(first, ax, ay, second, bx, by)) {
      return -1;
    }
    between.gather(ax, ay);
    MidPoint mid = between.on(ax, ay, bx, by);
    return mid == null
            || mid.clearMm() < leastMm
            || mid.clearMm() > mostMm
            || mid.spread() > SPREAD_COSINE
        ? -1
        : graph.add(mid);
  }

  /** Whether both nodes plainly lie on one side of the middle. */
  private boolean oneSide(int first, double ax, double ay, int second, double bx, double by) {
    PocketEdges edges = field.edges;
    double s = edges.along(first, ax, ay);
    double t = edges.along(second, bx, by);
    double dx = edges.ax[first] + s * (edges.bx[first] - edges.ax[first]) - ax;
    double dy = edges.ay[first] + s * (edges.by[first] - edges.ay[first]) - ay;
    double ex = edges.ax[second] + t * (edges.bx[second] - edges.ax[second]) - bx;
    double ey = edges.ay[second] + t * (edges.by[second] - edges.ay[second]) - by;
    double product = Math.sqrt((dx * dx + dy * dy) * (ex * ex + ey * ey));
    return dx * ex + dy * ey > 0.5 * product;
  }

  /** Joins the places on the sides of a square. */
  private void square(int south, int north, int west, int east) {
    int count = (south < 0 ? 0 : 1) + (north < 0 ? 0 : 1) + (west < 0 ? 0 : 1) + (east < 0 ? 0 : 1);
    if (count == 2) {
      int first = south >= 0 ? south : north >= 0 ? north : west;
      int second = east >= 0 ? east : west >= 0 ? west : north;
      graph.link(first, second);
    } else if (count > 2) {
      int[] sides =
          Arrays.stream(new int[] {south, north, west, east}).filter(s -> s >= 0).toArray();
      int middle = graph.add(junction(sides));
      for (int side : sides) {
        graph.link(middle, side);
      }
    }
  }

  /** Where lines meet: the place as far from three walls. */
  private MidPoint junction(int[] sides) {
    double x = 0;
    double y = 0;
    for (int side : sides) {
      x += graph.point(side).x() / sides.length;
      y += graph.point(side).y() / sides.length;
    }
    between.gather(x, y);
    double[] best = between.junction(x, y, 1.5 * field.lattice.stepMm());
    double[] feet = widest(best[0], best[1], sides);
    return new MidPoint(best[0], best[1], best[2], feet[0], feet[1], feet[2], feet[3]);
  }

  /** Those two feet of some places that are seen farthest apart: of the line that goes on. */
  private double[] widest(double x, double y, int[] places) {
    double[] feet = new double[4 * places.length];
    for (int k = 0; k < places.length; k++) {
      MidPoint place = graph.point(places[k]);
      feet[4 * k] = place.firstX();
      feet[4 * k + 1] = place.firstY();
      feet[4 * k + 2] = place.secondX();
      feet[4 * k + 3] = place.secondY();
    }
    double[] widest = null;
    double least = Double.POSITIVE_INFINITY;
    for (int a = 0; a < feet.length; a += 2) {
      for (int b = a + 2; b < feet.length; b += 2) {
        double dx = feet[a] - x;
        double dy = feet[a + 1] - y;
        double ex = feet[b] - x;
        double ey = feet[b + 1] - y;
        double cosine =
            (dx * ex + dy * ey) / Math.max(1e-12, Math.hypot(dx, dy) * Math.hypot(ex, ey));
        if (cosine < least) {
          least = cosine;
          widest = new double[] {feet[a], feet[a + 1], feet[b], feet[b + 1]};
        }
      }
    }
    return widest;
  }
}
