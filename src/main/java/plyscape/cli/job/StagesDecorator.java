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

/** Stages that differ from others in a point or two, and else do what those do. */
public interface StagesDecorator extends Stages {

  /** The others. */
  Stages usual();

  @Override
  default List<String> names(PlanOptions options) {
    return usual().names(options);
  }

  @Override
  default List<String> moreFiles() {
    return usual().moreFiles();
  }

  @Override
  default Plan plan(
      Job job, PlanOptions options, Progress progress, Warnings warnings, PanelStore panels) {
    return usual().plan(job, options, progress, warnings, panels);
  }

  @Override
  default PanelStore panels(OutputDirectory out) {
    return usual().panels(out);
  }

  @Override
  default void write(Plan plan, FileSink out) {
    usual().write(plan, out);
  }

  @Override
  default String json(Plan plan) {
    return usual().json(plan);
  }

  @Override
  default String table(Plan plan) {
    return usual().table(plan);
  }
}
