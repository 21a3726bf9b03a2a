package plyscape.planner.cut;

import java.util.List;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import java.util.concurrent.locks.LockSupport;
import plyscape.plan.Landscape;
import plyscape.simulate.Cut;
import plyscape.simulate.Simulation;
import plyscape.toolpath.task.ToolRun;

/**
 * The program of the first cutter, written, read back and cut in simulation while the paths of the
 * next cutters are still being planned.
 */
final class FirstProgram {

  private static final long PAUSE_NS = 200_000;

  private final Landscape regions;
  private final ProgramMaker maker;
  private final Cutouts cutouts;
  private final double cellMm;
  private ToolRun run;
  private Simulation simulation;
  private ForkJoinTask<ProgramMaker.Made> begun;
  private volatile boolean started;

  FirstProgram(Landscape regions, ProgramMaker maker, Cutouts cutouts, double cellMm) {
    this.cutouts = cutouts;
    this.regions = regions;
    this.maker = maker;
    this.cellMm = cellMm;
  }

  /** Takes the run that will be the first, and goes on beside. */
  void begin(ToolRun first) {
    if (!cutouts.before().isEmpty()) {
      return; // pins come before it
    }
    run = first;
    simulation = Proof.begin(regions, cutouts.areas(), cellMm);
    begun =
        ForkJoinPool.commonPool()
            .submit(
                () -> {
                  started = true;
                  ProgramMaker.Made made = maker.make(1, first);
                  simulation.cut(new Cut(made.parsed(), made.written().tool()));
                  return made;
                });
  }

  /** The program; while it isn't cut yet this thread takes part. */
  private ProgramMaker.Made awaited() {
    // Not begun yet: to join it is to do it.
    while (started && !begun.isDone()) {
      simulation.help();
      LockSupport.parkNanos(PAUSE_NS);
    }
    return begun.join();
  }

  @SuppressWarnings("ReferenceEquality") // a run that was changed since is another
  private boolean holdsFor(List<ToolRun> runs) {
    return begun != null && !runs.isEmpty() && runs.get(0) == run;
  }

  /** The program of the first of all runs. */
  ProgramMaker.Made made(List<ToolRun> runs) {
    return holdsFor(runs) ? awaited() : maker.make(1, runs.get(0));
  }

  /** A panel cut by all programs. */
  Simulation cut(List<ToolRun> runs, List<ProgramMaker.Made> programs) {
    boolean held = holdsFor(runs);
    if (held) {
      awaited();
    }
    Simulation cut = held ? simulation : Proof.begin(regions, cutouts.areas(), cellMm);
    programs.stream()
        .skip(held ? 1 : 0)
        .forEach(p -> cut.cut(new Cut(p.parsed(), p.written().tool())));
    return cut;
  }
}
