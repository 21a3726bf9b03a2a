package plyscape.cli;

import plyscape.files.PlanFiles;
import plyscape.output.FileSink;
import plyscape.plan.Plan;
import plyscape.render.OverviewPicture;
import plyscape.report.TilesJson;

/**
 * Stages that write a landscape over several panels as one directory a panel, with an overview
 * above them.
 */
record TiledStages(Stages usual) implements StagesOver {

  @Override
  public void write(Plan plan, FileSink out) {
    if (plan.tiles().isEmpty()) {
      usual.write(plan, out);
    } else if (plan.time() == null) {
      out.write(PlanFiles.PREVIEW, OverviewPicture.png(plan));
    } else {
      for (Plan.Tile tile : plan.tiles()) {
        usual.write(tile.plan(), out.folder(tile.name()));
      }
      out.write(PlanFiles.OVERVIEW, OverviewPicture.png(plan));
      out.write(PlanFiles.TILES, TilesJson.text(plan));
    }
  }

  @Override
  public String json(Plan plan) {
    return plan.tiles().isEmpty() ? usual.json(plan) : TilesJson.withPlans(plan);
  }
}
