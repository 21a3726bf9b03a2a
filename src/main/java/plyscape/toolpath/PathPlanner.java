package plyscape.toolpath;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import plyscape.fault.JobFault;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.machine.Machine;
import plyscape.machine.Tool;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.PocketEdges;
import plyscape.toolpath.ring.LevelField;
import plyscape.toolpath.task.PathEvents;
import plyscape.toolpath.task.PathOptions;
import plyscape.toolpath.task.PocketLevel;
import plyscape.toolpath.task.ToolRun;

/** From pockets and cutters to moves: the whole planning of the cutting. */
public final class PathPlanner {

  private PathPlanner() {}

  /**
   * As {@link #plan(List, List, Machine, Box, PathOptions, Warnings)} with what the machine's
   * settings say.
   */
  public static List<ToolRun> plan(
      List<PocketLevel> levels, List<Tool> tools, Machine machine, Box carved, Warnings warnings) {
    return plan(levels, tools, machine, carved, PathOptions.of(machine), warnings);
  }

  /**
   * As {@link #plan(List, List, Machine, Box, PathOptions, PathEvents, Warnings)}, but nobody
   * listens.
   */
  public static List<ToolRun> plan(
      List<PocketLevel> levels,
      List<Tool> tools,
      Machine machine,
      Box carved,
      PathOptions options,
      Warnings warnings) {
    return plan(levels, tools, machine, carved, options, PathEvents.NONE, warnings);
  }

  /**
   * The runs of the cutters, in cutting order: the largest first, each smaller one only for what
   * the larger ones left. Everything outside a level's pocket is wall, the border too. Cutters that
   * don't pay are left out, with a warning that says by how much ({@link ToolChoice}). Faults when
   * there is something to cut and no flat cutter.
   *
   * @param levels pockets, panel mm, nested; those of depth 0 and those that show nowhere are
   *     passed over
   * @param tools as listed
   * @param machine limits
   * @param carved the carved area, which holds every pocket
   * @param options how paths are laid
   * @param beside hears how it gets on
   * @param warnings takes what the cutter list lacks
   */
  public static List<ToolRun> plan(
      List<PocketLevel> levels,
      List<Tool> tools,
      Machine machine,
      Box carved,
      PathOptions options,
      PathEvents beside,
      Warnings warnings) {
    List<PocketLevel> cut =
        levels.stream()
            .filter(
                level ->
                    level.depthMm() > 0 && !level.pocket().isEmpty() && !level.exposed().isEmpty())
            .sorted(Comparator.comparingDouble(PocketLevel::depthMm))
            .toList();
    if (cut.isEmpty()) {
      return List.of();
    }
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
    double smallest = flat.get(flat.size() - 1).radiusMm();
    Lattice lattice = Lattice.over(carved, smallest);
    List<LevelField> fields =
        IntStream.range(0, cut.size())
            .parallel()
            .mapToObj(
                k ->
                    new LevelField(
                        cut.get(k),
                        new DistanceField(new PocketEdges(cut.get(k).pocket()), lattice)))
            .toList();
    return new ToolChoice(
            fields, lattice, flat, machine, options, new double[] {carved.minX(), carved.minY()})
        .runs(beside, warnings);
  }
}
