package plyscape.batch;

import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * How one job of a series went. Immutable.
 *
 * @param job its name, which its output's folder has too
 * @param exit the exit code it would have had alone
 * @param message why it failed, "" when it didn't
 * @param seconds that the run took, by the clock
 * @param totalS cutting time, 0 when unknown
 * @param warnings how many of each code
 * @param earlier whether it is of a run before the last, which hasn't come to this job
 */
public record JobResult(
    String job,
    int exit,
    String message,
    double seconds,
    double totalS,
    SortedMap<String, Integer> warnings,
    boolean earlier) {

  /** One of the last run. */
  public JobResult(
      String job,
      int exit,
      String message,
      double seconds,
      double totalS,
      SortedMap<String, Integer> warnings) {
    this(job, exit, message, seconds, totalS, warnings, false);
  }

  /** Copies the map. */
  public JobResult {
    warnings = Collections.unmodifiableSortedMap(new TreeMap<>(warnings));
  }

  /** Whether its output is there. */
  public boolean done() {
    return exit == 0;
  }

  /** The same, for a run that hasn't come to the job yet. */
  JobResult ofEarlierRun() {
    return new JobResult(job, exit, message, seconds, totalS, warnings, true);
  }

  /** The same, for an output that was left as it was: it took what it took then. */
  JobResult withSeconds(double then) {
    return new JobResult(job, exit, message, then, totalS, warnings, earlier);
  }
}
