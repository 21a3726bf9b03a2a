package plyscape.plan;

import java.util.List;
import plyscape.fault.Warning;
import plyscape.job.Job;

/**
 * A landscape over several panels, each cut, proved and given to a {@link PanelStore}. Immutable.
 *
 * @param landscape of all panels together, as if they were one
 * @param panels size of a panel, and how many
 * @param tiles by columns from the left, upwards in each
 * @param warnings all, those of a panel with its name before the place
 */
public record TiledPlan(
    Landscape landscape,
    Job.PanelSpec panels,
    List<Tile<PanelSummary>> tiles,
    List<Warning> warnings)
    implements CutPlan {

  /** Copies the lists. */
  public TiledPlan {
    tiles = List.copyOf(tiles);
    warnings = List.copyOf(warnings);
  }

  /** None if an earlier run cut some of the panels. */
  @Override
  public List<CutterEstimate> estimates() {
    boolean all = tiles.stream().noneMatch(tile -> tile.plan().earlier());
    return all ? CutPlan.super.estimates() : List.of();
  }

  @Override
  public List<PanelFigures> figures() {
    return tiles.stream().map(tile -> tile.plan().figures()).toList();
  }
}
