package plyscape.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.MultiPolygon;
import plyscape.bands.BandMaker;
import plyscape.bands.Bands;
import plyscape.fault.Warnings;
import plyscape.job.Job;
import plyscape.layup.DepthModel;
import plyscape.layup.PlyDepth;
import plyscape.machine.Tool;
import plyscape.region.Tiling;
import plyscape.region.TilingBuilder;
import plyscape.simulate.CutResult;
import plyscape.terrain.Terrain;
import plyscape.terrain.TerrainReader;
import plyscape.toolpath.LowerBound;
import plyscape.toolpath.PathPlanner;
import plyscape.toolpath.PocketLevel;
import plyscape.toolpath.ToolRun;
import plyscape.zones.OutsideZone;
import plyscape.zones.Zone;
import plyscape.zones.ZoneReader;

/**
 * Runs the stages of a job in order: depths, terrain, bands, zones, regions, and for a whole plan toolpaths, G-code and the
 * simulation of that G-code. DEVELOPERS.md walks through them.
 */
public final class Planner {

  private final Job job;
  private final PlanOptions options;
  private final Progress progress;
  private final Warnings warnings;

  private Planner(Job job, PlanOptions options, Progress progress, Warnings warnings) {
    this.job = job;
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
    List<PlyDepth> depths = DepthModel.depths(job.layup(), job.allowance(), options.acceptThickness());
    double smallestMm = job.tools().stream().mapToDouble(Tool::diameterMm).min().orElseThrow();

    progress.stage("terrain");
    Terrain terrain = TerrainReader.read(job.terrain(), job.panel(), smallestMm, warnings);
    Bands bands = BandMaker.make(job.terrain(), terrain, depths);

    progress.stage("zones");
    List<Zone> zones = new ArrayList<>(ZoneReader.read(job.zones(), terrain.frame(), smallestMm, warnings));
    if (job.terrain().take().outline() != null) {
      zones.add(OutsideZone.of(job.terrain().take().outline(), terrain.frame(), warnings));
    }

    progress.stage("regions");
    Tiling tiling =
        TilingBuilder.build(terrain, bands, zones, depths.size(), smallestMm, job.minimumAreaMm2(), warnings);
    new Assignment(job, depths).check(tiling, options.strict(), warnings);

    double thickness = DepthModel.thicknessMm(job.layup());
    Plan regions =
        new Plan(
            job, depths, thickness, terrain, bands, zones, tiling, List.of(), null, null, warnings.list(), Version.TEXT);
    return options.previewOnly() ? regions : cut(regions);
  }

  private Plan cut(Plan regions) {
    List<PocketLevel> levels = levels(regions);

    progress.stage("toolpaths");
    List<ToolRun> runs = PathPlanner.plan(levels, job.tools(), job.machine(), regions.tiling().carved(), warnings);
    TravelCheck.require(job, regions.thicknessMm(), runs);

    progress.stage("G-code");
    ProgramMaker maker = new ProgramMaker(job, regions.depths(), regions.thicknessMm(), regions.version());
    List<ProgramMaker.Made> made = new ArrayList<>();
    for (ToolRun run : runs) {
      made.add(maker.make(made.size() + 1, run));
    }

    progress.stage("simulation");
    CutResult result = Proof.of(regions, made, options.simulationCellMm());
    Proof.require(result);
    Proof.warn(result, warnings);

    progress.stage("lower bound");
    double bound = LowerBound.seconds(levels, job.tools(), regions.tiling().carved(), LowerBound.CELL_MM);
    List<ToolProgram> programs = made.stream().map(ProgramMaker.Made::written).toList();
    return new Plan(
        job,
        regions.depths(),
        regions.thicknessMm(),
        regions.terrain(),
        regions.bands(),
        regions.zones(),
        regions.tiling(),
        programs,
        time(programs, bound),
        result.verification(),
        warnings.list(),
        regions.version());
  }

  /** Pockets with a depth over 0, from the top down; those of plies that don't show are kept as steps on the way. */
  static List<PocketLevel> levels(Plan regions) {
    MultiPolygon none = new GeometryFactory().createMultiPolygon();
    SortedMap<Integer, MultiPolygon> exposed = new TreeMap<>(regions.tiling().exposed());
    List<PocketLevel> levels = new ArrayList<>();
    regions
        .tiling()
        .pockets()
        .forEach(
            (ply, pocket) -> {
              double depth = regions.depths().get(ply - 1).targetMm();
              if (depth > 0) {
                levels.add(new PocketLevel(ply, depth, pocket, exposed.getOrDefault(ply, none)));
              }
            });
    return levels;
  }

  private static PlanTime time(List<ToolProgram> programs, double boundS) {
    double cut = 0;
    double rapid = 0;
    for (ToolProgram program : programs) {
      for (ToolProgram.PassSummary pass : program.passes()) {
        cut += pass.cutS();
        rapid += pass.rapidS();
      }
    }
    return new PlanTime(cut, rapid, cut + rapid, boundS);
  }
}
