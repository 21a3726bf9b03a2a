package plyscape.cli.job;

import java.util.List;
import java.util.function.IntSupplier;
import plyscape.fault.Warnings;
import plyscape.files.PlanFiles;
import plyscape.job.Job;
import plyscape.output.FileSink;
import plyscape.plan.Landscape;
import plyscape.plan.PanelPlan;
import plyscape.plan.PanelStore;
import plyscape.plan.Plan;
import plyscape.plan.PlanOptions;
import plyscape.plan.Progress;
import plyscape.plan.ToolProgram;
import plyscape.planner.Planner;
import plyscape.render.PreviewPicture;
import plyscape.render.ReliefPng;
import plyscape.render.layer.LayerFile;
import plyscape.render.layer.SvgLayers;
import plyscape.report.HtmlReport;
import plyscape.report.PlyTable;
import plyscape.report.json.FacesJson;
import plyscape.report.json.PlanJson;
import plyscape.report.setup.SetupPage;

/** The stages as they are: the planner, and the files of section 7 of src/contract.md. */
public final class PlanStages implements Stages {

  private final EarlyPictures early = new EarlyPictures();
  private final IntSupplier tableWidth;

  /** With tables as wide as they are. */
  public PlanStages() {
    this(() -> Integer.MAX_VALUE);
  }

  /** With tables of no more than so many characters, where columns can be left out. */
  public PlanStages(IntSupplier tableWidth) {
    this.tableWidth = tableWidth;
  }

  @Override
  public List<String> names(PlanOptions options) {
    return Planner.stages(options);
  }

  @Override
  public Plan plan(
      Job job, PlanOptions options, Progress progress, Warnings warnings, PanelStore panels) {
    Drawn drawn = new Drawn(progress);
    try {
      return Planner.plan(job, options, drawn, warnings, panels);
    } catch (RuntimeException | Error e) {
      drawn.forget();
      throw e;
    }
  }

  /** Begins the pictures of each panel; of one that fails they are let go. */
  private final class Drawn implements Progress {
    private final Progress usual;
    private Landscape last;

    Drawn(Progress usual) {
      this.usual = usual;
    }

    @Override
    public void stage(String name) {
      usual.stage(name);
    }

    @Override
    public void regions(Landscape regions) {
      last = regions;
      early.begin(regions);
    }

    void forget() {
      if (last != null) {
        early.forget(last);
      }
    }

    @Override
    public void panel(String name, int number, int of) {
      usual.panel(name, number, of);
    }

    @Override
    public void done() {
      usual.done();
    }
  }

  @Override
  public void write(Plan plan, FileSink out) {
    if (plan instanceof PanelPlan panel) {
      panel(panel, out);
    } else {
      out.write(PlanFiles.PREVIEW, PreviewPicture.png(plan.landscape()));
    }
  }

  private void panel(PanelPlan plan, FileSink out) {
    Landscape regions = plan.landscape();
    EarlyPictures.Drawing pictures = early.of(regions);
    for (LayerFile layer : SvgLayers.write(regions)) {
      out.write(PlanFiles.layer(layer.name()), layer.text());
    }
    regions
        .faces()
        .ifPresent(
            faces -> {
              out.write(PlanFiles.FACES, FacesJson.text(faces));
              out.write(PlanFiles.relief(), ReliefPng.of(faces));
            });
    for (ToolProgram program : plan.programs()) {
      out.write(PlanFiles.pass(program.file()), program.text());
    }
    out.write(PlanFiles.PLAN, PlanJson.text(plan));
    out.write(PlanFiles.REPORT, HtmlReport.text(plan, pictures.pagePng()));
    out.write(PlanFiles.SETUP, SetupPage.text(plan));
    out.write(PlanFiles.SECTION, pictures.sectionPng());
    out.write(PlanFiles.PREVIEW, pictures.previewPng());
  }

  @Override
  public String json(Plan plan) {
    return plan instanceof PanelPlan panel ? PlanJson.text(panel) : PlanJson.text(plan.landscape());
  }

  @Override
  public String table(Plan plan) {
    return PlyTable.text(plan.landscape(), tableWidth.getAsInt());
  }
}
