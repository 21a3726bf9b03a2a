package plyscape.planner;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import plyscape.fault.JobFault;
import plyscape.fault.Warning;
import plyscape.fault.Warnings;
import plyscape.files.PlanFiles;
import plyscape.grid.Box;
import plyscape.job.Job;
import plyscape.layup.DepthModel;
import plyscape.layup.Depths;
import plyscape.layup.Layup;
import plyscape.plan.Acceptance;
import plyscape.plan.Landscape;
import plyscape.plan.MapData;
import plyscape.plan.PlanOptions;
import plyscape.plan.Standing;
import plyscape.plan.Tile;
import plyscape.planner.advice.MeasureAdvice;
import plyscape.planner.check.Assignment;
import plyscape.region.TileCutter;
import plyscape.region.Tiling;
import plyscape.text.Template;

/**
 * Splits a whole landscape into those of the panels that carry it, each in its own coordinates.
 * Depths, bands and the range of elevations stay the whole's, so that every ply goes on at the same
 * height across a seam. There is no border at seams; the panel's edge there is a wall for the
 * cutter, so inner corners at a seam keep its radius.
 */
final class TileSplit {

  private final Landscape whole;
  private final Job.PanelSpec panels;
  private final PlanOptions options;
  private final double smallestToolMm;
  private final TileCutter cutter;
  private final List<Place> places = new ArrayList<>();

  /**
   * A panel's place.
   *
   * @param column from 1 at the left
   * @param row from 1 at the bottom
   */
  record Place(int column, int row) {
    String name() {
      return PlanFiles.tile(column, row);
    }
  }

  /**
   * A panel of the landscape.
   *
   * @param tile its place and regions, whose warnings are the whole's and then those of its seams
   * @param seamWarnings the latter alone
   */
  record Part(Tile<Landscape> tile, List<Warning> seamWarnings) {}

  /**
   * Prepares the cuts.
   *
   * @param whole regions of the whole
   * @param panels size and number
   * @param smallestToolMm diameter; a panel with less of the landscape than this could not be cut
   * @throws JobFault if a panel would stay bare
   */
  TileSplit(Landscape whole, Job.PanelSpec panels, PlanOptions options, double smallestToolMm) {
    this.whole = whole;
    this.panels = panels;
    this.options = options;
    this.smallestToolMm = smallestToolMm;
    cutter =
        new TileCutter(
            whole.tiling(), panels.widthMm(), panels.heightMm(), panels.columns(), panels.rows());
    for (int c = 1; c <= panels.columns(); c++) {
      for (int r = 1; r <= panels.rows(); r++) {
        places.add(new Place(c, r));
        requireRoom(box(places.get(places.size() - 1)), PlanFiles.tile(c, r), smallestToolMm);
      }
    }
  }

  /** The panels, by columns from the left, upwards in each. */
  List<Place> places() {
    return Collections.unmodifiableList(places);
  }

  /** Meets now what would be refused of a later panel when its turn comes. */
  void require() {
    for (Place place : places) {
      PanelTop top = top(place, new Warnings());
      boolean own = top.map().isPresent() || top.job().layup().measured().byPlace();
      if (own) {
        part(place);
      }
    }
  }

  /** A panel without programs. Its warnings follow those of the whole. */
  Part part(Place place) {
    Warnings own = new Warnings();
    PanelTop top = top(place, own);
    Landscape tile = part(top, box(place), cutter.tile(place.column() - 1, place.row() - 1));
    top.warn(tile.tiling().carved(), own);
    if (own(panels, whole.job().layup())) {
      new Assignment(tile).check(options, own);
      MeasureAdvice.warn(tile, own);
    }
    List<Warning> seams = new ArrayList<>(own.list());
    seams.addAll(SeamCheck.of(tile, smallestToolMm));
    List<Warning> all = new ArrayList<>(whole.warnings());
    all.addAll(seams);
    return new Part(new Tile<>(place.column(), place.row(), tile.warned(all)), seams);
  }

  private PanelTop top(Place place, Warnings warnings) {
    String which = " " + place.name() + " of " + panels.columns() + " x " + panels.rows();
    Job panel = whole.job().on(panels.single()).called(which);
    Job job = panel.on(panel.machine(), panel.layup().ofTile(place.name()));
    return PanelTop.of(job, place.name(), options.accepts(Acceptance.BEND), warnings);
  }

  private Box box(Place place) {
    return cutter.part(place.column() - 1, place.row() - 1);
  }

  /** Whether panels differ, so that each is judged by itself. */
  static boolean own(Job.PanelSpec panels, Layup layup) {
    return panels.topMap() != null || layup.measured().byPlace();
  }

  private static void requireRoom(Box part, String name, double smallestToolMm) {
    if (part == null || Math.min(part.width(), part.height()) < smallestToolMm) {
      throw new JobFault(
          part == null
              ? "the landscape doesn't reach the panel " + name
              : Template.fill(
                  "only %.2f x %.2f mm of the landscape would lie on the panel %s, too little for"
                      + " the cutter",
                  part.width(), part.height(), name),
          "set other panel.tiles, or crop the terrain to a shape more like that of the panels"
              + " together");
    }
  }

  private Landscape part(PanelTop top, Box box, Tiling tiling) {
    Box carved = tiling.carved();
    MapData maps =
        new MapData(
            whole.terrain().part(box, carved),
            whole.bands(),
            whole.zones().stream().map(zone -> zone.part(box, carved)).toList());
    Job job = top.job();
    boolean own = top.map().isPresent() || job.layup().measured().byPlace();
    boolean accepted = options.accepts(Acceptance.THICKNESS);
    Depths depths =
        own ? DepthModel.depths(job.layup(), job.allowance(), accepted) : whole.depths();
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
