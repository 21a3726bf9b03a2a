package plyscape.terrain;

import plyscape.fault.InputFault;
import plyscape.fault.JobFault;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.Turn;
import plyscape.job.Job;
import plyscape.job.TerrainSpec;
import plyscape.terrain.crs.GroundCrs;
import plyscape.text.Template;

/** Ground that lies on the panel at an angle. */
final class TurnedGround {

  /** Places a side at which it is looked whether the raster reaches there. */
  private static final int STEPS = 60;

  private TurnedGround() {}

  /**
   * The turn that the job asks for, about the centre of its crop.
   *
   * @throws InputFault when the crop isn't given by its centre
   */
  static Turn turn(TerrainSpec spec, Job.PanelSpec panel, GroundCrs rasterCrs, String groundCrs) {
    if (panel.turnDegrees() == 0) {
      return Turn.NONE;
    }
    if (spec.options().centre() == null) {
      throw new InputFault(
          new Place("", 0, 0, "panel.turn"),
          "a turn without terrain.centre",
          "wanted terrain.centre: [x, y], about which the ground is turned, with ground_width or"
              + " scale");
    }
    double[] xy = GroundCrop.centre(spec, rasterCrs, groundCrs);
    return new Turn(panel.turnDegrees(), xy[0], xy[1]);
  }

  /**
   * Of a turned crop the corners reach beyond a raster that would hold it straight: what is unknown
   * there is warned of, and refused from half of the crop on.
   */
  static void requireKnown(GroundRaster ground, Box crop, Turn turn, Warnings warnings) {
    if (turn.none()) {
      return;
    }
    int beyond = 0;
    for (int i = 0; i < STEPS * STEPS; i++) {
      double x = crop.minX() + crop.width() * (i % STEPS + 0.5) / STEPS;
      double y = crop.minY() + crop.height() * (i / STEPS + 0.5) / STEPS;
      beyond += ground.covers(x, y) ? 0 : 1;
    }
    double share = beyond / (double) (STEPS * STEPS);
    if (share == 0) {
      return;
    }
    String said = Template.fill("%.1f %% of the turned crop lies outside the terrain", 100 * share);
    if (share > 0.5) {
      throw new JobFault(said, "make the crop smaller, move it, or turn it less");
    }
    warnings.add(
        "crop-outside",
        said + ", where nothing is known: it is filled from the edge",
        "panel.turn");
  }
}
