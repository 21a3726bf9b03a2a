package plyscape.planner;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import plyscape.fault.JobFault;
import plyscape.fault.Warning;
import plyscape.fault.Warnings;
import plyscape.files.PlanFiles;
import plyscape.grid.Box;
import plyscape.job.Job;
import plyscape.layup.DepthModel;
import plyscape.layup.Depths;
import plyscape.plan.Acceptance;
import plyscape.plan.Landscape;
import plyscape.plan.MapData;
import plyscape.plan.PlanOptions;
import plyscape.plan.Standing;
import plyscape.plan.Tile;
import plyscape.planner.check.Assignment;
import plyscape.region.TileCutter;
import plyscape.region.Tiling;

/**
 * Splits a whole landscape into those of the panels that carry it, each in its own coordinates.
 * Depths, bands and the range of elevations stay the whole's, so that every ply goes on at the same
 * height across a seam. There is no border at seams; the panel's edge there is a wall for the
 * cutter, so inner corners at a seam keep its radius.
 */
final class TileSplit {

  private TileSplit() {}

  /**
   * A panel of the landscape.
   *
   * @param tile its place and regions, whose warnings are the whole's and then those of its seams
   * @param seamWarnings the latter alone
   */
  record Part(Tile<Landscape> tile, List<Warning> seamWarnings) {}

  /**
   * The panels, by columns from the left, upwards in each; without programs. Warnings of a panel
   * follow those of the whole.
   *
   * @param whole regions of the whole
   * @param panels size and number
   * @param smallestToolMm diameter; a panel with less of the landscape than this could not be cut
   * @throws JobFault if a panel would stay bare
   */
  static List<Part> of(
      Landscape whole, Job.PanelSpec panels, PlanOptions options, double smallestToolMm) {
    TileCutter cutter =
        new TileCutter(
            whole.tiling(), panels.widthMm(), panels.heightMm(), panels.columns(), panels.rows());
    List<Part> tiles = new ArrayList<>();
    for (int c = 0; c < panels.columns(); c++) {
      for (int r = 0; r < panels.rows(); r++) {
        Box box = cutter.part(c, r);
        String name = PlanFiles.tile(c + 1, r + 1);
        requireRoom(box, name, smallestToolMm);
        String which = " " + name + " of " + panels.columns() + " x " + panels.rows();
        Job panel = whole.job().on(panels.single()).called(which);
        Job job = panel.on(panel.machine(), panel.layup().ofTile(name));
        Warnings own = new Warnings();
        PanelTop top = PanelTop.of(job, name, options.accepts(Acceptance.BEND), own);
        Landscape tile = part(whole, top, box, cutter.tile(c, r));
        top.warn(tile.tiling().carved(), own);
        if (!tile.shape().flat()) {
          new Assignment(tile).reliable(options.strict(), own);
        }
        List<Warning> seams = new ArrayList<>(own.list());
        seams.addAll(SeamCheck.of(tile, smallestToolMm));
        List<Warning> all = new ArrayList<>(whole.warnings());
        all.addAll(seams);
        tiles.add(new Part(new Tile<>(c + 1, r + 1, tile.warned(all)), seams));
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

  private static Landscape part(Landscape whole, PanelTop top, Box box, Tiling tiling) {
    Box carved = tiling.carved();
    MapData maps =
        new MapData(
            whole.terrain().part(box, carved),
            whole.bands(),
            whole.zones().stream().map(zone -> zone.part(box, carved)).toList());
    Job job = top.job();
    boolean own = top.map().isPresent() || job.layup().measured().byPlace();
    Depths depths = own ? DepthModel.depths(job.layup(), job.allowance(), true) : whole.depths();
    Depths planned = whole.faces().isPresent() ? whole.depths() : depths;
    return new Landscape(
            job,
            depths,
            maps,
            tiling,
            whole.faces().map(faces -> faces.part(box, carved, tiling)),
            top.shape(planned, depths),
            Standing.of(job, whole.depths(), tiling),
            whole.warnings())
        .judged();
  }
}
