package plyscape.toolpath.cutout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import plyscape.fault.JobFault;
import plyscape.machine.Machine;
import plyscape.machine.Move;
import plyscape.machine.Tool;
import plyscape.machine.Workshop;
import plyscape.toolpath.task.Pass;

/** Closed forms of lengths, depths and angles. */
class CutoutTest {

  private static final GeometryFactory MM = new GeometryFactory();
  private static final Tool TOOL = Workshop.END_MILL_3;
  private static final Machine MACHINE = Workshop.ROUTER;

  private static Polygon square(double side) {
    return (Polygon) MM.toGeometry(new Envelope(20, 20 + side, 20, 20 + side));
  }

  @Test
  void path_aroundASquare_hasItsLength() {
    OutlinePath path = OutlinePath.around(square(50), 1.6, true);
    assertEquals(200 + 2 * Math.PI * 1.6, path.lengthMm(), 0.02);
    double[] start = path.point(0);
    double[] further = path.point(10);
    assertEquals(10, Math.hypot(further[0] - start[0], further[1] - start[1]), 1e-9);
  }

  @Test
  void climbing_goesClockwiseAroundThePiece() {
    Polygon piece = square(50);
    for (boolean clockwise : new boolean[] {true, false}) {
      OutlinePath path = OutlinePath.around(piece, 1.6, clockwise);
      double area = 0;
      for (int i = 0; i + 1 < path.x().length; i++) {
        area += path.x()[i] * path.y()[i + 1] - path.x()[i + 1] * path.y()[i];
      }
      assertEquals(clockwise, area < 0);
    }
  }

  @Test
  void tabs_lieOnStraightStretchesAndApart() {
    OutlinePath path = OutlinePath.around(square(50), 1.6, true);
    List<Double> tabs = TabSpots.of(path, 4, 9);
    assertEquals(4, tabs.size());
    for (int i = 0; i < 4; i++) {
      double[] a = path.point(tabs.get(i) - 4.5);
      double[] b = path.point(tabs.get(i) + 4.5);
      assertEquals(9, Math.hypot(b[0] - a[0], b[1] - a[1]), 1e-9);
      assertTrue(i == 0 || tabs.get(i) - tabs.get(i - 1) > 25);
    }
  }

  @Test
  void tabLongerThanASide_isAFaultWithTheLongestSide() {
    JobFault fault =
        assertThrows(
            JobFault.class, () -> TabSpots.of(OutlinePath.around(square(8), 1.6, true), 2, 13));
    assertTrue(fault.getMessage().contains("8.0 mm"), fault.getMessage());
  }

  @Test
  void rounds_reachTheDepthInStepsAndLeaveTheTabs() {
    OutlineForm form = new OutlineForm(9.4, 0.1, 4, 6, 7.6);
    OutlineCut cut = new OutlineCut(square(50), form, TOOL, MACHINE);
    List<Pass> passes = cut.passes(9);
    double from = 0;
    for (Pass pass : passes) {
      assertTrue(pass.depthMm() - from <= TOOL.stepdownMm() + 1e-9);
      from = pass.depthMm();
    }
    assertEquals(9.4, from, 1e-12);
    List<Move> last = passes.get(passes.size() - 1).moves();
    assertEquals(-MACHINE.safeHeightMm(), last.get(last.size() - 1).depth());
    OutlinePath path = OutlinePath.around(square(50), 1.6, true);
    for (double at : TabSpots.of(path, 4, 9)) {
      double[] tab = path.point(at);
      double deepest =
          passes.stream()
              .flatMap(pass -> pass.moves().stream())
              .filter(m -> Math.hypot(m.x() - tab[0], m.y() - tab[1]) < 4.4)
              .mapToDouble(Move::depth)
              .max()
              .orElse(0);
      assertTrue(deepest <= 7.6 + 1e-9, "wood of the tab is cut to " + deepest);
    }
    // A ring of kerf: closed form of the area between two rounded squares.
    double outer = 2500 + 200 * 3.1 + Math.PI * 3.1 * 3.1;
    double inner = 2500 + 200 * 0.1 + Math.PI * 0.1 * 0.1;
    assertEquals(outer - inner, cut.kerf().getArea(), 0.05);
  }

  @Test
  void ramps_areNoSteeperThanTheMachinesAngle() {
    OutlineCut cut = new OutlineCut(square(50), new OutlineForm(5, 0.1, 0, 6, 1), TOOL, MACHINE);
    double x = 0;
    double y = 0;
    double depth = -MACHINE.safeHeightMm();
    for (Pass pass : cut.passes(9)) {
      for (Move move : pass.moves()) {
        double run = Math.hypot(move.x() - x, move.y() - y);
        if (move.kind() == Move.Kind.LINE && move.depth() > depth && depth >= 0) {
          assertTrue(
              Math.toDegrees(Math.atan2(move.depth() - depth, run)) <= MACHINE.rampDegrees());
          double share = (move.depth() - depth) / Math.hypot(run, move.depth() - depth);
          assertTrue(move.feedMmPerMin() * share <= TOOL.plungeMmPerMin() + 1e-9);
        }
        x = move.x();
        y = move.y();
        depth = move.depth();
      }
    }
  }

  @Test
  void bore_isAHelixToTheBottomWithARoundThere() {
    PinBores bores = new PinBores(6, 5, TOOL, MACHINE);
    List<Move> moves = bores.moves(List.of(new double[] {10, 12}));
    double reach = 0;
    int flat = 0;
    for (Move move : moves) {
      if (move.isArc()) {
        double radius = Math.hypot(move.x() - 10, move.y() - 12);
        reach = Math.max(reach, radius);
        flat += move.depth() == 5 && radius > 1.49 ? 1 : 0;
        assertEquals(10, move.centreX());
        assertEquals(12, move.centreY());
      }
    }
    assertEquals(1.5, reach, 1e-12);
    assertTrue(flat >= 2, "a full round at the bottom");
    assertThrows(IllegalArgumentException.class, () -> new PinBores(3, 5, TOOL, MACHINE));
  }
}
