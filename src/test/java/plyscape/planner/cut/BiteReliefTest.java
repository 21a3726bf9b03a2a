package plyscape.planner.cut;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.gcode.Program;
import plyscape.machine.CuttingData;
import plyscape.machine.Form;
import plyscape.machine.Move;
import plyscape.machine.Tool;
import plyscape.machine.Workshop;
import plyscape.simulate.Bite;
import plyscape.simulate.Verification;
import plyscape.toolpath.task.Pass;
import plyscape.toolpath.task.ToolRun;

class BiteReliefTest {

  private static final Tool TOOL =
      Workshop.END_MILL_3.with(new CuttingData(16_000, 1200, 300, 1, 0.45));

  /** Down in a hole that is there already, then sideways into wood that stands 1.8 mm high. */
  private static final List<Move> MOVES =
      List.of(
          Move.rapid(10, 10, -4),
          Move.rapid(10, 10, 1.7),
          Move.line(10, 10, 1.8, 300),
          Move.line(14, 10, 1.8, 1200),
          Move.arc(false, 16, 12, 1.8, 14, 12, 1200),
          Move.line(16, 15, 1.2, 1200),
          Move.rapid(16, 15, -4));

  private static ToolRun run(List<Move> moves) {
    return new ToolRun(TOOL, List.of(new Pass(3, 1.8, 0.8, moves)));
  }

  private static Program parsed(List<Move> moves) {
    List<Program.Block> blocks = new ArrayList<>();
    for (int i = 0; i < moves.size(); i++) {
      blocks.add(new Program.Block(i + 1, moves.get(i), true));
    }
    return new Program("a.nc", 0, 0, -4, blocks, List.of(), List.of());
  }

  private static double worst(List<Move> moves) {
    BiteRaster wood = new BiteRaster(30, 30);
    wood.start(10, 10, 0);
    wood.cut(Move.line(10, 10, 1.8, 300), TOOL.radiusMm(), 100);
    wood.start(10, 10, -4);
    double worst = 0;
    for (Move move : moves) {
      worst = Math.max(worst, wood.cut(move, TOOL.radiusMm(), 1.001));
    }
    return worst;
  }

  @Test
  void deepBite_isTakenInPartsThereAndBack() {
    assertTrue(worst(MOVES) > 5, "as planned it bites 1.8 mm");
    Bite bite = new Bite("a.nc", 4, 12, 10, 1.8, 1.8, 1);
    List<Move> softer = BiteRelief.softer(run(MOVES), parsed(MOVES), bite).passes().get(0).moves();
    // The last way lies beyond a diameter: the next round of simulation would name it.
    assertEquals(0, worst(softer.subList(0, softer.size() - 2)), 1e-9);
    assertEquals(MOVES.subList(3, 7), softer.subList(softer.size() - 4, softer.size()));
  }

  @Test
  void onABentPanel_theMoveIsFoundByItsPlaceAndSoftenedAtTheFlatPlansDepth() {
    // The panel lies 0.3 mm higher at X10, 0.1 at X14; the way between is split at X12.
    List<Move> bent = new ArrayList<>(MOVES);
    bent.set(1, Move.rapid(10, 10, 1.4));
    bent.set(2, Move.line(10, 10, 1.5, 300));
    bent.set(3, Move.line(12, 10, 1.6, 1200));
    bent.add(4, Move.line(14, 10, 1.7, 1200));
    WrittenMove second = WrittenMove.at(run(MOVES), parsed(bent), 5);
    assertEquals(3, second.index());
    assertEquals(0.1, second.deeperMm(), 1e-9);
    Bite bite = new Bite("a.nc", 4, 11, 10, 1.6, 1.6, 1);
    List<Move> softer = BiteRelief.softer(run(MOVES), parsed(bent), bite).passes().get(0).moves();
    assertEquals(0, worst(softer.subList(0, softer.size() - 2)), 1e-9);
    assertEquals(MOVES.subList(3, 7), softer.subList(softer.size() - 4, softer.size()));
  }

  /** The flank of a ball of 3 mm, 1.2 off its axis, meets wood 0.6 mm above the tip. */
  @Test
  void flankOfABall_isRaisedByTheDepthOfItsTip() {
    Tool ball =
        new Tool(
            "ball 3",
            new Form(Tool.Shape.BALL, 3, 12, 2, 0, 0, Tool.Spiral.UNSAID),
            TOOL.cutting());
    ToolRun run = new ToolRun(ball, List.of(new Pass(3, 1.8, 0.8, MOVES)));
    Bite bite = new Bite("a.nc", 4, 12, 11.2, 1.2, 1.1, 1);
    List<Move> softer = BiteRelief.softer(run, parsed(MOVES), bite).passes().get(0).moves();
    // Half of the bite less at first: the tip, not the flank, is 0.55 mm higher.
    assertEquals(1.8 - 0.55, softer.get(4).depth(), 1e-9);
    assertEquals(MOVES.subList(3, 7), softer.subList(softer.size() - 4, softer.size()));
  }

  @Test
  void wayDown_isNeverFasterThanThePlunge() {
    Bite bite = new Bite("a.nc", 4, 12, 10, 1.8, 1.8, 1);
    List<Move> softer = BiteRelief.softer(run(MOVES), parsed(MOVES), bite).passes().get(0).moves();
    Move from = Move.rapid(10, 10, -4);
    for (Move move : softer) {
      double drop = move.depth() - from.depth();
      double way = Math.hypot(Math.hypot(move.x() - from.x(), move.y() - from.y()), drop);
      if (move.kind() == Move.Kind.LINE && drop > 1e-9) {
        assertTrue(move.feedMmPerMin() * drop / way <= TOOL.plungeMmPerMin() + 1e-9);
      }
      from = move;
    }
  }

  @Test
  void rapidInWood_goesOverIt() {
    List<Move> moves =
        List.of(
            Move.rapid(10, 10, -4),
            Move.line(10, 10, 0.5, 300),
            Move.rapid(20, 10, 0.5),
            Move.line(24, 10, 0.5, 1200));
    var found =
        List.of(new Verification.Collision("a.nc", 3, 15, 10, 0.5, "rapid through stock: 0.5"));
    assertEquals(
        List.of(
            Move.rapid(10, 10, -4),
            Move.line(10, 10, 0.5, 300),
            Move.rapid(10, 10, -4),
            Move.rapid(20, 10, -4),
            Move.rapid(20, 10, -0.2),
            Move.line(20, 10, 0.5, 300),
            Move.line(24, 10, 0.5, 1200)),
        LiftedRapids.of(run(moves), parsed(moves), "a.nc", found, -4).passes().get(0).moves());
    assertNull(LiftedRapids.of(run(moves), parsed(moves), "b.nc", found, -4));
  }

  @Test
  void moveThatIsntThere_isLeft() {
    assertNull(
        BiteRelief.softer(run(MOVES), parsed(MOVES), new Bite("a.nc", 99, 12, 10, 1.8, 1.8, 1)));
  }
}
