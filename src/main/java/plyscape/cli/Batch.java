package plyscape.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * Several jobs in one process. Each stands alone: a failed one doesn't stop the others. A line a
 * job comes in the order of the command line, however many run at a time; the exit code is the
 * greatest of all.
 */
final class Batch {

  private final Console console;
  private final JobTalk talk;
  private final int atATime;

  Batch(Console console, JobTalk talk, int atATime) {
    this.console = console;
    this.talk = talk;
    this.atATime = atATime;
  }

  int run(List<JobRun> runs) {
    ExecutorService workers = Executors.newFixedThreadPool(Math.min(atATime, runs.size()));
    try {
      List<Future<BatchLine>> lines = new ArrayList<>();
      for (JobRun run : runs) {
        lines.add(workers.submit(() -> talk.line(run)));
      }
      return report(lines);
    } finally {
      workers.shutdownNow();
    }
  }

  private int report(List<Future<BatchLine>> lines) {
    int worst = ExitCodes.DONE;
    int failed = 0;
    for (Future<BatchLine> future : lines) {
      BatchLine line = get(future);
      console.result((talk.json() ? line.json() : line.text()) + "\n");
      worst = Math.max(worst, line.exitCode());
      failed += line.exitCode() == ExitCodes.DONE ? 0 : 1;
    }
    console.talk(lines.size() + " jobs, " + (failed == 0 ? "all done" : failed + " failed"));
    return worst;
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
