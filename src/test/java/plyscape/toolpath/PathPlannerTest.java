package plyscape.toolpath;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.machine.Machine;
import plyscape.machine.Move;
import plyscape.machine.Tool;
import plyscape.machine.Workshop;
import plyscape.toolpath.task.Pass;
import plyscape.toolpath.task.PocketLevel;
import plyscape.toolpath.task.ToolRun;

/** Plans seeded panels and cuts the moves again by brute force. */
class PathPlannerTest {

  static final Machine MACHINE = Workshop.ROUTER;

  static Tool tool(double diameter, double stepdown, double stepover) {
    return PathTrial.tool(diameter, 1800, stepdown, stepover);
  }

  @Test
  void randomTerrains_noGougeNoRapidThroughStockNoBiteOverTheStepdownAllReachableCut() {
    for (int seed = 0; seed < 25; seed++) {
      CutCheck check = planAndCut(seed, 0.1);
      String where = "seed " + seed + " " + check.faults() + " " + check.notes;
      assertEquals(0, check.gougedMm2 + check.rapidThroughMm2 + check.outsideMm, where);
      assertTrue(check.uncutMm2 < 0.05, where);
      assertTrue(check.overBiteMm <= 0.001, where);
    }
  }

  /** A panel, its cutters and its plan from a seed, cut by brute force. */
  static CutCheck planAndCut(long seed, double cellMm) {
    Random random = new Random(seed);
    Box carved = new Box(3, 4, 3 + 14 + random.nextInt(12), 4 + 14 + random.nextInt(12));
    List<PocketLevel> levels =
        RandomPockets.make(
            seed, carved, 3 + random.nextInt(4), 0.6 + random.nextDouble(), 5 + random.nextInt(8));
    List<Tool> tools = new ArrayList<>();
    double diameter = 1 + random.nextDouble();
    for (int t = 1 + random.nextInt(3); t > 0; t--) {
      tools.add(tool(diameter, 0.8 + random.nextDouble() * 2, 0.3 + random.nextDouble() * 0.4));
      diameter *= 1.6 + random.nextDouble();
    }
    List<ToolRun> runs = PathPlanner.plan(levels, tools, MACHINE, carved, new Warnings());
    CutCheck check = new CutCheck(carved, cellMm);
    check.run(runs);
    check.compare(levels, tools);
    return check;
  }

  /** Tries seeds by hand: first, end, cell. */
  public static void main(String[] args) {
    for (int seed = Integer.parseInt(args[0]); seed < Integer.parseInt(args[1]); seed++) {
      CutCheck check = planAndCut(seed, Double.parseDouble(args[2]));
      if (!check.faults().isEmpty()) {
        System.out.println("seed " + seed + ": " + check.faults());
        check.notes.forEach(note -> System.out.println("    " + note));
      }
    }
  }

  @Test
  void sameInput_sameMoves() {
    Box carved = new Box(3, 3, 25, 25);
    List<PocketLevel> levels = RandomPockets.make(5, carved, 4, 0.9, 8);
    List<Tool> tools = List.of(tool(3, 2, 0.45), tool(1.5, 1, 0.45));
    List<ToolRun> first = PathPlanner.plan(levels, tools, MACHINE, carved, new Warnings());
    assertFalse(first.isEmpty());
    assertEquals(first, PathPlanner.plan(levels, tools, MACHINE, carved, new Warnings()));
  }

  @Test
  void runs_startAndEndAtSafeHeight_andPassesGoOnFromEachOther() {
    Box carved = new Box(3, 3, 25, 25);
    List<PocketLevel> levels = RandomPockets.make(6, carved, 4, 0.9, 8);
    for (ToolRun run :
        PathPlanner.plan(levels, List.of(tool(2, 1.2, 0.45)), MACHINE, carved, new Warnings())) {
      List<Move> moves = run.moves();
      assertEquals(-4, moves.get(0).depth());
      assertEquals(-4, moves.get(moves.size() - 1).depth());
      for (Pass pass : run.passes()) {
        double deepest = pass.moves().stream().mapToDouble(Move::depth).max().orElseThrow();
        assertEquals(pass.depthMm(), deepest, 1e-12);
      }
    }
  }

  @Test
  void pieces_ofOnePlaceAreCutDownToItsFloor_beforeTheNextPlace() {
    // Two pockets far apart, each of three levels: six pieces of work, but one way between the two.
    Box carved = new Box(0, 0, 80, 20);
    GeometryFactory factory = new GeometryFactory();
    List<PocketLevel> levels = new ArrayList<>();
    for (int k = 0; k < 3; k++) {
      Polygon[] both = new Polygon[2];
      for (int side = 0; side < 2; side++) {
        both[side] =
            (Polygon)
                factory.toGeometry(
                    new Envelope(2 + k + 60 * side, 18 - k + 60 * side, 2 + k, 18 - k));
      }
      MultiPolygon pocket = factory.createMultiPolygon(both);
      levels.add(new PocketLevel(k + 2, 0.9 * (k + 1), pocket, pocket));
    }
    List<ToolRun> runs =
        PathPlanner.plan(levels, List.of(tool(3, 1, 0.45)), MACHINE, carved, new Warnings());
    List<Move> moves = runs.get(0).moves();
    int crossings = 0;
    for (int i = 1; i < moves.size(); i++) {
      crossings += moves.get(i - 1).x() < 40 != moves.get(i).x() < 40 ? 1 : 0;
    }
    assertEquals(1, crossings);
  }
}
