package plyscape.plan;

import java.util.ArrayList;
import java.util.List;
import plyscape.bands.BandMaker;
import plyscape.bands.Bands;
import plyscape.fault.Warnings;
import plyscape.grid.GroundFrame;
import plyscape.job.Job;
import plyscape.layup.DepthModel;
import plyscape.layup.Depths;
import plyscape.layup.FaceWindow;
import plyscape.machine.Tool;
import plyscape.region.FaceField;
import plyscape.region.FaceMaker;
import plyscape.region.Tiling;
import plyscape.region.TilingBuilder;
import plyscape.region.TilingRules;
import plyscape.terrain.ClassReader;
import plyscape.terrain.Terrain;
import plyscape.terrain.TerrainReader;
import plyscape.zones.OutsideZone;
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
  private final PlanOptions options;
  private final Progress progress;
  private final Warnings warnings;

  private Planner(Job job, PlanOptions options, Progress progress, Warnings warnings) {
    this.panels = job.panel();
    this.job = panels.tiled() ? job.on(panels.whole(), job.name()) : job;
    this.options = options;
    this.progress = progress;
    this.warnings = warnings;
  }

  /** Names of the stages of a run, in order. */
  public static List<String> stages(PlanOptions options) {
    List<String> names = new ArrayList<>(List.of("terrain", "zones", "regions"));
    if (!options.previewOnly()) {
      names.addAll(List.of("toolpaths", "G-code", "simulation", "lower bound"));
    }
    return List.copyOf(names);
  }

  /**
   * Plans a job.
   *
   * @throws plyscape.fault.InputFault if an input file is bad
   * @throws plyscape.fault.JobFault if the job can't be done as asked
   * @throws plyscape.fault.VerifyFault if the G-code doesn't make what the plan says
   */
  public static Plan plan(Job job, PlanOptions options, Progress progress, Warnings warnings) {
    try {
      return new Planner(job, options, progress, warnings).run();
    } finally {
      progress.done();
    }
  }

  private Plan run() {
    Depths depths = DepthModel.depths(job.layup(), job.allowance(), options.acceptThickness());
    double smallestMm = smallestMm();

    progress.stage("terrain");
    Terrain terrain = TerrainReader.read(job.terrain(), job.panel(), smallestMm, warnings);

    progress.stage("zones");
    GroundFrame frame = terrain.frame();
    List<Zone> zones =
        new ArrayList<>(
            ZoneReader.read(
                job.zones(),
                frame,
                file -> ClassReader.read(file, frame, warnings),
                smallestMm,
                warnings));
    if (job.terrain().take().outline() != null) {
      Zone outside = OutsideZone.of(job.terrain().take().outline(), frame, warnings);
      zones.add(outside);
      terrain = terrain.within(OutsideZone.inside(outside, terrain.elevationM().frame()));
    }
    Bands bands = BandMaker.make(job.terrain(), terrain, depths);

    progress.stage("regions");
    Tiling tiling =
        TilingBuilder.build(
            terrain,
            bands,
            zones,
            new TilingRules(depths.plies(), smallestMm, job.minimumAreaMm2()),
            warnings);
    new Assignment(job, depths).check(tiling, options.strict(), warnings);

    double thickness = DepthModel.thicknessMm(job.layup());
    Plan regions =
        new Plan(
            job,
            depths,
            thickness,
            terrain,
            bands,
            zones,
            tiling,
            List.of(),
            null,
            null,
            warnings.list(),
            Version.TEXT);
    if (job.surface().sculpted()) {
      regions = sculpted(regions);
    }
    if (panels.tiled()) {
      return tiled(regions, TileSplit.of(regions, panels, smallestMm));
    }
    return options.previewOnly() ? regions : new PanelCut(options, progress, warnings).of(regions);
  }

  /** The same with faces, and risks where these come nearest to their plies' edges. */
  private Plan sculpted(Plan flat) {
    FaceField faces =
        FaceMaker.make(
            flat.tiling(),
            flat.terrain(),
            flat.bands(),
            flat.depths(),
            FaceWindow.of(flat.depths(), job.allowance()),
            job.surface().cuspMm(),
            warnings);
    Plan told = flat.warned(warnings.list());
    if (!faces.sculpted()) {
      return told;
    }
    List<FaceWindow> taken =
        flat.depths().stream().map(depth -> faces.rangeMm(depth.ply().number())).toList();
    return told.withFaces(faces)
        .withDepths(DepthModel.worstIn(flat.depths(), taken, job.layup(), job.allowance()));
  }

  private Plan tiled(Plan whole, List<Plan.Tile> parts) {
    List<Plan.Tile> tiles = new ArrayList<>();
    PlanTime time = options.previewOnly() ? null : new PlanTime(0, 0, 0, 0);
    for (Plan.Tile part : parts) {
      Plan plan = part.plan();
      if (!options.previewOnly()) {
        Warnings own = new Warnings();
        plan.warnings().forEach(w -> own.add(w.code(), w.message(), w.where()));
        plan = new PanelCut(options, progress, own).of(plan);
        time = time.plus(plan.time());
      }
      tiles.add(new Plan.Tile(part.column(), part.row(), plan));
      plan.warnings().stream()
          .skip(whole.warnings().size())
          .forEach(
              w -> warnings.add(w.code(), w.message(), (part.name() + " " + w.where()).strip()));
    }
    return with(whole, List.copyOf(tiles), time);
  }

  private Plan with(Plan whole, List<Plan.Tile> tiles, PlanTime time) {
    return new Plan(
        job,
        whole.depths(),
        whole.thicknessMm(),
        whole.terrain(),
        whole.bands(),
        whole.zones(),
        whole.tiling(),
        List.of(),
        time,
        null,
        warnings.list(),
        whole.version(),
        tiles,
        whole.faces());
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
