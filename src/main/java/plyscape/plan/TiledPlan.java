package plyscape.plan;

import java.util.List;
import plyscape.fault.Warning;
import plyscape.job.Job;

/**
 * A landscape over several panels, each cut and proved. Immutable.
 *
 * @param landscape of all panels together, as if they were one
 * @param panels size of a panel, and how many
 * @param tiles by columns from the left, upwards in each
 * @param warnings all, those of a panel with its name before the place
 */
public record TiledPlan(
    Landscape landscape, Job.PanelSpec panels, List<Tile<PanelPlan>> tiles, List<Warning> warnings)
    implements CutPlan {

  /** Copies the lists. */
  public TiledPlan {
    tiles = List.copyOf(tiles);
    warnings = List.copyOf(warnings);
  }

  @Override
  public PlanTime time() {
    return tiles.stream().map(tile -> tile.plan().time()).reduce(PlanTime.NONE, PlanTime::plus);
  }
}
