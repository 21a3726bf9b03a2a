package plyscape.planner.cut;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import plyscape.bend.Bend;
import plyscape.bend.BentMoves;
import plyscape.bend.PlungeLimit;
import plyscape.job.Job;
import plyscape.machine.CuttingData;
import plyscape.machine.Move;
import plyscape.machine.Tool;
import plyscape.plan.Landscape;
import plyscape.toolpath.face.PanelFit;
import plyscape.toolpath.task.Pass;
import plyscape.toolpath.task.ToolRun;

/**
 * Between the flat plan of paths and a panel as it lies: cutters whose stepdown is lowered so that
 * no bite is deeper than theirs where the panel is thicker, and runs with moves that follow the
 * panel. On a flat panel nothing changes. Immutable.
 */
final class PanelMoves implements PanelFit {

  /** Places at which the slope is looked at are so far apart, mm. */
  private static final double SLOPE_STEP_MM = 2.5;

  /** How near moves are to the bent depth, mm. */
  private static final double BENT_MM = 0.005;

  /** Paths keep rapids off faces up to this flatness, mm. */
  private static final double FLAT_MM = 0.15;

  private final Landscape panel;
  private final Map<Tool, Tool> listed = new HashMap<>();
  private final List<Tool> planned;
  private final double rimMm;

  PanelMoves(Landscape panel) {
    this.panel = panel;
    Job job = panel.job();
    double stretch =
        panel.shape().flat()
            ? 1
            : Math.max(
                panel.shape().bend().stretch(job.panel().widthMm(), job.panel().heightMm()),
                new CutoutDepths(panel).stretch());
    planned =
        panel.shape().flat()
            ? job.tools()
            : job.tools().stream().map(t -> lowered(t, stretch)).toList();
    rimMm = panel.shape().flat() ? 0 : rimOfWidest();
  }

  private double rimOfWidest() {
    double radius =
        panel.job().tools().stream()
            .filter(tool -> tool.shape() == Tool.Shape.FLAT)
            .mapToDouble(Tool::radiusMm)
            .max()
            .orElse(0);
    Bend bend = panel.shape().bend();
    double taper = bend.taper(panel.job().panel().widthMm(), panel.job().panel().heightMm());
    return radius * (steepest(bend) + taper) + BENT_MM;
  }

  @Override
  public double belowMm(double x, double y, double flatMm) {
    return panel.shape().flat() ? flatMm : panel.shape().bend().belowMm(x, y, flatMm);
  }

  @Override
  public double rimMm() {
    return rimMm;
  }

  @Override
  public double flatnessMm() {
    return panel.job().layup().flatnessMm();
  }

  @Override
  public Tool listed(Tool tool) {
    return listed.getOrDefault(tool, tool);
  }

  /**
   * How much deeper than at its axis a cutter's flat end bites on the slopes of the panel: the last
   * floor lies higher on one side, the next one lower on the other; and both are bent to 0.005 mm.
   */
  private double slopeMm(Tool tool) {
    return 2 * tool.radiusMm() * steepest(panel.shape().bend()) + 2 * BENT_MM;
  }

  /** Steepest slope of the top face, mm a mm. */
  private double steepest(Bend bend) {
    double steepest = 0;
    for (double x = 0; x <= panel.job().panel().widthMm(); x += SLOPE_STEP_MM) {
      for (double y = 0; y <= panel.job().panel().heightMm(); y += SLOPE_STEP_MM) {
        double here = bend.top().heightMm(x, y);
        double alongX = bend.top().heightMm(x + SLOPE_STEP_MM, y) - here;
        double alongY = bend.top().heightMm(x, y + SLOPE_STEP_MM) - here;
        steepest = Math.max(steepest, Math.hypot(alongX, alongY) / SLOPE_STEP_MM);
      }
    }
    return steepest;
  }

  private Tool lowered(Tool tool, double stretch) {
    CuttingData c = tool.cutting();
    Tool other =
        tool.with(
            new CuttingData(
                c.rpm(),
                c.feedMmPerMin(),
                c.plungeMmPerMin(),
                Math.max(c.stepdownMm() / 4, c.stepdownMm() - slopeMm(tool)) / stretch,
                c.stepover(),
                c.thinFeedMmPerMin()));
    listed.put(other, tool);
    return other;
  }

  /** The job's cutters, in its order, as the flat plan may use them. */
  List<Tool> planned() {
    return planned;
  }

  /** A run of the flat plan as it is cut: by the listed cutter, along moves that are bent. */
  @Override
  public ToolRun cut(ToolRun flat) {
    Tool tool = listed(flat.tool());
    ToolRun clear = clear(flat);
    if (panel.shape().flat()) {
      return clear;
    }
    double[] at = begin();
    PlungeLimit limit = new PlungeLimit(tool.plungeMmPerMin(), at[0], at[1], at[2]);
    return new ToolRun(tool, clear.passes().stream().map(pass -> bent(pass, limit, at)).toList());
  }

  private BentMoves bent(Pass.Kind kind) {
    boolean cutout = kind == Pass.Kind.PINS || kind == Pass.Kind.OUTLINE;
    return new BentMoves(
        cutout ? new CutoutDepths(panel).bend(kind) : panel.shape().bend(),
        panel.job().machine().safeHeightMm());
  }

  private double[] begin() {
    return new double[] {0, 0, -panel.job().machine().safeHeightMm()};
  }

  /** The same run off a face that is less flat, or slopes more, than paths allow for. */
  private ToolRun clear(ToolRun flat) {
    double off = panel.job().layup().flatnessMm() + rimMm;
    if (off <= FLAT_MM) {
      return flat;
    }
    FaceRoom room = new FaceRoom(off, flat.tool());
    double[] at = begin();
    return new ToolRun(
        flat.tool(),
        flat.passes().stream()
            .map(
                pass -> pass.finishing() ? passed(at, pass) : with(pass, room.of(at, pass.moves())))
            .toList());
  }

  /** The same pass, which keeps off the face by itself; notes where it ends. */
  private static Pass passed(double[] at, Pass pass) {
    if (!pass.moves().isEmpty()) {
      Move last = pass.moves().get(pass.moves().size() - 1);
      at[0] = last.x();
      at[1] = last.y();
      at[2] = last.depth();
    }
    return pass;
  }

  private static Pass with(Pass pass, List<Move> moves) {
    return new Pass(pass.plyNumber(), pass.depthMm(), pass.stepdownFromMm(), moves, pass.kind());
  }

  private Pass bent(Pass pass, PlungeLimit limit, double[] at) {
    // Faces were planned in the panel as it lies.
    List<Move> moves =
        limit.of(
            pass.finishing()
                ? pass.moves()
                : bent(pass.kind()).of(at[0], at[1], at[2], pass.moves()));
    return with(passed(at, pass), moves);
  }
}
