package plyscape.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import plyscape.fault.JobFault;
import plyscape.files.PlanFiles;
import plyscape.grid.Box;
import plyscape.job.Job;
import plyscape.region.TileCutter;
import plyscape.region.Tiling;
import plyscape.zones.Zone;

/**
 * Splits the plan of a whole landscape into those of the panels that carry it, each in its own
 * coordinates. Depths, bands and the range of elevations stay the whole's, so that every ply goes
 * on at the same height across a seam. There is no border at seams; the panel's edge there is a
 * wall for the cutter, so inner corners at a seam keep its radius.
 */
final class TileSplit {

  private TileSplit() {}

  /**
   * The panels, by columns from the left, upwards in each; without programs. Warnings of a panel
   * follow those of the whole.
   *
   * @param whole regions of the whole
   * @param panels size and number
   * @param smallestToolMm diameter; a panel with less of the landscape than this could not be cut
   * @throws JobFault if a panel would stay bare
   */
  static List<Plan.Tile> of(Plan whole, Job.PanelSpec panels, double smallestToolMm) {
    TileCutter cutter =
        new TileCutter(
            whole.tiling(), panels.widthMm(), panels.heightMm(), panels.columns(), panels.rows());
    List<Plan.Tile> tiles = new ArrayList<>();
    for (int c = 0; c < panels.columns(); c++) {
      for (int r = 0; r < panels.rows(); r++) {
        Box part = cutter.part(c, r);
        requireRoom(part, PlanFiles.tile(c + 1, r + 1), smallestToolMm);
        Plan tile = plan(whole, panels, c, r, part, cutter.tile(c, r));
        tiles.add(new Plan.Tile(c + 1, r + 1, tile.warnedOf(SeamCheck.of(tile, smallestToolMm))));
      }
    }
    return List.copyOf(tiles);
  }

  private static void requireRoom(Box part, String name, double smallestToolMm) {
    if (part == null || Math.min(part.width(), part.height()) < smallestToolMm) {
      throw new JobFault(
          part == null
              ? "the landscape doesn't reach the panel " + name
              : String.format(
                  Locale.ROOT,
                  "only %.2f x %.2f mm of the landscape would lie on the panel %s, too little for"
                      + " the cutter",
                  part.width(),
                  part.height(),
                  name),
          "set other panel.tiles, or crop the terrain to a shape more like that of the panels"
              + " together");
    }
  }

  private static Plan plan(
      Plan whole, Job.PanelSpec panels, int column, int row, Box part, Tiling tiling) {
    String name =
        whole.job().name()
            + " "
            + PlanFiles.tile(column + 1, row + 1)
            + " of "
            + panels.columns()
            + " x "
            + panels.rows();
    List<Zone> zones =
        whole.zones().stream().map(zone -> zone.part(part, tiling.carved())).toList();
    return new Plan(
            whole.job().on(panels.single(), name),
            whole.depths(),
            whole.thicknessMm(),
            whole.terrain().part(part, tiling.carved()),
            whole.bands(),
            zones,
            tiling,
            List.of(),
            null,
            null,
            whole.warnings(),
            whole.version())
        .withFaces(
            whole.faces() == null ? null : whole.faces().part(part, tiling.carved(), tiling));
  }
}
