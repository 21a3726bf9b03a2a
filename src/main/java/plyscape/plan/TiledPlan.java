package plyscape.plan;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
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

  /** Sums over the panels; one on which nothing is cut adds nothing. */
  @Override
  public List<CutterEstimate> estimates() {
    Map<Double, CutterEstimate> byDiameter = new TreeMap<>();
    for (Tile<PanelPlan> tile : tiles) {
      for (CutterEstimate estimate : tile.plan().estimates()) {
        byDiameter.merge(estimate.tool().diameterMm(), estimate, CutterEstimate::plus);
      }
    }
    return List.copyOf(byDiameter.values());
  }

  @Override
  public List<PanelPlan> panelPlans() {
    return tiles.stream().map(Tile::plan).toList();
  }
}
