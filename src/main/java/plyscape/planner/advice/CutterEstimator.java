package plyscape.planner.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import plyscape.job.Job;
import plyscape.machine.Tool;
import plyscape.plan.CutterEstimate;
import plyscape.plan.Landscape;
import plyscape.plan.ToolProgram;
import plyscape.toolpath.bound.CutterShares;
import plyscape.toolpath.task.PocketLevel;

/**
 * Estimates how long a plan would take with a larger cutter than any that is listed, without
 * planning it. The lower bound says which areas the cutter would take from the others; it is
 * thought to come as near to its own bound as the largest cutter of the plan did, less a tenth for
 * each time that it is as large again, as it turns more often for its size. The others keep their
 * share of what is left to them.
 *
 * <p>Against plans with the cutter (src/bench/README.md) it was within 15 %, on whole sample panels
 * within 5 %. Smaller cutters aren't estimated: what they would save lies in narrow places, where
 * areas say little.
 */
public final class CutterEstimator {

  /** Cells of 0.2 to 0.4 mm: seven to the largest listed cutter, where those allow. */
  private static final double CELLS_PER_CUTTER = 7;

  private static final double LEAST_CELL_MM = 0.2;
  private static final double MOST_CELL_MM = 0.4;

  /** More time a mm2 for a cutter as large again, and at most. */
  private static final double TURNING_SHARE = 0.1;

  private static final double MOST_TURNING = 1.0 / 6;

  private final List<Tool> listed;
  private final List<Tool> larger;
  private final CutterShares shares;

  private CutterEstimator(List<Tool> listed, List<Tool> larger, CutterShares shares) {
    this.listed = listed;
    this.larger = larger;
    this.shares = shares;
  }

  /** Prepares for the cutters that a panel could do with; the slow part. */
  public static CutterEstimator of(Landscape panel, List<PocketLevel> levels) {
    Job job = panel.job();
    double rapid = job.machine().rapidMmPerMin();
    List<Tool> listed = job.tools().stream().map(tool -> held(tool, rapid)).toList();
    double largest =
        listed.stream()
            .filter(tool -> tool.shape() == Tool.Shape.FLAT)
            .mapToDouble(Tool::diameterMm)
            .max()
            .orElse(Double.POSITIVE_INFINITY);
    List<Tool> larger =
        levels.isEmpty() || Double.isInfinite(largest)
            ? List.of()
            : CommonCutters.lackedBy(listed, panel.deepestCutMm()).stream()
                .filter(tool -> tool.diameterMm() > largest)
                .toList();
    if (larger.isEmpty()) {
      return new CutterEstimator(listed, larger, null);
    }
    double cell = Math.max(LEAST_CELL_MM, Math.min(MOST_CELL_MM, largest / CELLS_PER_CUTTER));
    List<Tool> all = Stream.concat(listed.stream(), larger.stream()).toList();
    return new CutterEstimator(
        listed, larger, CutterShares.of(levels, all, panel.tiling().carved(), cell));
  }

  private static Tool held(Tool tool, double rapidMmPerMin) {
    return tool.with(tool.cutting().atMost(rapidMmPerMin));
  }

  /** An estimate for each of those cutters, the smallest first; none where nothing is cut. */
  public List<CutterEstimate> of(List<ToolProgram> programs) {
    double[] seconds = new double[listed.size()];
    boolean[] used = new boolean[listed.size() + larger.size()];
    for (ToolProgram program : programs) {
      for (int t = 0; t < listed.size(); t++) {
        if (listed.get(t).name().equals(program.tool().name())) {
          used[t] = true;
          seconds[t] += program.timeS();
        }
      }
    }
    List<CutterEstimate> estimates = new ArrayList<>();
    if (larger.isEmpty() || programs.isEmpty()) {
      return estimates;
    }
    double[] now = shares.seconds(used);
    for (int c = 0; c < larger.size(); c++) {
      boolean[] chosen = used.clone();
      chosen[listed.size() + c] = true;
      double total = totalS(larger.get(c), shares.seconds(chosen), now, seconds);
      estimates.add(new CutterEstimate(larger.get(c), total));
    }
    estimates.sort(Comparator.comparingDouble(estimate -> estimate.tool().diameterMm()));
    return List.copyOf(estimates);
  }

  /**
   * The time with one cutter more.
   *
   * @param then bound of each cutter with it, its own at its place
   * @param now bound of each cutter without it
   * @param seconds of each listed cutter
   */
  private double totalS(Tool more, double[] then, double[] now, double[] seconds) {
    int largest = -1;
    double total = 0;
    for (int t = 0; t < listed.size(); t++) {
      if (now[t] > 0 && (largest < 0 || diameter(t) > diameter(largest))) {
        largest = t;
      }
      total += now[t] > 0 ? seconds[t] * Math.min(1, then[t] / now[t]) : seconds[t];
    }
    if (largest < 0) {
      return total;
    }
    double timesLarger = more.diameterMm() / diameter(largest) - 1;
    double turning = 1 + Math.min(MOST_TURNING, TURNING_SHARE * timesLarger);
    double own = then[listed.size() + larger.indexOf(more)];
    return total + own * seconds[largest] / now[largest] * turning;
  }

  private double diameter(int tool) {
    return listed.get(tool).diameterMm();
  }
}
