package plyscape.planner.cut;

import java.util.List;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import plyscape.machine.Tool;
import plyscape.plan.CutterEstimate;
import plyscape.plan.Landscape;
import plyscape.plan.Progress;
import plyscape.plan.ToolProgram;
import plyscape.planner.advice.CutterEstimator;
import plyscape.toolpath.bound.LowerBound;
import plyscape.toolpath.task.PathEvents;
import plyscape.toolpath.task.PocketLevel;
import plyscape.toolpath.task.ToolRun;

/**
 * What is done while paths are planned, which leaves a processor idle for much of the time: the
 * bound, what other cutters would save, what the listener does with the regions, the first cutter's
 * program.
 */
final class BackgroundWork implements PathEvents {

  private final Landscape regions;
  private final List<PocketLevel> levels;
  private final FirstProgram first;
  private final Progress progress;
  private ForkJoinTask<Double> bound;
  private ForkJoinTask<CutterEstimator> estimator;

  BackgroundWork(
      Landscape regions, List<PocketLevel> levels, FirstProgram first, Progress progress) {
    this.regions = regions;
    this.levels = levels;
    this.first = first;
    this.progress = progress;
  }

  @Override
  public void spare() {
    // A task of the pool's own, as one of the pool's threads may be running this: waiting for it
    // then means doing it.
    bound = ForkJoinPool.commonPool().submit(this::bound);
    estimator = ForkJoinPool.commonPool().submit(() -> CutterEstimator.of(regions, levels));
    progress.regions(regions);
  }

  @Override
  public void first(ToolRun run) {
    if (regions.faces().isEmpty()) { // finishing may add to it
      first.begin(run);
    }
  }

  /** The lower bound, s. */
  double boundS() {
    return bound == null ? bound() : bound.join();
  }

  /** What the panel would take with other cutters. */
  List<CutterEstimate> estimates(List<ToolProgram> programs) {
    return estimator == null ? List.of() : estimator.join().of(programs);
  }

  private double bound() {
    double rapid = regions.job().machine().rapidMmPerMin();
    List<Tool> tools =
        regions.job().tools().stream()
            .map(tool -> tool.with(tool.cutting().atMost(rapid)))
            .toList();
    return LowerBound.seconds(levels, tools, regions.tiling().carved(), LowerBound.CELL_MM);
  }
}
