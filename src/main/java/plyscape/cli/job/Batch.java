package plyscape.cli.job;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.UnaryOperator;
import plyscape.batch.Admission;
import plyscape.batch.JobNeed;
import plyscape.cli.process.ExitCodes;
import plyscape.cli.talk.Console;
import plyscape.files.InputCache;

/**
 * Several jobs in one process. Each stands alone: a failed one doesn't stop the others. A line a
 * job comes in the order of the command line, however many run at a time; those that failed are
 * told again at the end. Input files that several read are read once. A job that is expected to
 * need more memory than the others leave waits for them; one that runs out of it all the same is
 * tried once more by itself.
 */
final class Batch {

  /** One part in so many of Java's memory is for input files that several jobs read. */
  private static final int SHARED_PART = 4;

  private final Console console;
  private final JobTalk talk;
  private final int atATime;

  /** What jobs may take of Java's memory: the rest is for what they share. */
  private final Admission memory =
      new Admission(Runtime.getRuntime().maxMemory() / SHARED_PART * (SHARED_PART - 1));

  Batch(Console console, JobTalk talk, int atATime) {
    this.console = console;
    this.talk = talk;
    this.atATime = atATime;
  }

  /** Runs them all; how each went, in their order. */
  List<BatchLine> run(List<JobRun> runs) {
    return run(runs, line -> line);
  }

  /**
   * The same.
   *
   * @param ended takes each as it ends, from any thread, and gives what is said of it
   */
  List<BatchLine> run(List<JobRun> runs, UnaryOperator<BatchLine> ended) {
    ExecutorService workers =
        Executors.newFixedThreadPool(Math.max(1, Math.min(atATime, runs.size())));
    InputCache.Scope shared = InputCache.open(Runtime.getRuntime().maxMemory() / SHARED_PART);
    try {
      List<Future<BatchLine>> lines = new ArrayList<>();
      for (JobRun run : runs) {
        lines.add(workers.submit(() -> ended.apply(line(run))));
      }
      return report(lines);
    } finally {
      workers.shutdownNow();
      shared.close();
    }
  }

  /** The greatest exit code, 0 for none. */
  static int worst(List<BatchLine> lines) {
    return lines.stream().mapToInt(BatchLine::exitCode).max().orElse(ExitCodes.DONE);
  }

  private BatchLine line(JobRun run) {
    BatchLine line = talk.line(run, job -> memory.enter(JobNeed.bytes(job)));
    if (!line.shortOfMemory()) {
      return line;
    }
    long freed = InputCache.clear();
    return atATime > 1 || freed > 0
        ? talk.line(run, job -> memory.enter(Long.MAX_VALUE)) // by itself
        : line;
  }

  private List<BatchLine> report(List<Future<BatchLine>> futures) {
    List<BatchLine> lines = new ArrayList<>();
    for (Future<BatchLine> future : futures) {
      BatchLine line = get(future);
      console.result((talk.json() ? line.json() : line.text()) + "\n");
      lines.add(line);
    }
    List<BatchLine> failed = lines.stream().filter(BatchLine::failed).toList();
    long unchanged = lines.stream().filter(BatchLine::unchanged).count();
    console.talk(
        lines.size()
            + " jobs, "
            + (failed.isEmpty() ? "all done" : failed.size() + " failed")
            + (unchanged > 0 ? ", " + unchanged + " unchanged" : ""));
    failed.forEach(line -> console.talk(line.text()));
    return lines;
  }

  private static BatchLine get(Future<BatchLine> future) {
    try {
      return future.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted", e);
    } catch (ExecutionException e) {
      throw new IllegalStateException("a job ended in a way that it shouldn't", e.getCause());
    }
  }
}
