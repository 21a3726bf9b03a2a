package plyscape.toolpath.face;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import plyscape.fault.JobFault;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.machine.Move;
import plyscape.machine.Tool;
import plyscape.region.FaceField;
import plyscape.toolpath.task.Pass;
import plyscape.toolpath.task.ToolRun;

/**
 * Finishes sculpted faces after roughing: parallel lines of a ball-nosed or tapered cutter (or, if
 * there is none, of the smallest flat one), dropped on the faces so that it touches nothing that is
 * to stay. Several such cutters run from the largest tip to the smallest, each for what the ones
 * before left.
 */
public final class FacePlanner {

  /** A sharper tip would need lines nearer than a machine can tell apart. */
  private static final double LEAST_TIP_RADIUS_MM = 0.1;

  /** Nodes this near show the sharpest ridge of a face to about 0.005 mm. */
  private static final double MOST_STEP_MM = 0.08;

  /** A flat cutter's rim is found to a node: on a slope of 0.3 this is 0.015 mm of height. */
  private static final double MOST_FLAT_STEP_MM = 0.05;

  /** Height that a tip between two nodes may be off, mm: e2/8R, twice for both directions. */
  private static final double NODE_ERROR_MM = 0.0015;

  /**
   * Keeps memory near 400 MB: larger panels get nodes farther apart, up to where they would be off
   * by so much, mm; beyond that they take more memory.
   */
  private static final double MOST_NODES = 1.6e7;

  private static final double COARSE_NODE_ERROR_MM = 0.003;
  private static final double COARSEST_FLAT_STEP_MM = 0.1;

  /** Layers that a thin cutter may take where its stepdown is less than the window. */
  private static final int MOST_LAYERS = 24;

  /** Of the stepdown: flanks meet rests between nodes a little higher than at them. */
  private static final double STEPDOWN_SHARE = 0.98;

  /** Of the stepdown, where edges of wood between nodes aren't looked for. */
  private static final double NEAR_WOOD_SHARE = 0.5;

  private final FaceTask task;
  private final FaceField faces;
  private final Box carved;

  private FacePlanner(FaceTask task) {
    this.task = task;
    this.faces = task.faces();
    this.carved = task.carved();
  }

  /** Whether a cutter can finish sculpted faces better than by steps. */
  static boolean rounded(Tool tool) {
    CutterForm form = CutterForm.of(tool);
    return !form.flat() && form.tipRadiusMm() >= LEAST_TIP_RADIUS_MM;
  }

  /** The cutters that finish, in cutting order. */
  static List<Tool> finishers(List<Tool> tools) {
    List<Tool> rounded =
        tools.stream()
            .filter(FacePlanner::rounded)
            .sorted(
                Comparator.comparingDouble((Tool tool) -> CutterForm.of(tool).tipRadiusMm())
                    .reversed()
                    .thenComparing(Tool::name))
            .toList();
    return !rounded.isEmpty()
        ? rounded
        : tools.stream()
            .filter(tool -> tool.shape() == Tool.Shape.FLAT)
            .min(Comparator.comparingDouble(Tool::diameterMm).thenComparing(Tool::name))
            .stream()
            .toList();
  }

  /**
   * Roughing and finishing together, in cutting order; finishing passes ({@link Pass.Kind#FACES})
   * already as they are cut into the panel as it lies.
   *
   * @param rough what the flat cutters did in the flat plan, down to each ply's shallowest face
   * @param warnings gets one, with the code {@code steps}, when only a flat cutter is there
   */
  public static List<ToolRun> plan(FaceTask task, List<ToolRun> rough, Warnings warnings) {
    if (!task.faces().sculpted()) {
      return rough;
    }
    List<Tool> finishers = finishers(task.tools());
    if (finishers.isEmpty()) {
      throw new JobFault(
          "no cutter among the tools can follow sculpted faces",
          "list a tool of shape: ball, or tapered with a tip_diameter of 0.2 mm or more, or flat");
    }
    if (finishers.stream().noneMatch(FacePlanner::rounded)) {
      warnings.add(
          "steps",
          "no ball-nosed cutter, nor a tapered one with a round tip, among the tools: slopes are"
              + " cut as fine steps by "
              + finishers.get(0).name(),
          finishers.get(0).name());
    }
    return new FacePlanner(task).plan(rough, finishers);
  }

  private List<ToolRun> plan(List<ToolRun> rough, List<Tool> finishers) {
    CutterForm smallest = CutterForm.of(finishers.get(finishers.size() - 1));
    double step = stepMm(smallest, finishers.get(finishers.size() - 1));
    int margin =
        finishers.stream()
                .mapToInt(tool -> DropCutter.around(CutterForm.of(tool), step))
                .max()
                .orElseThrow()
            + 3;
    boolean turned = carved.height() > carved.width();
    FaceLattice lattice = new FaceLattice(task, turned, step, margin, steep(finishers, step));
    new RoughStock(lattice).cut(rough.stream().map(task.panel()::cut).toList());
    lattice.markRests(task);
    FaceBorders borders = new FaceBorders(lattice, task, step);
    List<ToolRun> runs = new ArrayList<>(rough);
    double[] start = start(rough);
    for (Tool tool : finishers) {
      Pass pass = pass(lattice, borders, tool, start);
      if (pass != null) {
        add(runs, tool, pass);
        Move end = pass.moves().get(pass.moves().size() - 1);
        start = new double[] {end.x(), end.y()};
      }
    }
    return List.copyOf(runs);
  }

  /** Slope of the least steep side that a cutter has beside its rim, mm a mm. */
  private static double steep(List<Tool> finishers, double stepMm) {
    return finishers.stream()
        .map(CutterForm::of)
        .mapToDouble(form -> form.rimSlope(stepMm))
        .min()
        .orElseThrow();
  }

  private double stepMm(CutterForm form, Tool tool) {
    double stepover = stepoverMm(form, tool);
    double most =
        form.flat()
            ? MOST_FLAT_STEP_MM
            : Math.min(MOST_STEP_MM, Math.sqrt(8 * form.tipRadiusMm() * NODE_ERROR_MM));
    double coarsest =
        form.flat()
            ? COARSEST_FLAT_STEP_MM
            : Math.sqrt(8 * form.tipRadiusMm() * COARSE_NODE_ERROR_MM);
    most = Math.max(most, Math.min(coarsest, Math.sqrt(carved.area() / MOST_NODES)));
    return stepover / (4 * Math.max(1, Math.ceil(stepover / 4 / most)));
  }

  private double stepoverMm(CutterForm form, Tool tool) {
    return form.flat()
        ? tool.stepoverMm()
        : Math.min(form.stepoverMm(FaceLines.levelRidgeMm(faces.cuspMm())), tool.stepoverMm());
  }

  private double[] start(List<ToolRun> rough) {
    if (rough.isEmpty()) {
      return new double[] {carved.minX(), carved.minY()};
    }
    List<Pass> passes = rough.get(rough.size() - 1).passes();
    List<Move> moves = passes.get(passes.size() - 1).moves();
    return new double[] {moves.get(moves.size() - 1).x(), moves.get(moves.size() - 1).y()};
  }

  /** A cutter that is in the spindle already goes on in the same file. */
  private static void add(List<ToolRun> runs, Tool tool, Pass pass) {
    int last = runs.size() - 1;
    if (last >= 0 && runs.get(last).tool().equals(tool)) {
      List<Pass> passes = new ArrayList<>(runs.get(last).passes());
      passes.add(pass);
      runs.set(last, new ToolRun(tool, List.copyOf(passes)));
    } else {
      runs.add(new ToolRun(tool, List.of(pass)));
    }
  }

  private Pass pass(FaceLattice lattice, FaceBorders borders, Tool tool, double[] start) {
    CutterForm form = CutterForm.of(tool);
    double stepdown = STEPDOWN_SHARE * task.panel().listed(tool).stepdownMm();
    DropCutter drop = new DropCutter(lattice, borders, form, reachMm(tool));
    double stepover = stepoverMm(form, tool);
    int rows = 4 * (int) Math.max(1, Math.floor(stepover / lattice.stepMm / 4 + 1e-6));
    FaceLines lines = new FaceLines(lattice, drop, faces.cuspMm(), rows);
    FaceMoves moves = new FaceMoves(lattice, drop, tool, task, 3 * stepover + 1, start);
    double[] range = {Double.POSITIVE_INFINITY, 0};
    boolean beside = true;
    boolean more = true;
    float[] before = null;
    for (int layer = 0; layer < MOST_LAYERS && more; layer++) {
      float[] stock = lattice.stock.clone();
      moves.look(stock);
      boolean held = drop.begin(beside ? stepdown : NEAR_WOOD_SHARE * stepdown, beside);
      List<FaceRun> runs = lines.layer(before);
      if (!runs.isEmpty()) {
        runs.forEach(run -> depths(lattice, run, range));
        moves.cut(runs);
      }
      more = held && (beside || !runs.isEmpty());
      // Wood that the cutter can't take off holds it off the faces beside it: on in smaller steps.
      before = beside && runs.isEmpty() ? null : stock;
      beside &= !runs.isEmpty();
    }
    return range[1] == 0
        ? null
        : new Pass(
            plyAt(range[1]), range[1], Math.max(0, range[0]), moves.finish(), Pass.Kind.FACES);
  }

  /** Widens a range of depths, least and most, by those of a run below the top face there. */
  private void depths(FaceLattice lattice, FaceRun run, double[] range) {
    for (int i = 0; i < run.size(); i++) {
      double x = lattice.x(run.u()[i], run.v());
      double y = lattice.y(run.u()[i], run.v());
      double depth = run.depth()[i] - task.panel().belowMm(x, y, 0);
      range[0] = Math.min(range[0], depth);
      range[1] = Math.max(range[1], depth);
    }
  }

  /** No deeper than the flutes are long, nor than the holder's face comes to the panel. */
  private static double reachMm(Tool tool) {
    double reach = tool.fluteLengthMm() > 0 ? tool.fluteLengthMm() : Double.MAX_VALUE;
    return tool.stickoutMm() > 0 && tool.holderDiameterMm() > 0
        ? Math.min(reach, tool.stickoutMm())
        : reach;
  }

  /** The ply in which the deepest face lies. */
  private int plyAt(double depth) {
    return faces.faces().stream()
        .filter(face -> face.lowerMm() >= depth - 0.02)
        .min(Comparator.comparingDouble(face -> face.lowerMm()))
        .orElse(faces.faces().get(faces.faces().size() - 1))
        .plyNumber();
  }
}
