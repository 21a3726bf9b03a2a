package plyscape.cli.job;

import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import plyscape.batch.BatchJournal;
import plyscape.batch.Share;
import plyscape.cli.process.ExitCodes;

/** Which jobs of a series are planned, and what is kept of how they went. */
final class SeriesOptions {

  @Option(
      names = "--share",
      paramLabel = "K/N",
      description = "Only every N-th job of the list, from the K-th: for several machines.")
  private String share;

  @Option(
      names = "--all",
      description =
          "Plan again what earlier runs left and still holds: outputs of several jobs, panels of"
              + " one that was stopped.")
  private boolean all;

  /** Whether outputs that still hold are done again. */
  boolean all() {
    return all;
  }

  /** Whether only some jobs of a list are meant. */
  boolean shared() {
    return share != null;
  }

  /**
   * The share, all jobs unless one was asked for.
   *
   * @throws ParameterException if it isn't one
   */
  Share share(CommandSpec spec) {
    try {
      return share == null ? Share.ALL : Share.of(share);
    } catch (IllegalArgumentException e) {
      throw new ParameterException(
          spec.commandLine(),
          "found --share \"" + share + "\"; wanted K/N with K from 1 to N, such as 3/8",
          e);
    }
  }

  /**
   * Runs a batch and writes down how it went.
   *
   * @param directory where the outputs' folders are; null in a dry run
   * @param jobs names of all jobs of the list
   * @param runs of the share
   */
  static int run(Batch batch, List<JobRun> runs, Path directory, Share share, List<String> jobs) {
    if (directory == null) {
      return exit(batch.run(runs));
    }
    try (BatchJournal journal = BatchJournal.open(directory, share, jobs)) {
      return exit(
          batch.run(runs, line -> line.with(journal.took(line.result(), line.unchanged()))));
    }
  }

  private static int exit(List<BatchLine> lines) {
    return Batch.worst(lines) == ExitCodes.DONE ? ExitCodes.DONE : ExitCodes.JOB;
  }
}
