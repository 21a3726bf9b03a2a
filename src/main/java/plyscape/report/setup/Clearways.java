package plyscape.report.setup;

import java.util.ArrayList;
import java.util.List;
import plyscape.gcode.ProgramFrame;
import plyscape.machine.Machine;
import plyscape.machine.Tool;
import plyscape.plan.MotionSpan;
import plyscape.plan.PanelPlan;
import plyscape.plan.ToolProgram;
import plyscape.text.Numbers;

/**
 * Where the cutters go and where nothing may stand, panel mm. Immutable.
 *
 * @param way of all tips, from the program's zero
 * @param swept what the widest parts of the cutters pass over below safe height
 * @param frame of the programs
 * @param widthMm panel's size in X
 * @param heightMm panel's size in Y
 */
record Clearways(
    MotionSpan way, MotionSpan swept, ProgramFrame frame, double widthMm, double heightMm) {

  /** Room for a clamp's tip at an edge; less is as good as none. */
  private static final double LEAST_CLAMP_MM = 3;

  /** Of a panel's programs; without any, the zero alone. */
  static Clearways of(PanelPlan plan) {
    double width = plan.job().panel().widthMm();
    double height = plan.job().panel().heightMm();
    Machine machine = plan.job().machine();
    ProgramFrame frame = ProgramFrame.of(machine, width, height, plan.landscape().thicknessMm());
    double safe = -machine.safeHeightMm();
    MotionSpan start =
        new MotionSpan(frame.zeroX(), frame.zeroY(), frame.zeroX(), frame.zeroY(), safe, safe);
    List<MotionSpan> ways = new ArrayList<>(List.of(start));
    List<MotionSpan> swept = new ArrayList<>();
    for (ToolProgram program : plan.programs()) {
      ways.add(program.way());
      swept.add(wider(program.low(), widestMm(program.tool()) / 2));
    }
    return new Clearways(
        MotionSpan.around(ways),
        swept.isEmpty() ? start : MotionSpan.around(swept),
        frame,
        width,
        height);
  }

  /** The widest of what turns near the panel, as far as it is known. */
  private static double widestMm(Tool tool) {
    return Math.max(tool.diameterMm(), Math.max(tool.shankDiameterMm(), tool.holderDiameterMm()));
  }

  private static MotionSpan wider(MotionSpan span, double by) {
    return new MotionSpan(
        span.minX() - by,
        span.minY() - by,
        span.maxX() + by,
        span.maxY() + by,
        span.minDepth(),
        span.maxDepth());
  }

  double programX(double panelX) {
    return frame.programX(panelX);
  }

  double programY(double panelY) {
    return frame.programY(panelY);
  }

  double programZ(double depth) {
    return frame.programZ(depth);
  }

  /** Free edges: left, right, below, above; negative where the cutters pass over the edge. */
  double[] free() {
    return new double[] {
      swept.minX(), widthMm - swept.maxX(), swept.minY(), heightMm - swept.maxY()
    };
  }

  /** How much of each edge is free for clamps, in words. */
  String clamps() {
    String[] names = {"left", "right", "near", "far"};
    double[] free = free();
    List<String> parts = new ArrayList<>();
    boolean none = true;
    for (int side = 0; side < free.length; side++) {
      parts.add(names[side] + " " + Numbers.fixed(Math.max(0, free[side]), 1));
      none &= free[side] < LEAST_CLAMP_MM;
    }
    return "free edges "
        + String.join(", ", parts)
        + " mm"
        + (none ? ": no room for clamps, hold it from below or from its sides" : "");
  }
}
