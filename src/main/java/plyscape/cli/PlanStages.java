package plyscape.cli;

import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.FutureTask;
import plyscape.fault.Warnings;
import plyscape.job.Job;
import plyscape.output.FileSink;
import plyscape.plan.Plan;
import plyscape.plan.PlanOptions;
import plyscape.plan.Planner;
import plyscape.plan.Progress;
import plyscape.plan.ToolProgram;
import plyscape.render.LayerFile;
import plyscape.render.PreviewPicture;
import plyscape.render.ReliefPng;
import plyscape.render.SectionPicture;
import plyscape.render.SvgLayers;
import plyscape.report.FacesJson;
import plyscape.report.HtmlReport;
import plyscape.report.PlanJson;
import plyscape.report.PlyTable;

/** The stages as they are: the planner, and the files of section 7 of the contract. */
final class PlanStages implements Stages {

  @Override
  public List<String> names(PlanOptions options) {
    return Planner.stages(options);
  }

  @Override
  public Plan plan(Job job, PlanOptions options, Progress progress, Warnings warnings) {
    return Planner.plan(job, options, progress, warnings);
  }

  @Override
  public void write(Plan plan, FileSink out) {
    if (plan.time() == null) {
      out.write("preview.png", PreviewPicture.png(plan));
      return;
    }
    // The largest picture is drawn while the rest is written: a plan never changes, so both may
    // read it.
    FutureTask<byte[]> preview = new FutureTask<>(() -> PreviewPicture.png(plan));
    ForkJoinPool.commonPool().execute(preview);
    out.write("section.png", SectionPicture.png(plan));
    for (LayerFile layer : SvgLayers.write(plan)) {
      out.write("layers/" + layer.name(), layer.text());
    }
    if (plan.faces() != null) {
      out.write(PlanJson.FACES, FacesJson.text(plan));
      out.write("faces/" + FacesJson.RELIEF, ReliefPng.of(plan.faces()));
    }
    for (ToolProgram program : plan.programs()) {
      out.write("passes/" + program.file(), program.text());
    }
    out.write("plan.json", PlanJson.text(plan));
    out.write("report.html", HtmlReport.text(plan));
    out.write("preview.png", outcome(preview));
  }

  private static byte[] outcome(FutureTask<byte[]> task) {
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
      throw new IllegalStateException("interrupted while drawing", e);
    }
  }

  @Override
  public String json(Plan plan) {
    return PlanJson.text(plan);
  }

  @Override
  public String table(Plan plan) {
    return PlyTable.text(plan);
  }
}
