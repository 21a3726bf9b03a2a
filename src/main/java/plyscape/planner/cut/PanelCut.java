package plyscape.planner.cut;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.MultiPolygon;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.job.Job;
import plyscape.layup.PlyDepth;
import plyscape.machine.Tool;
import plyscape.plan.Landscape;
import plyscape.plan.PanelPlan;
import plyscape.plan.PlanTime;
import plyscape.plan.Progress;
import plyscape.plan.ToolProgram;
import plyscape.planner.check.TravelCheck;
import plyscape.simulate.CutResult;
import plyscape.toolpath.PathPlanner;
import plyscape.toolpath.face.FacePlanner;
import plyscape.toolpath.face.FaceTask;
import plyscape.toolpath.task.CutTask;
import plyscape.toolpath.task.PocketLevel;
import plyscape.toolpath.task.ToolRun;

/**
 * The second half of a run, for one panel: toolpaths, G-code, the simulation of that G-code, the
 * bound.
 */
public final class PanelCut {

  private static final String NOTHING_CUT =
      "only the top ply shows and it is left uncut, so there is no program; top: mid cuts it,"
          + " terrain.plies and zones show others";

  private final double cellMm;
  private final Progress progress;
  private final Warnings warnings;

  /**
   * One panel's.
   *
   * @param cellMm of the simulation
   * @param warnings the panel's own
   */
  public PanelCut(double cellMm, Progress progress, Warnings warnings) {
    this.cellMm = cellMm;
    this.progress = progress;
    this.warnings = warnings;
  }

  /** The finished plan of a panel from its regions. */
  public PanelPlan of(Landscape regions) {
    TravelCheck.requirePockets(regions);
    ProgramMaker maker = new ProgramMaker(regions);
    List<PocketLevel> levels = levels(regions, maker.fit().rimMm());
    progress.stage("toolpaths");
    Cutouts cutouts = Cutouts.of(regions, maker.tools(), warnings);
    FirstProgram first = new FirstProgram(regions, maker, cutouts, cellMm);
    BackgroundWork background = new BackgroundWork(regions, levels, first, progress);
    List<ToolRun> runs = new ArrayList<>(cutouts.before());
    runs.addAll(runs(regions, levels, maker, background));
    runs.addAll(cutouts.after());
    TravelCheck.require(regions.job(), regions.thicknessMm(), maker.cut(runs));

    progress.stage("G-code");
    List<ProgramMaker.Made> made =
        IntStream.range(0, runs.size())
            .parallel()
            .mapToObj(i -> i == 0 ? first.made(runs) : maker.make(i + 1, runs.get(i)))
            .toList();

    progress.stage("simulation");
    CutResult found = Proof.of(regions, first.cut(runs, made));
    BiteRelief.Outcome cut =
        new BiteRelief(regions, maker, cutouts.areas(), cellMm).of(runs, made, found);
    CutResult result = cut.result();
    Proof.require(result);
    Proof.warn(result, warnings);

    progress.stage("lower bound");
    double boundS = background.boundS();
    List<ToolProgram> programs = cut.made().stream().map(ProgramMaker.Made::written).toList();
    if (levels.isEmpty() && programs.isEmpty()) {
      warnings.add("nothing-cut", NOTHING_CUT, "top");
    }
    return new PanelPlan(
        regions,
        programs,
        time(programs, boundS),
        result.verification(),
        cutouts.areas(),
        warnings.list(),
        background.estimates(programs));
  }

  private List<ToolRun> runs(
      Landscape regions, List<PocketLevel> levels, ProgramMaker maker, BackgroundWork background) {
    Job job = regions.job();
    List<Tool> tools = maker.tools();
    Box carved = regions.tiling().carved();
    List<ToolRun> roughing =
        PathPlanner.plan(
            CutTask.of(levels, tools, job.machine(), carved).onSlopes(maker.fit().rimMm()),
            background,
            warnings);
    return regions
        .faces()
        .map(
            faces ->
                FacePlanner.plan(
                    new FaceTask(faces, maker.fit(), tools, job.machine(), carved),
                    roughing,
                    warnings))
        .orElse(roughing);
  }

  /**
   * Pockets with a depth over 0, from the top down; those of plies that don't show are kept as
   * steps on the way. Under sculpted faces those of {@link RoughLevels}.
   *
   * @param rimMm how far a flat cutter's rim may lie off the depth at its axis
   */
  private static List<PocketLevel> levels(Landscape regions, double rimMm) {
    return regions
        .faces()
        .map(faces -> RoughLevels.of(faces, regions.depths(), rimMm))
        .orElseGet(() -> flatLevels(regions));
  }

  private static List<PocketLevel> flatLevels(Landscape regions) {
    MultiPolygon none = new GeometryFactory().createMultiPolygon();
    SortedMap<Integer, MultiPolygon> exposed = new TreeMap<>(regions.tiling().exposed());
    List<PocketLevel> levels = new ArrayList<>();
    regions
        .tiling()
        .pockets()
        .forEach(
            (ply, pocket) -> {
              PlyDepth at = regions.depths().of(ply);
              double depth = PocketLevel.asWritten(at.targetMm());
              if (depth > 0) {
                levels.add(
                    new PocketLevel(
                        ply, depth, pocket, exposed.getOrDefault(ply, none), at.ply().grainDeg()));
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
