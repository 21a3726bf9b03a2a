package plyscape.plan;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import plyscape.bend.BentMoves;
import plyscape.job.Job;
import plyscape.machine.CuttingData;
import plyscape.machine.Move;
import plyscape.machine.Tool;
import plyscape.toolpath.task.Pass;
import plyscape.toolpath.task.ToolRun;

/**
 * Between the flat plan of paths and a panel as it lies: cutters whose stepdown is lowered so that
 * no bite is deeper than theirs where the panel is thicker, and runs with moves that follow the
 * panel. On a flat panel nothing changes. Immutable.
 */
final class PanelMoves {

  private final Landscape panel;
  private final Map<Tool, Tool> listed = new HashMap<>();
  private final List<Tool> planned;

  PanelMoves(Landscape panel) {
    this.panel = panel;
    Job job = panel.job();
    double stretch =
        panel.shape().flat()
            ? 1
            : panel.shape().bend().stretch(job.panel().widthMm(), job.panel().heightMm());
    planned =
        stretch == 1 ? job.tools() : job.tools().stream().map(t -> lowered(t, stretch)).toList();
  }

  private Tool lowered(Tool tool, double stretch) {
    CuttingData c = tool.cutting();
    Tool other =
        tool.with(
            new CuttingData(
                c.rpm(),
                c.feedMmPerMin(),
                c.plungeMmPerMin(),
                c.stepdownMm() / stretch,
                c.stepover(),
                c.thinFeedMmPerMin()));
    listed.put(other, tool);
    return other;
  }

  /** The job's cutters, in its order, as the flat plan may use them. */
  List<Tool> planned() {
    return planned;
  }

  /** A run of the flat plan as it is cut: by the listed cutter, along moves that are bent. */
  ToolRun cut(ToolRun flat) {
    Tool tool = listed.getOrDefault(flat.tool(), flat.tool());
    if (panel.shape().flat()) {
      return flat;
    }
    BentMoves bent = new BentMoves(panel.shape().bend(), panel.job().machine().safeHeightMm());
    double[] at = {0, 0, -panel.job().machine().safeHeightMm()};
    return new ToolRun(tool, flat.passes().stream().map(pass -> bent(pass, bent, at)).toList());
  }

  private static Pass bent(Pass pass, BentMoves bent, double[] at) {
    List<Move> moves = bent.of(at[0], at[1], at[2], pass.moves());
    if (!pass.moves().isEmpty()) {
      Move last = pass.moves().get(pass.moves().size() - 1);
      at[0] = last.x();
      at[1] = last.y();
      at[2] = last.depth();
    }
    return new Pass(pass.plyNumber(), pass.depthMm(), pass.stepdownFromMm(), moves, pass.kind());
  }
}
