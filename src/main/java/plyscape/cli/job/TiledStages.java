package plyscape.cli.job;

import plyscape.files.PlanFiles;
import plyscape.output.FileSink;
import plyscape.output.OutputDirectory;
import plyscape.plan.PanelStore;
import plyscape.plan.Plan;
import plyscape.plan.TiledLandscape;
import plyscape.plan.TiledPlan;
import plyscape.render.OverviewPicture;
import plyscape.report.IndexPage;
import plyscape.report.json.TilesJson;

/**
 * Stages that write a landscape over several panels as one directory a panel, with an overview
 * above them.
 */
public record TiledStages(Stages usual) implements StagesDecorator {

  @Override
  public PanelStore panels(OutputDirectory out) {
    return new PanelFolders(usual, out);
  }

  @Override
  public void write(Plan plan, FileSink out) {
    if (plan instanceof TiledPlan tiled) {
      out.write(PlanFiles.OVERVIEW, OverviewPicture.png(tiled.landscape(), tiled.panels()));
      out.write(PlanFiles.INDEX, IndexPage.text(tiled));
      out.write(PlanFiles.TILES, TilesJson.text(tiled));
    } else if (plan instanceof TiledLandscape tiled) {
      out.write(PlanFiles.PREVIEW, OverviewPicture.png(tiled.landscape(), tiled.panels()));
    } else {
      usual.write(plan, out);
    }
  }

  @Override
  public String json(Plan plan) {
    if (plan instanceof TiledPlan tiled) {
      return TilesJson.withPlans(tiled);
    }
    return plan instanceof TiledLandscape tiled ? TilesJson.withPlans(tiled) : usual.json(plan);
  }
}
