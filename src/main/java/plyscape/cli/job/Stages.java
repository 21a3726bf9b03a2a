package plyscape.cli.job;

import java.util.List;
import plyscape.fault.Warnings;
import plyscape.job.Job;
import plyscape.output.FileSink;
import plyscape.output.OutputDirectory;
import plyscape.plan.PanelStore;
import plyscape.plan.Plan;
import plyscape.plan.PlanOptions;
import plyscape.plan.Progress;

/** What a command needs of the program's middle: a job to a plan, a plan to files and to text. */
public interface Stages {

  /** Names of the stages, in order. */
  default List<String> names(PlanOptions options) {
    return List.of();
  }

  /** Names of files that are written beyond the usual ones, with a star for each layer's. */
  default List<String> moreFiles() {
    return List.of();
  }

  /**
   * Runs a job's stages.
   *
   * @param panels takes each of several panels
   */
  Plan plan(Job job, PlanOptions options, Progress progress, Warnings warnings, PanelStore panels);

  /** What takes each of several panels of an output. */
  default PanelStore panels(OutputDirectory out) {
    return PanelStore.FIGURES;
  }

  /** Writes all files of a plan; of a preview only the picture. */
  void write(Plan plan, FileSink out);

  /** {@code plan.json} as text, ended by LF. */
  String json(Plan plan);

  /** The table of plies for stdout. */
  String table(Plan plan);
}
