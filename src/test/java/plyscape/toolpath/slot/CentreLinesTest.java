package plyscape.toolpath.slot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.distance.DistanceOp;
import plyscape.grid.Box;
import plyscape.toolpath.RandomPockets;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.PocketEdges;

/**
 * Middle lines of simple shapes against closed forms (references.md, section 10: all derived
 * there); distances from the walls also against JTS.
 */
class CentreLinesTest {

  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final Lattice LATTICE = Lattice.over(new Box(0, 0, 60, 60), 0.75);

  static Polygon polygon(double... xy) {
    Coordinate[] points = new Coordinate[xy.length / 2 + 1];
    for (int i = 0; i < points.length; i++) {
      int k = 2 * i % xy.length;
      points[i] = new Coordinate(xy[k], xy[k + 1]);
    }
    return FACTORY.createPolygon(points);
  }

  private static CentreGraph lines(Geometry pocket, double least, double most) {
    DistanceField field = new DistanceField(new PocketEdges(RandomPockets.multi(pocket)), LATTICE);
    return new CentreLines(field, least, most).find();
  }

  private static double length(CentreGraph graph) {
    double sum = 0;
    for (int a = 0; a < graph.size(); a++) {
      for (int b : graph.of(a)) {
        if (a < b) {
          sum +=
              Math.hypot(
                  graph.point(a).x() - graph.point(b).x(), graph.point(a).y() - graph.point(b).y());
        }
      }
    }
    return sum;
  }

  /** Spine from (b/2, b/2) to (a - b/2, b/2). */
  @Test
  void rectangle_spineInTheMiddle() {
    CentreGraph graph = lines(polygon(3, 3, 43, 3, 43, 4.6, 3, 4.6), 0.79, 0.9);
    assertEquals(1, graph.chains().size());
    for (int a = 0; a < graph.size(); a++) {
      assertEquals(3.8, graph.point(a).y(), 1e-3);
      assertEquals(0.8, graph.point(a).clearMm(), 1e-3);
    }
    assertEquals(40 - 1.6, length(graph), 2.1 * LATTICE.stepMm());
  }

  /** One closed circle of radius (R1 + R2) / 2, r = (R2 - R1) / 2. */
  @Test
  void annulus_oneClosedCircle() {
    Geometry ring =
        FACTORY
            .createPoint(new Coordinate(30, 30))
            .buffer(10.8, 90)
            .difference(FACTORY.createPoint(new Coordinate(30, 30)).buffer(9.2, 90));
    CentreGraph graph = lines(ring, 0.75, 0.9);
    List<int[]> chains = graph.chains();
    assertEquals(1, chains.size());
    assertEquals(chains.get(0)[0], chains.get(0)[chains.get(0).length - 1]);
    for (int a = 0; a < graph.size(); a++) {
      assertEquals(10, Math.hypot(graph.point(a).x() - 30, graph.point(a).y() - 30), 2e-3);
      assertEquals(0.8, graph.point(a).clearMm(), 2e-3);
    }
    assertEquals(2 * Math.PI * 10, length(graph), 0.03);
  }

  /** Junction 3w/8 above the stem's mouth, r = 5w/8; each parabola arc 0.520114 w. */
  @Test
  void tee_junctionAtFiveEighths() {
    double w = 1.6;
    double x = 20.03;
    double y = 30.02;
    CentreGraph graph =
        lines(
            polygon(
                x - 15, y, x - w / 2, y, x - w / 2, y - 12, x + w / 2, y - 12, x + w / 2, y, x + 15,
                y, x + 15, y + w, x - 15, y + w),
            0.79,
            2);
    int junction = junction(graph, 3);
    assertEquals(x, graph.point(junction).x(), 1e-3);
    assertEquals(y + 3 * w / 8, graph.point(junction).y(), 1e-3);
    assertEquals(5 * w / 8, graph.point(junction).clearMm(), 1e-3);
    // Arms from the junction: arc and straight to half a width from the end.
    double arms = 2 * (0.520114 * w + 15 - w / 2 - w / 2) + 12 + 3 * w / 8 - w / 2;
    assertEquals(arms, length(graph), 4 * LATTICE.stepMm());
  }

  /** Centre, r = w / sqrt 2. */
  @Test
  void cross_junctionInTheCentre() {
    double w = 1.6;
    double x = 20.03;
    double y = 30.02;
    Geometry cross =
        polygon(x - 15, y - w / 2, x + 15, y - w / 2, x + 15, y + w / 2, x - 15, y + w / 2)
            .union(
                polygon(
                    x - w / 2, y - 15, x + w / 2, y - 15, x + w / 2, y + 15, x - w / 2, y + 15));
    CentreGraph graph = lines(cross, 0.79, 2);
    int junction = junction(graph, 4);
    assertEquals(x, graph.point(junction).x(), 1e-3);
    assertEquals(y, graph.point(junction).y(), 1e-3);
    assertEquals(w / Math.sqrt(2), graph.point(junction).clearMm(), 1e-3);
  }

  /**
   * Junction 0.585786 w from both outer walls, r as much; corner spur 0.828427 w, arcs 0.425771 w
   * each, arms A - 1.5 w, at each end two spurs of w / sqrt 2. All five spurs stop at the least
   * distance, sqrt 2 of it before their corners.
   */
  @Test
  void ell_junctionNearTheOuterCorner() {
    double w = 4;
    double least = 0.3;
    Geometry ell = ell(w, 30);
    CentreGraph graph = lines(ell, least, 4);
    assertFromWalls(ell, graph);
    int junctions = 0;
    for (int a = 0; a < graph.size(); a++) {
      double u = graph.point(a).x() - ELL_X;
      double v = graph.point(a).y() - ELL_Y;
      if (graph.of(a).length > 2) {
        assertEquals(3, graph.of(a).length);
        boolean end = Math.max(u, v) > w;
        assertEquals(end ? w / 2 : (2 - Math.sqrt(2)) * w, graph.point(a).clearMm(), 1e-3);
        assertEquals(end ? 30 - w / 2 : (2 - Math.sqrt(2)) * w, Math.max(u, v), 1e-3);
        junctions++;
      }
      if (Math.max(u, v) < w && Math.abs(u - v) > 2e-3) {
        // As far from the nearer outer wall as from the inner corner.
        assertEquals(Math.hypot(w - u, w - v), Math.min(u, v), 1e-3);
      }
    }
    assertEquals(3, junctions);
    double whole = (0.828427 + 2 * 0.425771 + 2 * Math.sqrt(2)) * w + 2 * (30 - 1.5 * w);
    assertLength(whole - 5 * Math.sqrt(2) * least, 5, graph);
  }

  /**
   * A cutter wider than the arms fits in the corner, to which it cannot get: of each arc, y = w (1
   * + u2) / 2 at u w before the inner corner, is left what lies beyond u = sqrt(2 r / w - 1), and
   * of the spur sqrt 2 of what the junction has more.
   */
  @Test
  void ellNarrowerThanTheCutter_onlyTheCorner() {
    double w = 8;
    double radius = 4.2;
    CentreGraph graph = lines(ell(w, 30), radius, 6);
    int junction = junction(graph, 3);
    assertEquals((2 - Math.sqrt(2)) * w, graph.point(junction).clearMm(), 1e-3);
    assertEquals(3, graph.chains().size());
    double u = Math.sqrt(2 * radius / w - 1);
    double arc = w * (0.425771 - parabola(u));
    double spur = Math.sqrt(2) * ((2 - Math.sqrt(2)) * w - radius);
    assertLength(2 * arc + spur, 3, graph);
  }

  /** Length of the parabola y = u2 / 2 from its vertex. */
  private static double parabola(double u) {
    return (u * Math.hypot(1, u) + Math.log(u + Math.hypot(1, u))) / 2;
  }

  /**
   * Centre, r = w / sqrt 3; along an arm r = hypot(w / (2 sqrt 3) - s, w / 2) up to the foot of the
   * inner corners, then w / 2.
   */
  @Test
  void wye_junctionInTheCentre() {
    double w = 1.6;
    double x = 30.03;
    double y = 30.02;
    double inner = w / Math.sqrt(3);
    double[] xy = new double[18];
    for (int arm = 0; arm < 3; arm++) {
      double along = Math.toRadians(17 + 120 * arm);
      double[][] corners = {{inner / 2, -w / 2}, {15, -w / 2}, {15, w / 2}};
      for (int k = 0; k < 3; k++) {
        xy[6 * arm + 2 * k] = x + corners[k][0] * Math.cos(along) - corners[k][1] * Math.sin(along);
        xy[6 * arm + 2 * k + 1] =
            y + corners[k][0] * Math.sin(along) + corners[k][1] * Math.cos(along);
      }
    }
    CentreGraph graph = lines(polygon(xy), 0.79, 2);
    assertFromWalls(polygon(xy), graph);
    int junction = junction(graph, 3);
    assertEquals(x, graph.point(junction).x(), 1e-3);
    assertEquals(y, graph.point(junction).y(), 1e-3);
    assertEquals(inner, graph.point(junction).clearMm(), 1e-3);
    for (int a = 0; a < graph.size(); a++) {
      double s = Math.hypot(graph.point(a).x() - x, graph.point(a).y() - y);
      if (s < 15 - w / 2) {
        double r = Math.hypot(Math.max(0, inner / 2 - s), w / 2);
        assertEquals(r, graph.point(a).clearMm(), 1e-3, "at " + s);
      }
    }
    assertLength(3 * (15 - w / 2), 3, graph);
  }

  /** At s from the tip r = s sin(angle / 2), on the bisector: from r to r as long as s. */
  @Test
  void wedge_growsWiderFromTheTip() {
    for (double degrees : new double[] {10, 25, 60, 90}) {
      double sine = Math.sin(Math.toRadians(degrees / 2));
      Geometry wedge = wedge(degrees);
      CentreGraph graph = lines(wedge, 0.5, 1.5);
      assertFromWalls(wedge, graph);
      assertEquals(1, graph.chains().size(), "angle " + degrees);
      for (int a = 0; a < graph.size(); a++) {
        double dx = graph.point(a).x() - TIP;
        double dy = graph.point(a).y() - TIP;
        double s = Math.hypot(dx, dy);
        assertEquals(WEDGE_ALONG, Math.atan2(dy, dx), 1e-3 / s, "angle " + degrees);
        assertEquals(s * sine, graph.point(a).clearMm(), 1e-3, "angle " + degrees);
      }
      assertLength(1 / sine, 2, graph);
    }
  }

  /** Walls at far more than a right angle: the cutter reaches into the corner along them. */
  @Test
  void bluntWedge_hasNoLine() {
    for (double degrees : new double[] {110, 150}) {
      assertEquals(0, lines(wedge(degrees), 0.5, 1.5).size(), "angle " + degrees);
    }
  }

  /**
   * A round island of R1 = 2 that stands e = 3 off the middle of a round pocket of R2 = 6: places
   * as far from both have r = d1 - R1 = R2 - d2, so d1 + d2 = R1 + R2 = 2 a: an ellipse about the
   * two centres. Eccentricity e / 2 a = 0.375, length 4 a E(0.375) = 16 x 1.514024 (E integrated
   * numerically apart from this program).
   */
  @Test
  void islandOffTheMiddle_ellipseAllRound() {
    Geometry pocket = pocketAboutIsland();
    CentreGraph graph = lines(pocket, 0.4, 4);
    assertFromWalls(pocket, graph);
    assertEquals(1, graph.chains().size());
    double narrowest = Double.POSITIVE_INFINITY;
    double widest = 0;
    for (int a = 0; a < graph.size(); a++) {
      assertEquals(2, graph.of(a).length);
      MidPoint point = graph.point(a);
      double island = Math.hypot(point.x() - ISLAND_X, point.y() - ISLAND_Y);
      double middle = Math.hypot(point.x() - MIDDLE, point.y() - MIDDLE);
      assertEquals(8, island + middle, 1e-3);
      assertEquals(island - 2, point.clearMm(), 1e-3);
      narrowest = Math.min(narrowest, point.clearMm());
      widest = Math.max(widest, point.clearMm());
    }
    // (R2 - R1 - e) / 2 and (R2 - R1 + e) / 2
    assertEquals(0.5, narrowest, 2e-3);
    assertEquals(3.5, widest, 2e-3);
    assertLength(16 * 1.514024, 0, graph);
  }

  /**
   * The same for a cutter of radius (R2 - R1) / 2: where d1 = d2, at the ends of the minor axis,
   * the way closes, and the wide half of the ellipse is left.
   */
  @Test
  void islandOffTheMiddle_wideCutterGoesHalfRound() {
    CentreGraph graph = lines(pocketAboutIsland(), 2, 4);
    assertEquals(1, graph.chains().size());
    int[] chain = graph.chains().get(0);
    for (int end : new int[] {chain[0], chain[chain.length - 1]}) {
      assertEquals(1, graph.of(end).length);
      assertEquals(2, graph.point(end).clearMm(), LATTICE.stepMm());
    }
    assertLength(8 * 1.514024, 2, graph);
  }

  private static final double ELL_X = 3.03;
  private static final double ELL_Y = 4.02;

  /** Both arms as long outside. */
  private static Polygon ell(double width, double arm) {
    double x = ELL_X;
    double y = ELL_Y;
    return polygon(
        x, y, x + arm, y, x + arm, y + width, x + width, y + width, x + width, y + arm, x, y + arm);
  }

  private static final double TIP = 9.01;
  private static final double WEDGE_ALONG = Math.toRadians(37);

  /** Two walls from a tip, closed by the circle of radius 2 that touches both. */
  private static Polygon wedge(double degrees) {
    double half = Math.toRadians(degrees / 2);
    double away = 2 / Math.sin(half);
    double x = TIP + away * Math.cos(WEDGE_ALONG);
    double y = TIP + away * Math.sin(WEDGE_ALONG);
    int arcs = 90;
    double[] xy = new double[2 * (arcs + 2)];
    xy[0] = TIP;
    xy[1] = TIP;
    for (int k = 0; k <= arcs; k++) {
      double angle = WEDGE_ALONG + (Math.PI / 2 + half) * (2.0 * k / arcs - 1);
      xy[2 * k + 2] = x + 2 * Math.cos(angle);
      xy[2 * k + 3] = y + 2 * Math.sin(angle);
    }
    return polygon(xy);
  }

  private static final double MIDDLE = 30;
  private static final double ISLAND_X = MIDDLE + 3 * Math.cos(0.3);
  private static final double ISLAND_Y = MIDDLE + 3 * Math.sin(0.3);

  private static Geometry pocketAboutIsland() {
    return FACTORY
        .createPoint(new Coordinate(MIDDLE, MIDDLE))
        .buffer(6, 180)
        .difference(FACTORY.createPoint(new Coordinate(ISLAND_X, ISLAND_Y)).buffer(2, 180));
  }

  /** Every place's distance, and its feet, against those that JTS finds. */
  private static void assertFromWalls(Geometry pocket, CentreGraph graph) {
    Geometry walls = pocket.getBoundary();
    for (int a = 0; a < graph.size(); a++) {
      MidPoint point = graph.point(a);
      Coordinate at = new Coordinate(point.x(), point.y());
      double far = DistanceOp.distance(walls, FACTORY.createPoint(at));
      assertEquals(far, point.clearMm(), 1e-6, "at " + at);
      Coordinate first = new Coordinate(point.firstX(), point.firstY());
      Coordinate second = new Coordinate(point.secondX(), point.secondY());
      for (Coordinate foot : new Coordinate[] {first, second}) {
        assertEquals(0, DistanceOp.distance(walls, FACTORY.createPoint(foot)), 1e-6, "at " + at);
        assertEquals(far, at.distance(foot), graph.of(a).length > 2 ? 2 * LATTICE.stepMm() : 1e-3);
      }
    }
  }

  /** Less than the closed form by at most a lattice square at each end, and what chords lose. */
  private static void assertLength(double expected, int ends, CentreGraph graph) {
    double square = Math.sqrt(2) * LATTICE.stepMm();
    double length = length(graph);
    assertTrue(
        length < expected + 0.01 && length > 0.9995 * expected - ends * square - 1e-3,
        length + " is not " + expected);
  }

  /** The only place at which so many lines meet. */
  private static int junction(CentreGraph graph, int lines) {
    int found = -1;
    for (int a = 0; a < graph.size(); a++) {
      if (graph.of(a).length > 2) {
        assertEquals(-1, found, "one junction");
        assertEquals(lines, graph.of(a).length);
        found = a;
      }
    }
    assertTrue(found >= 0, "no junction");
    return found;
  }
}
