package plyscape.cli.job;

import java.util.function.Function;
import plyscape.batch.Admission;
import plyscape.cli.option.CommonOptions;
import plyscape.cli.process.ExitCodes;
import plyscape.cli.process.PoolRun;
import plyscape.cli.talk.Console;
import plyscape.cli.talk.ConsoleProgress;
import plyscape.cli.talk.WarningLines;
import plyscape.fault.Warnings;
import plyscape.files.InputCache;
import plyscape.job.Job;
import plyscape.plan.Progress;

/** Runs a job and tells the user how it went. */
final class JobTalk {

  private final Console console;
  private final Stages stages;
  private final CommonOptions common;
  private final boolean json;

  JobTalk(Console console, Stages stages, CommonOptions common, boolean json) {
    this.console = console;
    this.stages = stages;
    this.common = common;
    this.json = json;
  }

  /** A single job: progress, the table or JSON on stdout, then the summary. Faults go through. */
  int one(JobRun run) {
    Warnings warnings = new Warnings();
    JobRun.Outcome outcome;
    ConsoleProgress progress = ConsoleProgress.on(console, !common.quiet(), run.stages());
    InputCache.Scope digests = InputCache.open(0); // they are asked for again at the end
    try (progress) {
      outcome = PoolRun.of(() -> run.run(progress, warnings));
    } catch (RuntimeException e) {
      if (!common.quiet()) {
        WarningLines.of(warnings.list(), common.verbose()).forEach(console::talk);
      }
      throw e;
    } finally {
      digests.close();
    }
    // With -q and files the files are the result.
    if (json || !common.quiet() || outcome.directory() == null) {
      console.result(json ? stages.json(outcome.plan()) : stages.table(outcome.plan()));
    }
    if (!common.quiet()) {
      JobRun.summary(outcome, warnings, common.verbose()).forEach(console::talk);
      if (common.verbose()) {
        console.talk("time: " + progress.times());
      }
    }
    return ExitCodes.DONE;
  }

  /**
   * One of several jobs: the line about it, with the exit code it would have had alone.
   *
   * @param gate lets it begin to plan
   */
  BatchLine line(JobRun run, Function<Job, Admission.Ticket> gate) {
    Warnings warnings = new Warnings();
    long start = System.nanoTime();
    try {
      JobRun.Outcome outcome = run.run(Progress.NONE, warnings, gate);
      return BatchLine.done(run.name(), outcome, warnings, seconds(start));
    } catch (RuntimeException | Error e) {
      return BatchLine.failed(run.name(), e, seconds(start));
    }
  }

  private static double seconds(long startNanos) {
    return (System.nanoTime() - startNanos) / 1e9;
  }

  /** Whether lines are JSON objects. */
  boolean json() {
    return json;
  }
}
