package plyscape.plan;

import java.util.List;
import plyscape.fault.Warning;
import plyscape.job.Job;
import plyscape.layup.Depths;
import plyscape.region.Tiling;

/**
 * What a run of a job came to: a {@link Landscape} or a {@link TiledLandscape} when it stopped
 * after the regions, a {@link PanelPlan} or a {@link TiledPlan} when everything was cut and proved.
 * Immutable.
 */
public sealed interface Plan permits Landscape, TiledLandscape, CutPlan {

  /** The regions; of several panels those of all together, as if they were one. */
  Landscape landscape();

  /** All warnings, in the order they arose. */
  List<Warning> warnings();

  /** What was asked. */
  default Job job() {
    return landscape().job();
  }

  /** Where every ply of the layup lies. */
  default Depths depths() {
    return landscape().depths();
  }

  /** Regions and pockets. */
  default Tiling tiling() {
    return landscape().tiling();
  }
}
