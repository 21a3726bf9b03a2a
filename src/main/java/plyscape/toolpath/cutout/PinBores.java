package plyscape.toolpath.cutout;

import java.util.ArrayList;
import java.util.List;
import plyscape.machine.Machine;
import plyscape.machine.Move;
import plyscape.machine.Tool;

/**
 * Holes bored by a helix: rings from the inside out, each down to the bottom with a flat round
 * there, counter-clockwise, which is climb cutting in a hole.
 */
public final class PinBores {

  /** Above the face rapids end here, mm. */
  private static final double TOUCH_MM = 0.2;

  /** The innermost ring is so much smaller than the cutter's radius that no core stays. */
  private static final double CORE = 0.9;

  private final double diameterMm;
  private final double depthMm;
  private final Tool tool;
  private final Machine machine;

  /**
   * Prepares.
   *
   * @param tool flat, narrower than the hole
   */
  public PinBores(double diameterMm, double depthMm, Tool tool, Machine machine) {
    if (!(tool.diameterMm() < diameterMm) || !(depthMm > 0)) {
      throw new IllegalArgumentException(
          "no hole of " + diameterMm + " mm with a cutter of " + tool.diameterMm());
    }
    this.diameterMm = diameterMm;
    this.depthMm = depthMm;
    this.tool = tool;
    this.machine = machine;
  }

  /** The moves for holes at places x, y, in their order. */
  public List<Move> moves(List<double[]> at) {
    List<Move> out = new ArrayList<>();
    double safe = -machine.safeHeightMm();
    for (double[] place : at) {
      for (double radius : radii()) {
        double x = place[0] + radius;
        out.add(Move.rapid(x, place[1], safe));
        out.add(Move.rapid(x, place[1], -TOUCH_MM));
        out.add(Move.line(x, place[1], 0, tool.plungeMmPerMin()));
        helix(place[0], place[1], radius, out);
        // Off the wall before the way up.
        out.add(Move.line(place[0], place[1], depthMm, tool.feedMmPerMin()));
        out.add(Move.rapid(place[0], place[1], safe));
      }
    }
    return out;
  }

  private List<Double> radii() {
    double last = (diameterMm - tool.diameterMm()) / 2;
    double first = Math.min(last, CORE * tool.radiusMm());
    List<Double> radii = new ArrayList<>(List.of(first));
    int more = (int) Math.ceil((last - first) / tool.stepoverMm() - 1e-9);
    for (int k = 1; k <= more; k++) {
      radii.add(first + (last - first) * k / more);
    }
    return radii;
  }

  private void helix(double cx, double cy, double radius, List<Move> out) {
    double round = 2 * Math.PI * radius;
    double steepest = round * Math.tan(Math.toRadians(machine.rampDegrees()));
    // Depths are rounded to 0.001: a turn a little flatter stays within angle and stepdown.
    double most = Math.max(0.002, Math.min(tool.stepdownMm(), steepest) - 0.002);
    int turns = (int) Math.max(1, Math.ceil(depthMm / most));
    double pitch = depthMm / turns;
    double feed = Math.min(slotFeed(), tool.plungeMmPerMin() * Math.hypot(round, pitch) / pitch);
    for (int half = 1; half <= 2 * turns; half++) {
      out.add(half(cx, cy, radius, half, depthMm * half / (2 * turns), feed));
    }
    for (int half = 1; half <= 2; half++) {
      out.add(half(cx, cy, radius, half, depthMm, slotFeed()));
    }
  }

  private static Move half(
      double cx, double cy, double radius, int half, double depth, double feed) {
    double x = half % 2 == 1 ? cx - radius : cx + radius;
    return Move.arc(false, x, cy, depth, cx, cy, feed);
  }

  private double slotFeed() {
    return machine.slotFeed() * tool.feedMmPerMin();
  }
}
