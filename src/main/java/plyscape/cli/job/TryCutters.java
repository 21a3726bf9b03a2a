package plyscape.cli.job;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import plyscape.cli.option.CommonOptions;
import plyscape.cli.process.ExitCodes;
import plyscape.cli.process.PoolRun;
import plyscape.cli.talk.Console;
import plyscape.fault.JobFault;
import plyscape.fault.Warnings;
import plyscape.job.Job;
import plyscape.machine.Tool;
import plyscape.plan.CutterTrial;
import plyscape.plan.PlanOptions;
import plyscape.planner.CutterTrials;
import plyscape.report.TrialTable;

/** Plans a job with other cutters and prints what each set of them comes to; writes nothing. */
final class TryCutters {

  private final Console console;
  private final CommonOptions common;
  private final boolean json;

  TryCutters(Console console, CommonOptions common, boolean json) {
    this.console = console;
    this.common = common;
    this.json = json;
  }

  /**
   * Plans all sets, one after the other, as each takes all processors.
   *
   * @throws JobFault if none of them can do the job
   */
  int run(JobInputs.Source source, PlanOptions options) {
    Job job = source.read(new Warnings());
    CutterTrials trials = new CutterTrials(job, options);
    List<CutterTrial> done = new ArrayList<>();
    for (List<Tool> set : trials.sets()) {
      if (!common.quiet()) {
        console.talk(
            "planning for " + set.stream().map(Tool::name).collect(Collectors.joining(", ")));
      }
      done.add(PoolRun.of(() -> trials.plan(set)));
    }
    if (done.stream().allMatch(trial -> trial.outcome().isEmpty())) {
      throw new JobFault(done.get(0).refusal(), "");
    }
    console.result(json ? TrialTable.json(done) : TrialTable.text(done));
    if (!common.quiet()) {
      console.talk(
          "cutters that the job doesn't list are run as the listed one nearest in diameter, smaller"
              + " ones with less feed and stepdown in proportion");
    }
    return ExitCodes.DONE;
  }
}
