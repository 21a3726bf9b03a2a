package plyscape.cli.process;

import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.FutureTask;
import java.util.function.Supplier;

/**
 * Runs work on one of the common pool's own threads: those help each other where one waits, which
 * the thread that starts Java doesn't.
 */
public final class PoolRun {

  private static final String THREADS = "java.util.concurrent.ForkJoinPool.common.parallelism";

  private PoolRun() {}

  /** Gives the pool a thread a processor; before its first use. */
  public static void everyProcessor() {
    if (System.getProperty(THREADS) == null) {
      System.setProperty(THREADS, Integer.toString(Runtime.getRuntime().availableProcessors()));
    }
  }

  /** The outcome of work; what it throws goes through as it is. */
  public static <T> T of(Supplier<T> work) {
    if (ForkJoinPool.getCommonPoolParallelism() < Runtime.getRuntime().availableProcessors()) {
      return work.get(); // else a processor would stand idle
    }
    FutureTask<T> task = new FutureTask<>(work::get);
    ForkJoinPool.commonPool().execute(task);
    return outcome(task);
  }

  /** What a task gave. */
  public static <T> T outcome(FutureTask<T> task) {
    try {
      return task.get();
    } catch (ExecutionException e) {
      if (e.getCause() instanceof Error error) {
        throw error;
      }
      throw e.getCause() instanceof RuntimeException own
          ? own
          : new IllegalStateException(e.getCause());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted", e);
    }
  }
}
