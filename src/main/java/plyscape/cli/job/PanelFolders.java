package plyscape.cli.job;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import plyscape.batch.FinishedOutput;
import plyscape.files.PlanFiles;
import plyscape.output.OutputDirectory;
import plyscape.plan.Landscape;
import plyscape.plan.PanelFigures;
import plyscape.plan.PanelPlan;
import plyscape.plan.PanelStore;
import plyscape.plan.PanelSummary;
import plyscape.plan.Tile;
import plyscape.report.IndexPage;
import plyscape.report.json.PanelReader;

/**
 * Puts each panel of several into a folder of its own as soon as it is proved, and knows those that
 * a stopped run left.
 */
public final class PanelFolders implements PanelStore {

  private final Stages usual;
  private final OutputDirectory out;

  /** Whose {@code plan.json} was written last. */
  private String json = "";

  /**
   * Into an output.
   *
   * @param usual writes a panel's files
   */
  public PanelFolders(Stages usual, OutputDirectory out) {
    this.usual = usual;
    this.out = out;
  }

  @Override
  public PanelSummary put(Tile<PanelPlan> tile) {
    PanelPlan plan = tile.plan();
    out.whole(
        tile.name(),
        files ->
            usual.write(
                plan,
                (name, bytes) -> {
                  if (name.equals(PlanFiles.PLAN)) {
                    json = new String(bytes, StandardCharsets.UTF_8);
                  }
                  files.write(name, bytes);
                }));
    return new PanelSummary(
        PanelFigures.of(plan), IndexPage.picture(plan.landscape()), json, false);
  }

  @Override
  public Optional<PanelSummary> kept(Tile<Landscape> tile) {
    Optional<PanelSummary> summary =
        out.left(tile.name()).flatMap(folder -> read(folder, tile.plan()));
    out.settle(tile.name(), summary.isPresent());
    return summary;
  }

  private static Optional<PanelSummary> read(Path folder, Landscape regions) {
    try {
      Optional<JsonNode> plan = FinishedOutput.plan(folder, regions.job().origin().fingerprint());
      if (plan.isEmpty()) {
        return Optional.empty();
      }
      String text = Files.readString(folder.resolve(PlanFiles.PLAN));
      PanelFigures figures = PanelReader.figures(plan.get(), regions);
      return Optional.of(new PanelSummary(figures, IndexPage.picture(regions), text, true));
    } catch (IOException e) {
      return Optional.empty(); // then it is cut anew
    }
  }
}
