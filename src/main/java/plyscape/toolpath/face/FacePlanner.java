package plyscape.toolpath.face;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import plyscape.fault.JobFault;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.machine.Machine;
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
  private static final int MOST_LAYERS = 12;

  private final FaceField faces;
  private final Box carved;
  private final Machine machine;

  private FacePlanner(FaceField faces, Box carved, Machine machine) {
    this.faces = faces;
    this.carved = carved;
    this.machine = machine;
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
   * Roughing and finishing together, in cutting order.
   *
   * @param faces what is wanted
   * @param rough what the flat cutters did, down to each ply's shallowest face
   * @param tools as listed
   * @param warnings gets one, with the code {@code steps}, when only a flat cutter is there
   */
  public static List<ToolRun> plan(
      FaceField faces,
      List<ToolRun> rough,
      List<Tool> tools,
      Machine machine,
      Box carved,
      Warnings warnings) {
    if (!faces.sculpted()) {
      return rough;
    }
    List<Tool> finishers = finishers(tools);
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
    return new FacePlanner(faces, carved, machine).plan(rough, finishers);
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
    FaceLattice lattice = new FaceLattice(faces, carved, turned, step, margin);
    new RoughStock(lattice).cut(rough);
    lattice.markRests(faces);
    FaceBorders borders = new FaceBorders(lattice, faces, carved, step);
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
    DropCutter drop = new DropCutter(lattice, borders, form, reachMm(tool));
    double stepover = stepoverMm(form, tool);
    int rows = 4 * (int) Math.max(1, Math.floor(stepover / lattice.stepMm / 4 + 1e-6));
    FaceLines lines = new FaceLines(lattice, drop, faces.cuspMm(), rows);
    FaceMoves moves = new FaceMoves(lattice, drop, tool, machine, 3 * stepover + 1, start);
    double deepest = 0;
    double shallowest = Double.POSITIVE_INFINITY;
    for (int layer = 0; layer < MOST_LAYERS; layer++) {
      moves.look();
      List<FaceRun> runs = lines.layer(tool.stepdownMm());
      if (runs.isEmpty()) {
        break;
      }
      for (FaceRun run : runs) {
        deepest = Math.max(deepest, Arrays.stream(run.depth()).max().orElse(0));
        shallowest = Math.min(shallowest, Arrays.stream(run.depth()).min().orElse(0));
      }
      moves.cut(runs);
      if (!limited(lattice, tool.stepdownMm())) {
        break;
      }
    }
    return deepest == 0
        ? null
        : new Pass(
            plyAt(deepest), deepest, Math.max(0, shallowest), moves.finish(), Pass.Kind.FACES);
  }

  /** Whether faces remain that a stepdown didn't reach, rests apart. */
  private static boolean limited(FaceLattice lattice, double stepdownMm) {
    if (stepdownMm >= Float.MAX_VALUE) {
      return false;
    }
    for (int i = 0; i < lattice.target.length; i++) {
      if (!lattice.rest[i] && lattice.target[i] - lattice.stock[i] > stepdownMm) {
        return true;
      }
    }
    return false;
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
