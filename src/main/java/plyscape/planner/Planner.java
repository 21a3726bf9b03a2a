package plyscape.planner;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import plyscape.bands.BandCheck;
import plyscape.bands.BandMaker;
import plyscape.bands.Bands;
import plyscape.bands.Plateaus;
import plyscape.bend.PanelShape;
import plyscape.fault.JobFault;
import plyscape.fault.Warnings;
import plyscape.files.PlanFiles;
import plyscape.grid.GroundFrame;
import plyscape.job.GroundCover;
import plyscape.job.Job;
import plyscape.layup.DepthModel;
import plyscape.layup.Depths;
import plyscape.layup.FaceWindow;
import plyscape.layup.Layup;
import plyscape.machine.Tool;
import plyscape.plan.Acceptance;
import plyscape.plan.Landscape;
import plyscape.plan.MapData;
import plyscape.plan.PanelFigures;
import plyscape.plan.PanelPlan;
import plyscape.plan.PanelStore;
import plyscape.plan.PanelSummary;
import plyscape.plan.Plan;
import plyscape.plan.PlanOptions;
import plyscape.plan.Progress;
import plyscape.plan.Standing;
import plyscape.plan.Tile;
import plyscape.plan.TiledLandscape;
import plyscape.plan.TiledPlan;
import plyscape.planner.advice.MeasureAdvice;
import plyscape.planner.check.Assignment;
import plyscape.planner.cut.PanelCut;
import plyscape.region.FaceField;
import plyscape.region.FaceMaker;
import plyscape.region.Tiling;
import plyscape.region.TilingBuilder;
import plyscape.region.TilingRules;
import plyscape.terrain.ClassReader;
import plyscape.terrain.Terrain;
import plyscape.terrain.TerrainReader;
import plyscape.terrain.VoidCheck;
import plyscape.zones.LetteringZones;
import plyscape.zones.OutsideZone;
import plyscape.zones.VoidGround;
import plyscape.zones.Zone;
import plyscape.zones.ZoneReader;

/**
 * Runs the stages of a job in order: depths, terrain, bands, zones, regions, and for a whole plan
 * toolpaths, G-code and the simulation of that G-code. DEVELOPERS.md walks through them. A
 * landscape over several panels is one tiling first, which is then cut along the seams; each panel
 * goes through the second half by itself.
 */
public final class Planner {

  private final Job job;
  private final Job.PanelSpec panels;
  private final PanelTop top;
  private final PlanOptions options;
  private final Progress progress;
  private final Warnings warnings;
  private final PanelStore store;

  private Planner(
      Job job, PlanOptions options, Progress progress, Warnings warnings, PanelStore store) {
    this.store = store;
    this.panels = job.panel();
    this.top = top(job, options, warnings);
    this.job = top.job();
    this.options = options;
    this.progress = progress;
    this.warnings = warnings;
  }

  /** Several panels are one flat landscape first; each has its own top face later. */
  private static PanelTop top(Job job, PlanOptions options, Warnings warnings) {
    if (job.panel().tiled()) {
      return PanelTop.flat(job.on(job.panel().whole()));
    }
    String only = PlanFiles.tile(1, 1);
    Job single = job.on(job.machine(), job.layup().ofTile(only));
    return PanelTop.of(single, only, options.accepts(Acceptance.BEND), warnings);
  }

  /** Names of the stages of a run, in order. */
  public static List<String> stages(PlanOptions options) {
    List<String> names = new ArrayList<>(List.of("terrain", "zones", "regions"));
    if (!options.previewOnly()) {
      names.addAll(List.of("toolpaths", "G-code", "simulation", "lower bound"));
    }
    return List.copyOf(names);
  }

  /** Plans a job; of several panels only figures remain. */
  public static Plan plan(Job job, PlanOptions options, Progress progress, Warnings warnings) {
    return plan(job, options, progress, warnings, PanelStore.FIGURES);
  }

  /**
   * Plans a job.
   *
   * @param store takes each of several panels as soon as it is proved
   * @throws plyscape.fault.InputFault if an input file is bad
   * @throws plyscape.fault.JobFault if the job can't be done as asked
   * @throws plyscape.fault.VerifyFault if the G-code doesn't make what the plan says
   */
  public static Plan plan(
      Job job, PlanOptions options, Progress progress, Warnings warnings, PanelStore store) {
    try {
      return new Planner(job, options, progress, warnings, store).run();
    } finally {
      progress.done();
    }
  }

  private Plan run() {
    Landscape landscape = landscape();
    if (panels.tiled()) {
      TileSplit split = new TileSplit(landscape, panels, options, smallestMm());
      return options.previewOnly() ? seen(landscape, split) : cut(landscape, split);
    }
    if (options.previewOnly()) {
      return landscape;
    }
    PanelPlan plan = cut(landscape, warnings.part(""));
    requireCut(plan.figures());
    return plan;
  }

  /** Whether panels of one landscape differ, so that each is judged by itself. */
  private boolean ownTiles() {
    return panels.tiled() && TileSplit.own(panels, job.layup());
  }

  private Landscape landscape() {
    Layup layup = panels.tiled() ? job.layup().ofTile("") : job.layup();
    Depths depths =
        DepthModel.depths(layup, job.allowance(), options.accepts(Acceptance.THICKNESS));
    if (!options.previewOnly()) {
      Job panel = panels.tiled() ? job.on(panels.single()) : job;
      EarlyChecks.require(panel, depths, options, ownTiles());
    }
    MapData maps = maps(depths);
    progress.stage("regions");
    Tiling tiling =
        TilingBuilder.build(
            maps.terrain(),
            maps.bands(),
            maps.zones(),
            new TilingRules(
                depths.plies(), smallestMm(), job.minimumAreaMm2(), Standing.cure(job, depths)),
            warnings);
    Landscape flat =
        new Landscape(
                job,
                panels.tiled() ? depths.everywhere() : depths,
                maps,
                tiling,
                Optional.empty(),
                panels.tiled() ? PanelShape.FLAT : top.shape(depths, depths),
                Standing.NONE,
                warnings.list())
            .judged();
    if (!ownTiles()) {
      new Assignment(flat).check(options, warnings);
    }
    top.warn(tiling.carved(), warnings);
    if (!panels.tiled()) {
      MeasureAdvice.warn(flat, warnings);
    }
    Landscape stands = flat.standing(Standing.of(job, depths, tiling, warnings), warnings.list());
    return job.surface().sculpted() ? sculpted(stands) : stands;
  }

  private MapData maps(Depths depths) {
    progress.stage("terrain");
    Terrain terrain = TerrainReader.read(job.terrain(), job.panel(), smallestMm(), warnings);
    progress.stage("zones");
    GroundFrame frame = terrain.frame();
    List<Zone> zones =
        new ArrayList<>(
            ZoneReader.read(
                job.zones(),
                frame,
                file -> ClassReader.read(file, frame, warnings),
                smallestMm(),
                warnings));
    List<Zone> letters = LetteringZones.of(job.lettering(), frame, smallestMm(), warnings);
    GroundCover cover = job.terrain().options().cover();
    if (cover.outline() != null) {
      Zone outside = OutsideZone.of(cover.outline(), frame, warnings);
      zones.add(outside);
      terrain = OutsideZone.inside(outside, terrain);
    }
    zones.addAll(letters);
    VoidCheck.check(terrain, cover.voids(), warnings);
    Optional<Zone> unknown = VoidGround.zone(terrain, cover.voids(), job.terrain().file());
    if (unknown.isPresent()) {
      zones.add(0, unknown.get());
      terrain = terrain.within(VoidGround.known(terrain));
    }
    Bands bands = BandMaker.make(job.terrain(), terrain, depths);
    BandCheck.check(job.terrain(), bands, number -> depths.of(number).ply().name(), warnings);
    return new MapData(Plateaus.onBreaks(terrain, bands), bands, zones);
  }

  /** The same with faces, and risks as they lie in their plies. */
  private Landscape sculpted(Landscape flat) {
    List<FaceWindow> windows = FaceWindow.of(flat.depths(), job.allowance());
    FaceField faces =
        FaceMaker.make(
            flat.tiling(),
            flat.terrain(),
            flat.bands(),
            flat.depths(),
            windows,
            job.surface().cuspMm());
    FaceMaker.warnOfFlat(flat.tiling(), flat.depths(), windows, warnings);
    Landscape warned = flat.warned(warnings.list());
    if (!faces.sculpted()) {
      return warned;
    }
    return warned.sculpted(faces).judged();
  }

  private PanelPlan cut(Landscape panel, Warnings own) {
    return new PanelCut(options.simulationCellMm(), progress, own).of(panel);
  }

  private TiledLandscape seen(Landscape whole, TileSplit split) {
    List<Tile<Landscape>> tiles = new ArrayList<>();
    TileVerdicts verdicts = new TileVerdicts(panels);
    for (TileSplit.Place place : split.places()) {
      TileSplit.Part part = split.part(place);
      warnings.part(place.name()).addAll(part.seamWarnings());
      tiles.add(part.tile());
      verdicts.add(part.tile());
    }
    return new TiledLandscape(judged(whole, verdicts), panels, tiles, warnings.list());
  }

  private Landscape judged(Landscape whole, TileVerdicts verdicts) {
    return ownTiles() ? verdicts.over(whole) : whole;
  }

  /** One panel after the other; only what the store leaves of each is held. */
  private TiledPlan cut(Landscape whole, TileSplit split) {
    split.require();
    List<Tile<PanelSummary>> tiles = new ArrayList<>();
    TileVerdicts verdicts = new TileVerdicts(panels);
    for (TileSplit.Place place : split.places()) {
      progress.panel(place.name(), tiles.size() + 1, split.places().size());
      TileSplit.Part part = split.part(place);
      verdicts.add(part.tile());
      tiles.add(new Tile<>(place.column(), place.row(), cut(part)));
    }
    TiledPlan plan = new TiledPlan(judged(whole, verdicts), panels, tiles, warnings.list());
    requireCut(plan.figures());
    return plan;
  }

  private PanelSummary cut(TileSplit.Part part) {
    Tile<Landscape> tile = part.tile();
    Warnings own = warnings.part(tile.name());
    own.addAll(part.seamWarnings());
    Optional<PanelSummary> kept = store.kept(tile);
    if (kept.isPresent()) {
      own.addAll(kept.get().figures().warnings());
      return kept.get();
    }
    PanelPlan plan = cut(tile.plan(), warnings.part(tile.name()));
    progress.stage("files");
    return store.put(new Tile<>(tile.column(), tile.row(), plan));
  }

  /** Refuses a plan that cuts nothing though something should be. */
  private static void requireCut(List<PanelFigures> panels) {
    if (panels.stream().anyMatch(PanelFigures::toCut)
        && panels.stream().allMatch(panel -> panel.cutters().isEmpty())) {
      throw new JobFault(
          "nothing can be cut: no cutter gets into any of the places that should be",
          "list a thinner cutter, or one with longer flutes");
    }
  }

  /**
   * Diameter of the smallest flat cutter, which decides how narrow a region may be; of the smallest
   * of all when none is flat.
   */
  private double smallestMm() {
    return job.tools().stream()
        .filter(tool -> tool.shape() == Tool.Shape.FLAT)
        .mapToDouble(Tool::diameterMm)
        .min()
        .orElseGet(() -> job.tools().stream().mapToDouble(Tool::diameterMm).min().orElseThrow());
  }
}
