package plyscape.cli;

import java.util.List;
import plyscape.fault.Warnings;
import plyscape.job.Job;
import plyscape.output.FileSink;
import plyscape.plan.Plan;
import plyscape.plan.PlanOptions;
import plyscape.plan.Progress;
import plyscape.render.TerminalPreview;

/** Stages whose table has the picture in characters above it. */
record PictureStages(Stages usual, TerminalPreview.Colour colour, int columns) implements Stages {

  @Override
  public List<String> names(PlanOptions options) {
    return usual.names(options);
  }

  @Override
  public Plan plan(Job job, PlanOptions options, Progress progress, Warnings warnings) {
    return usual.plan(job, options, progress, warnings);
  }

  @Override
  public void write(Plan plan, FileSink out) {
    usual.write(plan, out);
  }

  @Override
  public String json(Plan plan) {
    return usual.json(plan);
  }

  @Override
  public String table(Plan plan) {
    return TerminalPreview.text(plan, columns, colour) + "\n" + usual.table(plan);
  }
}
