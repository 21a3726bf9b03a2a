package plyscape.plan;

import java.util.List;
import plyscape.fault.Warning;
import plyscape.job.Job;

/**
 * The regions of a landscape over several panels. Immutable.
 *
 * @param landscape of all panels together, as if they were one
 * @param panels size of a panel, and how many
 * @param tiles by columns from the left, upwards in each
 * @param warnings all, those of a panel with its name before the place
 */
public record TiledLandscape(
    Landscape landscape, Job.PanelSpec panels, List<Tile<Landscape>> tiles, List<Warning> warnings)
    implements Plan {

  /** Copies the lists. */
  public TiledLandscape {
    tiles = List.copyOf(tiles);
    warnings = List.copyOf(warnings);
  }
}
