package plyscape.toolpath;

import java.util.Comparator;
import java.util.List;
import plyscape.fault.JobFault;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.machine.Machine;
import plyscape.machine.Tool;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.PocketEdges;
import plyscape.toolpath.ring.LevelField;
import plyscape.toolpath.task.CutTask;
import plyscape.toolpath.task.PathEvents;
import plyscape.toolpath.task.PocketLevel;
import plyscape.toolpath.task.ToolRun;

/** From pockets and cutters to moves: the whole planning of the cutting. */
public final class PathPlanner {

  private PathPlanner() {}

  /** As {@link #plan(CutTask, PathEvents, Warnings)}, as the machine's settings say. */
  public static List<ToolRun> plan(
      List<PocketLevel> levels, List<Tool> tools, Machine machine, Box carved, Warnings warnings) {
    return plan(CutTask.of(levels, tools, machine, carved), PathEvents.NONE, warnings);
  }

  /**
   * The runs of the cutters, in cutting order: the largest first, each smaller one only for what
   * the larger ones left. Everything outside a level's pocket is wall, the border too. Cutters that
   * don't pay are left out, with a warning that says by how much ({@link ToolChoice}). Faults when
   * there is something to cut and no flat cutter.
   *
   * @param beside hears how it gets on
   * @param warnings takes what the cutter list lacks
   */
  public static List<ToolRun> plan(CutTask task, PathEvents beside, Warnings warnings) {
    List<PocketLevel> cut =
        task.levels().stream()
            .filter(
                level ->
                    level.depthMm() > 0 && !level.pocket().isEmpty() && !level.exposed().isEmpty())
            .sorted(Comparator.comparingDouble(PocketLevel::depthMm))
            .toList();
    if (cut.isEmpty()) {
      return List.of();
    }
    List<Tool> flat = flat(task.tools());
    Lattice lattice = Lattice.over(task.carved(), flat.get(flat.size() - 1).radiusMm());
    List<LevelField> fields =
        cut.stream()
            .parallel()
            .map(
                level ->
                    new LevelField(
                        level, new DistanceField(new PocketEdges(level.pocket()), lattice)))
            .toList();
    double[] start = {task.carved().minX(), task.carved().minY()};
    return new ToolChoice(fields, lattice, flat, task.machine(), task.options(), start)
        .runs(beside, warnings);
  }

  /** The flat cutters, largest first. */
  private static List<Tool> flat(List<Tool> tools) {
    List<Tool> flat =
        tools.stream()
            .filter(tool -> tool.shape() == Tool.Shape.FLAT)
            .sorted(
                Comparator.comparingDouble(Tool::diameterMm).reversed().thenComparing(Tool::name))
            .toList();
    if (flat.isEmpty()) {
      throw new JobFault(
          "no flat end mill among the tools, and flat faces need one",
          "list a tool of shape: flat");
    }
    return flat;
  }
}
