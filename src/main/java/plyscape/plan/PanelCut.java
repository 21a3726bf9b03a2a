package plyscape.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.MultiPolygon;
import plyscape.fault.Warnings;
import plyscape.job.Job;
import plyscape.layup.PlyDepth;
import plyscape.simulate.CutResult;
import plyscape.toolpath.PathPlanner;
import plyscape.toolpath.face.FacePlanner;
import plyscape.toolpath.task.PathOptions;
import plyscape.toolpath.task.PocketLevel;
import plyscape.toolpath.task.ToolRun;

/**
 * The second half of a run, for one panel: toolpaths, G-code, the simulation of that G-code, the
 * bound.
 */
final class PanelCut {

  private final PlanOptions options;
  private final Progress progress;
  private final Warnings warnings;

  PanelCut(PlanOptions options, Progress progress, Warnings warnings) {
    this.options = options;
    this.progress = progress;
    this.warnings = warnings;
  }

  /** The finished plan of a panel from the plan of its regions. */
  Plan of(Plan regions) {
    Job job = regions.job();
    List<PocketLevel> levels = levels(regions);

    progress.stage("toolpaths");
    ProgramMaker maker =
        new ProgramMaker(job, regions.depths(), regions.thicknessMm(), regions.version());
    FirstProgram first = new FirstProgram(regions, maker, options.simulationCellMm());
    BesidePaths beside = new BesidePaths(regions, levels, first, progress);
    List<ToolRun> runs =
        PathPlanner.plan(
            levels,
            job.tools(),
            job.machine(),
            regions.tiling().carved(),
            PathOptions.of(job.machine()),
            beside,
            warnings);
    if (regions.faces() != null) {
      runs =
          FacePlanner.plan(
              regions.faces(),
              runs,
              job.tools(),
              job.machine(),
              regions.tiling().carved(),
              warnings);
    }
    List<ToolRun> all = runs;
    TravelCheck.require(job, regions.thicknessMm(), all);

    progress.stage("G-code");
    List<ProgramMaker.Made> made =
        IntStream.range(0, all.size())
            .parallel()
            .mapToObj(i -> i == 0 ? first.made(all) : maker.make(i + 1, all.get(i)))
            .toList();

    progress.stage("simulation");
    CutResult result = Proof.of(regions, first.cut(all, made));
    Proof.require(result);
    Proof.warn(result, warnings);

    progress.stage("lower bound");
    double boundS = beside.boundS();
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
            time(programs, boundS),
            result.verification(),
            warnings.list(),
            regions.version())
        .withFaces(regions.faces());
  }

  /**
   * Pockets with a depth over 0, from the top down; those of plies that don't show are kept as
   * steps on the way. Under sculpted faces those of {@link RoughLevels}.
   */
  static List<PocketLevel> levels(Plan regions) {
    if (regions.faces() != null) {
      return RoughLevels.of(regions.faces(), regions.depths());
    }
    MultiPolygon none = new GeometryFactory().createMultiPolygon();
    SortedMap<Integer, MultiPolygon> exposed = new TreeMap<>(regions.tiling().exposed());
    List<PocketLevel> levels = new ArrayList<>();
    regions
        .tiling()
        .pockets()
        .forEach(
            (ply, pocket) -> {
              PlyDepth at = regions.depths().of(ply);
              if (at.targetMm() > 0) {
                levels.add(
                    new PocketLevel(
                        ply,
                        at.targetMm(),
                        pocket,
                        exposed.getOrDefault(ply, none),
                        at.ply().grainDeg()));
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
