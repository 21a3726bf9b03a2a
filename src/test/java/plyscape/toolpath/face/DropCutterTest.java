package plyscape.toolpath.face;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.grid.Grid;
import plyscape.machine.Form;
import plyscape.machine.Move;
import plyscape.machine.Tool;
import plyscape.machine.Workshop;
import plyscape.region.Face;
import plyscape.region.FaceField;
import plyscape.toolpath.task.ToolRun;

/** Cutters dropped on faces whose closed form is known. */
class DropCutterTest {

  private static final Box CARVED = new Box(5, 5, 35, 25);
  private static final double STEP = 0.06;
  private static final Tool BALL = tool(Tool.Shape.BALL, 6, 0, 0);

  private static Tool tool(Tool.Shape shape, double diameter, double tip, double taper) {
    return new Tool(
        shape + " " + diameter,
        new Form(shape, diameter, 20, 2, tip, taper, Tool.Spiral.UNSAID),
        Workshop.cutting(1800, 500, 2, 0.45));
  }

  /** The carved area, in uncut panel, whose depth depends on X alone. */
  private static FaceField faces(DoubleUnaryOperator depthMm) {
    CellFrame frame = new CellFrame(-0.25, -0.25, 0.5, 0.5, 81, 61); // centres on the half mm
    double[] elevation = new double[frame.size()];
    for (int i = 0; i < elevation.length; i++) {
      elevation[i] = -depthMm.applyAsDouble(frame.centreX(i % frame.columns()));
    }
    Polygon polygon =
        new GeometryFactory()
            .createPolygon(
                new Coordinate[] {
                  new Coordinate(5, 5),
                  new Coordinate(35, 5),
                  new Coordinate(35, 25),
                  new Coordinate(5, 25),
                  new Coordinate(5, 5)
                });
    return new FaceField(
        new Grid(frame, elevation),
        0,
        0,
        List.of(polygon),
        List.of(new Face(2, 0, -10, 0, 10)),
        0.02);
  }

  private static FaceTask task(FaceField faces) {
    return new FaceTask(faces, new SlopingFit(0), List.of(BALL), Workshop.ROUTER, CARVED);
  }

  private static DropCutter drop(FaceField faces, Tool tool, boolean turned) {
    return drop(task(faces), tool, turned);
  }

  private static FaceLattice lattice(FaceTask task, CutterForm form, boolean turned, double step) {
    int margin = DropCutter.around(form, step) + 3;
    return new FaceLattice(task, turned, step, margin, form.rimSlope(step));
  }

  private static DropCutter drop(FaceTask task, Tool tool, boolean turned) {
    CutterForm form = CutterForm.of(tool);
    FaceLattice lattice = lattice(task, form, turned, STEP);
    DropCutter drop =
        new DropCutter(lattice, new FaceBorders(lattice, task, STEP), form, Double.MAX_VALUE);
    drop.begin(100, false);
    return drop;
  }

  /** references.md, section 5: R 3, s 1 leaves 0.04196; R 1.5, s 0.3 leaves 0.00752. */
  @Test
  void stepover_leavesThePublishedCusp() {
    assertEquals(1, CutterForm.of(BALL).stepoverMm(0.041960), 1e-4);
    assertEquals(0.3, CutterForm.of(tool(Tool.Shape.BALL, 3, 0, 0)).stepoverMm(0.0075188), 1e-4);
  }

  /**
   * A cone of 10 degrees touches a ball of 0.5 mm where its side is as steep: at 0.5 cos 10, 0.5 (1
   * - sin 10) high; from there it rises by 1 / tan 10.
   */
  @Test
  void taperedForm_goesSmoothlyFromBallToCone() {
    CutterForm form = CutterForm.of(tool(Tool.Shape.TAPERED, 6, 1, 10));
    double touch = 0.5 * Math.cos(Math.toRadians(10));
    double high = 0.5 * (1 - Math.sin(Math.toRadians(10)));
    assertEquals(high, form.height(touch * touch), 1e-9);
    assertEquals(high + (2 - touch) / Math.tan(Math.toRadians(10)), form.height(4), 1e-9);
    assertEquals(0.5 - Math.sqrt(0.25 - 0.09), form.height(0.09), 1e-9);
  }

  /**
   * In a groove whose sides fall by 0.2 a mm the ball's centre stands R / cos over the bottom, so
   * its tip R (sqrt(1 + 0.2^2) - 1) = 0.0594 (R 3): any textbook's tangent, derived.
   */
  @Test
  void ballInAGroove_stopsAboveItsBottom() {
    for (boolean turned : new boolean[] {false, true}) {
      DropCutter drop = drop(faces(x -> 5 - 0.2 * Math.abs(x - 20)), BALL, turned);
      double tip = 5 - 3 * (Math.sqrt(1.04) - 1);
      double u = turned ? 15 : 20;
      double v = turned ? 20 : 15;
      assertEquals(tip, drop.at(u, v), 0.002);
      // Off the groove it rests on one side: the tip lies the same height over the plane.
      double side = turned ? drop.at(15.0, 26.0) : drop.at(26.0, 15.0);
      assertEquals(5 - 0.2 * 6 - 3 * (Math.sqrt(1.04) - 1), side, 0.002);
    }
  }

  /**
   * At a distance D from a wall's edge at the panel's face the tip goes R - sqrt(R2 - D2) deep,
   * less the 0.01 mm by which what stays uncut isn't touched.
   */
  @Test
  void ballBesideAWall_leansOnItsEdge() {
    DropCutter drop = drop(faces(x -> 6), BALL, false);
    for (double d : new double[] {0.4, 1, 1.7, 2.5, 2.9}) {
      assertEquals(2.99 - Math.sqrt(9 - d * d), drop.at(5 + d, 15), 0.004, "at " + d);
    }
    assertEquals(6, drop.at(8.01, 15), 1e-3);
    assertEquals(-0.01, drop.at(5.0, 15.0), 1e-6);
  }

  /**
   * On a panel whose top falls by 0.05 a mm of X a level face lies as steep: the ball's tip stays R
   * (sqrt(1 + 0.05^2) - 1) over the place below it.
   */
  @Test
  void ballOnABentPanel_restsOnTheSlope() {
    FaceField level = faces(x -> 5);
    PanelFit tilted = new SlopingFit(0.05);
    DropCutter drop =
        drop(new FaceTask(level, tilted, List.of(BALL), Workshop.ROUTER, CARVED), BALL, false);
    assertEquals(5 + 0.05 * 20 - 3 * (Math.sqrt(1.0025) - 1), drop.at(20.0, 15.0), 0.001);
    assertEquals(5 + 0.05 * 24 - 3 * (Math.sqrt(1.0025) - 1), drop.at(24.0, 12.0), 0.001);
  }

  /** A roof's ridge between two rows of nodes: the ball stands on the ridge, not on the nodes. */
  @Test
  void ballOverASharpRidge_doesNotSinkBetweenNodes() {
    DropCutter drop =
        drop(faces(x -> 3 + 1.5 * Math.abs(x - 20)), tool(Tool.Shape.BALL, 1, 0, 0), false);
    for (double y : new double[] {12, 15.31}) {
      assertEquals(3, drop.at(20.0, y), 0.002);
    }
  }

  /**
   * A cliff of 8 mm within half a mm, beside which the cutter's rim passes between nodes: nowhere
   * does it come over the cliff by more than 0.012 mm, of the 0.02 that it may.
   */
  @Test
  void cutterBesideACliff_keepsOffItBetweenNodes() {
    DoubleUnaryOperator cliff = x -> 9 - 16 * Math.max(0, Math.min(0.5, x - 20));
    for (Tool tool : List.of(tool(Tool.Shape.BALL, 2, 0, 0), tool(Tool.Shape.TAPERED, 3, 2, 16))) {
      for (boolean turned : new boolean[] {false, true}) {
        DropCutter drop = drop(faces(cliff), tool, turned);
        double r = tool.radiusMm();
        double over = 0;
        for (double axis = 20 - r; axis < 20.6 - r; axis += 0.007) {
          double tip = turned ? drop.at(15.02, axis) : drop.at(axis, 15.02);
          for (double x = axis - r; x <= axis + r; x += 0.002) {
            double cut = tip - drop.form().height((x - axis) * (x - axis));
            over = Math.max(over, cut - cliff.applyAsDouble(x - 0.012));
          }
        }
        assertTrue(over <= 0.003, tool.name() + " over the cliff by " + over);
      }
    }
  }

  /** A cutter that may take off 10 mm, on a lattice of 0.07 mm. */
  private static DropCutter begun(FaceField faces, CutterForm form, FaceLattice lattice) {
    FaceBorders borders = new FaceBorders(lattice, task(faces), 0.07);
    DropCutter drop = new DropCutter(lattice, borders, form, 20);
    drop.begin(10, false);
    return drop;
  }

  /**
   * Lines end nearer to a wall than the last place at which they are looked at: what they take off
   * there is known to be gone, so that it isn't cut once more and holds nothing off the wall.
   */
  @Test
  void stockBesideAWall_isWhatTheLinesLeave() {
    FaceField faces = faces(x -> 4);
    CutterForm form = CutterForm.of(tool(Tool.Shape.BALL, 2, 0, 0));
    FaceLattice lattice = lattice(task(faces), form, false, 0.07);
    DropCutter drop = begun(faces, form, lattice);
    double more = 0;
    for (FaceRun run : new FaceLines(lattice, drop, 0.02, 4).layer(null)) {
      int row = (int) Math.round((run.v() - lattice.minV) / lattice.stepMm);
      for (int k = 0; k < run.size(); k++) {
        for (int column = 0; column < lattice.columns; column++) {
          double off = sq(lattice.u(column) - run.u()[k]);
          if (off < 1) {
            double cut = run.depth()[k] - form.height(off);
            more = Math.max(more, cut - lattice.stock[row * lattice.columns + column]);
          }
        }
      }
    }
    assertTrue(more < 0.2, "cut by " + more + " mm more than known");
  }

  /**
   * A wall of 4 mm along the lines, farther from the nearest row of the lattice than may be left on
   * it: between the rows a line goes by as near as the cutter's radius and half a step.
   */
  @Test
  void linesAlongAWall_comeNearerThanTheLattice() {
    FaceField faces = faces(x -> 4);
    CutterForm form = CutterForm.of(tool(Tool.Shape.BALL, 2.01, 0, 0));
    FaceLattice lattice = lattice(task(faces), form, false, 0.07);
    DropCutter drop = begun(faces, form, lattice);
    double south = Double.POSITIVE_INFINITY;
    double north = Double.POSITIVE_INFINITY;
    double way = 0;
    for (FaceRun run : new FaceLines(lattice, drop, 0.02, 4).layer(null)) {
      if (Arrays.stream(run.depth()).max().orElseThrow() > 3.99) {
        south = Math.min(south, run.v() - 5 - 1.005);
        north = Math.min(north, 25 - 1.005 - run.v());
      }
      way += run.u()[run.size() - 1] - run.u()[0];
    }
    assertTrue(south > -0.001 && south < 0.035, "south " + south);
    assertTrue(north > -0.001 && north < 0.035, "north " + north);
    assertTrue(way < (18 / 0.28 + 15) * 30, "goes " + way + " mm");
  }

  /** A flat cutter on a slope rests on its uphill rim. */
  @Test
  void flatCutterOnASlope_restsOnItsRim() {
    DropCutter drop = drop(faces(x -> 2 + 0.1 * x), tool(Tool.Shape.FLAT, 3, 0, 0), false);
    assertEquals(2 + 0.1 * (20 - 1.5), drop.at(20.0, 15.0), 0.1 * STEP);
  }

  /** On a tilted plane the stock ends between the plane and the cusp over it, walls apart. */
  @Test
  void linesOnATiltedPlane_leaveNoMoreThanTheCusp() {
    FaceField faces = faces(x -> 1 + 0.02 * x);
    for (Tool tool :
        List.of(BALL, tool(Tool.Shape.BALL, 2, 0, 0), tool(Tool.Shape.TAPERED, 4, 1, 12))) {
      CutterForm form = CutterForm.of(tool);
      double stepover = form.stepoverMm(FaceLines.levelRidgeMm(0.02));
      int rows = 4 * (int) Math.ceil(stepover / 4 / STEP);
      double step = stepover / rows;
      FaceLattice lattice = lattice(task(faces), form, false, step);
      DropCutter drop =
          new DropCutter(lattice, new FaceBorders(lattice, task(faces), step), form, 20);
      drop.begin(10, false);
      List<FaceRun> runs = new FaceLines(lattice, drop, 0.02, rows).layer(null);
      double most = 0;
      for (int row = 0; row < lattice.rows; row++) {
        for (int column = 0; column < lattice.columns; column++) {
          double x = lattice.u(column);
          double y = lattice.v(row);
          if (x > 9 && x < 31 && y > 9 && y < 21) {
            double left = 1 + 0.02 * x - lattice.stock[row * lattice.columns + column];
            assertTrue(left >= -0.002, tool.name() + " too deep by " + -left);
            most = Math.max(most, left);
          }
        }
      }
      assertTrue(most <= 0.02, tool.name() + " leaves " + most);
      assertTrue(most >= 0.015, tool.name() + " goes nearer than needed: " + most);
      double way = 0;
      for (FaceRun run : runs) {
        way += run.u()[run.size() - 1] - run.u()[0];
      }
      assertTrue(way < 1.35 * 30 * 20 / stepover, tool.name() + " goes " + way + " mm");
    }
  }

  /** Rates down along the way are never over the plunge, and rapids stay over the panel's face. */
  @Test
  void moves_keepThePlunge_andEndAtSafeHeight() {
    FaceField faces = faces(x -> 1 + 0.3 * Math.abs(x - 20));
    List<ToolRun> runs = FacePlanner.plan(task(faces), List.of(), new Warnings());
    assertEquals(1, runs.size());
    List<Move> moves = runs.get(0).passes().get(0).moves();
    double x = moves.get(0).x();
    double y = moves.get(0).y();
    double depth = -4;
    for (Move move : moves) {
      double down = move.depth() - depth;
      double way = Math.sqrt(sq(move.x() - x) + sq(move.y() - y) + sq(down));
      if (move.kind() == Move.Kind.LINE && down > 0.01) {
        assertTrue(move.feedMmPerMin() * down / way <= 501, "down at " + move);
      }
      x = move.x();
      y = move.y();
      depth = move.depth();
    }
    assertEquals(-4, depth);
  }

  private static double sq(double a) {
    return a * a;
  }
}
