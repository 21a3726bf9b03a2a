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
 */
public record JobResult(
    String job,
    int exit,
    String message,
    double seconds,
    double totalS,
    SortedMap<String, Integer> warnings) {

  /** Copies the map. */
  public JobResult {
    warnings = Collections.unmodifiableSortedMap(new TreeMap<>(warnings));
  }

  /** Whether its output is there. */
  public boolean done() {
    return exit == 0;
  }
}
