package plyscape.toolpath;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import plyscape.fault.JobFault;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.machine.Machine;
import plyscape.machine.Tool;

/** From pockets and cutters to moves: the whole planning of the cutting. */
public final class PathPlanner {

  private PathPlanner() {}

  /** As {@link #plan(List, List, Machine, Box, PathOptions, Warnings)} with the usual options. */
  public static List<ToolRun> plan(
      List<PocketLevel> levels, List<Tool> tools, Machine machine, Box carved, Warnings warnings) {
    return plan(levels, tools, machine, carved, PathOptions.DEFAULT, warnings);
  }

  /**
   * The runs of the cutters, in cutting order: the largest first, each smaller one only for what the larger ones left.
   * Everything outside a level's pocket is wall, the border too. Cutters with nothing to do are left out. Faults when
   * there is something to cut and no flat cutter.
   *
   * @param levels pockets, panel mm, nested; those of depth 0 and those that show nowhere are passed over
   * @param tools as listed
   * @param machine limits
   * @param carved the carved area, which holds every pocket
   * @param options how paths are laid
   * @param warnings takes what the cutter list lacks
   */
  public static List<ToolRun> plan(
      List<PocketLevel> levels, List<Tool> tools, Machine machine, Box carved, PathOptions options, Warnings warnings) {
    List<PocketLevel> cut = levels.stream()
        .filter(level -> level.depthMm() > 0 && !level.pocket().isEmpty() && !level.exposed().isEmpty())
        .sorted(Comparator.comparingDouble(PocketLevel::depthMm))
        .toList();
    if (cut.isEmpty()) {
      return List.of();
    }
    List<Tool> flat = tools.stream()
        .filter(tool -> tool.shape() == Tool.Shape.FLAT)
        .sorted(Comparator.comparingDouble(Tool::diameterMm).reversed().thenComparing(Tool::name))
        .toList();
    if (flat.isEmpty()) {
      throw new JobFault("no flat end mill among the tools, and flat faces need one", "list a tool of shape: flat");
    }
    double smallest = flat.get(flat.size() - 1).radiusMm();
    Lattice lattice = Lattice.over(carved, smallest);
    List<LevelField> fields = IntStream.range(0, cut.size())
        .parallel()
        .mapToObj(k -> new LevelField(cut.get(k), new DistanceField(new PocketEdges(cut.get(k).pocket()), lattice)))
        .toList();
    // By level, then by cutter.
    List<List<List<Ring>>> walls = fields.stream()
        .parallel()
        .map(field -> flat.stream().map(tool -> ToolPlanner.walls(field, tool, tool == flat.get(flat.size() - 1))).toList())
        .toList();
    Stock stock = new Stock(lattice);
    ToolPlanner planner = new ToolPlanner(fields, stock, machine, options);
    List<ToolRun> runs = new ArrayList<>();
    double[] before = {};
    double[] start = {carved.minX(), carved.minY()};
    for (int t = 0; t < flat.size(); t++) {
      Tool tool = flat.get(t);
      Tool next = t + 1 < flat.size() ? flat.get(t + 1) : null;
      List<Pass> passes = planner.plan(tool, planner.reach(tool, of(walls, t)), before, next, start);
      if (!passes.isEmpty()) {
        runs.add(new ToolRun(tool, passes));
        before = append(before, tool.radiusMm());
      }
    }
    return runs;
  }

  private static List<List<Ring>> of(List<List<List<Ring>>> walls, int tool) {
    return walls.stream().map(level -> level.get(tool)).toList();
  }

  private static double[] append(double[] values, double value) {
    double[] result = java.util.Arrays.copyOf(values, values.length + 1);
    result[values.length] = value;
    return result;
  }
}
