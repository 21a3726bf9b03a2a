package plyscape.plan;

import java.util.List;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import plyscape.simulate.Cut;
import plyscape.simulate.Simulation;
import plyscape.toolpath.ToolRun;

/**
 * The program of the first cutter, written, read back and cut in simulation while the paths of the
 * next cutters are still being planned.
 */
final class FirstProgram {

  /** What was made of a run. */
  private record Begun(ProgramMaker.Made made, Simulation simulation) {}

  private final Plan regions;
  private final ProgramMaker maker;
  private final double cellMm;
  private ToolRun run;
  private ForkJoinTask<Begun> begun;

  FirstProgram(Plan regions, ProgramMaker maker, double cellMm) {
    this.regions = regions;
    this.maker = maker;
    this.cellMm = cellMm;
  }

  /** Takes the run that will be the first, and goes on beside. */
  void begin(ToolRun first) {
    run = first;
    begun =
        ForkJoinPool.commonPool()
            .submit(
                () -> {
                  ProgramMaker.Made made = maker.make(1, first);
                  Simulation simulation = Proof.begin(regions, cellMm);
                  simulation.cut(new Cut(made.parsed(), made.written().tool()));
                  return new Begun(made, simulation);
                });
  }

  @SuppressWarnings("ReferenceEquality") // a run that was changed since is another
  private boolean holdsFor(List<ToolRun> runs) {
    return begun != null && !runs.isEmpty() && runs.get(0) == run;
  }

  /** The program of the first of all runs. */
  ProgramMaker.Made made(List<ToolRun> runs) {
    return holdsFor(runs) ? begun.join().made() : maker.make(1, runs.get(0));
  }

  /** A panel cut by all programs. */
  Simulation cut(List<ToolRun> runs, List<ProgramMaker.Made> programs) {
    boolean held = holdsFor(runs);
    Simulation simulation = held ? begun.join().simulation() : Proof.begin(regions, cellMm);
    programs.stream()
        .skip(held ? 1 : 0)
        .forEach(p -> simulation.cut(new Cut(p.parsed(), p.written().tool())));
    return simulation;
  }
}
