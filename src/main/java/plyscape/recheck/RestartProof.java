package plyscape.recheck;

import java.util.ArrayList;
import java.util.List;
import plyscape.fault.VerifyFault;
import plyscape.gcode.Program;
import plyscape.simulate.Cut;
import plyscape.simulate.HeightField;
import plyscape.simulate.Simulator;
import plyscape.simulate.Verification;
import plyscape.text.Numbers;
import plyscape.text.Template;

/**
 * Proves by simulation that a program which takes a stopped run up again makes the same panel as
 * the run would have made without the stop, and hits nothing on its way.
 */
public final class RestartProof {

  private static final double CELL_MM = 0.1;

  /** Cells that differ by more than this count as different, mm. */
  private static final double DEPTH_MM = 0.01;

  /** Different cells below this are rounding along walls, mm2. */
  private static final double ALLOWED_MM2 = 0.25;

  private static final String FAILED = "the restart failed its simulation and was not written: ";
  private static final String HELP = "choose an earlier line";

  private RestartProof() {}

  /**
   * Cuts up to the stop and on with the new program, and the same without the stop.
   *
   * @param stop where the run stopped: this line hasn't been run
   * @throws VerifyFault if the new program collides or the panels differ
   */
  public static void require(WrittenPlan plan, StopPoint stop, Program resumed) {
    List<Cut> whole = plan.cuts().subList(0, stop.program() + 1);
    HeightField wanted = HeightField.uncut(plan.setup(CELL_MM).panel(), CELL_MM);
    Simulator.cut(plan.setup(CELL_MM), whole, wanted);
    List<Cut> cuts =
        new ArrayList<>(new StopPoint(stop.program(), stop.line() - 1).run(plan.cuts()));
    cuts.add(new Cut(resumed, plan.programs().get(stop.program()).tool()));
    HeightField made = HeightField.uncut(plan.setup(CELL_MM).panel(), CELL_MM);
    Simulator.cut(plan.setup(CELL_MM), cuts, made).stream()
        .filter(c -> c.file().equals(resumed.file()))
        .findFirst()
        .ifPresent(RestartProof::refuse);
    double area = differentMm2(wanted, made);
    if (area > ALLOWED_MM2) {
      throw new VerifyFault(
          FAILED + Numbers.fixed(area, 2) + " mm2 would differ from the plan", HELP);
    }
  }

  private static void refuse(Verification.Collision c) {
    throw new VerifyFault(
        Template.fill("%sline %s, X%.2f Y%.2f: %s", FAILED, c.line(), c.x(), c.y(), c.what()),
        HELP);
  }

  private static double differentMm2(HeightField wanted, HeightField made) {
    int different = 0;
    for (int i = 0; i < wanted.depth().length; i++) {
      different += Math.abs(wanted.depth()[i] - made.depth()[i]) > DEPTH_MM ? 1 : 0;
    }
    return different * wanted.cellAreaMm2();
  }
}
