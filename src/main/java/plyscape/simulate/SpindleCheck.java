package plyscape.simulate;

import java.util.List;
import java.util.Optional;
import plyscape.gcode.Program;
import plyscape.machine.Machine;
import plyscape.machine.MotionModel;
import plyscape.simulate.stroke.Stroke;
import plyscape.text.Template;

/**
 * Whether the spindle has had its time to come up to speed when the cutter first touches wood
 * (src/contract.md, section 14): the time that the moves since it was switched on take.
 */
final class SpindleCheck {

  /** Times are those of a model; so much short is no fault, s. */
  private static final double SLACK_S = 0.05;

  private SpindleCheck() {}

  /**
   * The fault, if there is one; every time that the spindle is switched on is looked at.
   *
   * @param firstContact index of the first stroke that cut wood, -1 when none did
   */
  static Optional<Verification.Collision> of(
      Machine machine, Cut cut, List<Stroke> strokes, int firstContact) {
    if (machine.spinUpS() <= 0 || firstContact < 0) {
      return Optional.empty();
    }
    Program p = cut.program();
    double[] seconds =
        new MotionModel(machine).times(p.startX(), p.startY(), p.startDepth(), p.moves()).moveS();
    int stroke = 0;
    double since = 0;
    boolean waiting = true;
    for (int b = 0; b < p.blocks().size(); b++) {
      Program.Block block = p.blocks().get(b);
      while (stroke < strokes.size() && strokes.get(stroke).line() < block.line()) {
        stroke++;
      }
      if (!block.spindleOn()) {
        since = 0;
        waiting = true;
        continue;
      }
      boolean touches =
          stroke < strokes.size()
              && stroke >= firstContact
              && (stroke == firstContact || deep(strokes, stroke));
      if (waiting && touches) {
        if (since < machine.spinUpS() - SLACK_S) {
          return Optional.of(fault(machine, cut, strokes.get(stroke), since));
        }
        waiting = false;
      }
      since += seconds[b];
    }
    return Optional.empty();
  }

  /** After a stop any move below the face may meet wood. */
  private static boolean deep(List<Stroke> strokes, int index) {
    return strokes.get(index).deepestTip() > 0;
  }

  private static Verification.Collision fault(
      Machine machine, Cut cut, Stroke stroke, double since) {
    return new Verification.Collision(
        cut.program().file(),
        stroke.line(),
        stroke.ends().x0(),
        stroke.ends().y0(),
        stroke.ends().z0(),
        Template.fill(
            "cuts %.2f s after the spindle was switched on, which takes %.1f s to its speed",
            since, machine.spinUpS()));
  }
}
