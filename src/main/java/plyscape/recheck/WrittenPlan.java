package plyscape.recheck;

import java.util.ArrayList;
import java.util.List;
import plyscape.gcode.Program;
import plyscape.gcode.UncutFace;
import plyscape.grid.Box;
import plyscape.machine.Machine;
import plyscape.machine.Tool;
import plyscape.report.json.PlanFigures;
import plyscape.simulate.BentPanel;
import plyscape.simulate.Cut;
import plyscape.simulate.ProbedTop;
import plyscape.simulate.Setup;
import plyscape.simulate.Target;

/**
 * A plan as it was written, and programs with the tools that run them.
 *
 * @param plan the figures
 * @param machine the router
 * @param targets where each ply should show
 * @param programs in cutting order
 */
public record WrittenPlan(
    PlanFigures plan, Machine machine, List<Target> targets, List<WrittenProgram> programs) {

  /** Rapids keep off the face by its flatness and this much, mm. */
  private static final double ROOM_MM = 0.05;

  /**
   * A program, its text and its tool.
   *
   * @param program as it was read
   * @param text the same, for what comments say
   * @param tool that runs it
   */
  public record WrittenProgram(Program program, String text, Tool tool) {

    /** Its file's name. */
    public String file() {
      return program.file();
    }
  }

  /** The panel on its machine. */
  public Setup setup(double cellMm) {
    Box panel = new Box(0, 0, plan.widthMm(), plan.heightMm());
    return new Setup(
            panel,
            plan.thicknessMm(),
            plan.throughMm(),
            plan.flatnessMm(),
            plan.carved(),
            machine,
            cellMm)
        .lying(bent());
  }

  /** Its top face before the first cut, and how far rapids keep off it: more than its flatness. */
  public UncutFace face() {
    BentPanel bent = bent();
    double room = plan.flatnessMm() + ROOM_MM;
    return bent == null
        ? new UncutFace((x, y) -> 0, 0, room)
        : new UncutFace(bent::faceMm, -bent.risesMm(), room);
  }

  /** How the panel lies, or null for one that is flat and the same everywhere. */
  private BentPanel bent() {
    PlanFigures.BendFigures bend = plan.bend();
    if (bend == null) {
      return null;
    }
    List<BentPanel.Level> levels = new ArrayList<>();
    for (double[] t : bend.targets()) {
      levels.add(new BentPanel.Level(t[0], t[1], t[2], t[3], t[4]));
    }
    return new BentPanel(
        bend.readings().isEmpty() ? null : ProbedTop.of(bend.readings()),
        levels,
        level(plan.thicknessMm(), bend.bottomPlane()));
  }

  /** A depth by place, or null where the plan has none. */
  static BentPanel.Level level(double flatMm, double[] plane) {
    return plane == null
        ? null
        : new BentPanel.Level(flatMm, plane[0], plane[1], plane[2], plane[3]);
  }

  /** The same programs for a panel that is flat and the same everywhere. */
  public WrittenPlan flat() {
    return new WrittenPlan(plan.flat(), machine, targets, programs);
  }

  /** All programs with their tools. */
  public List<Cut> cuts() {
    return programs.stream().map(p -> new Cut(p.program(), p.tool())).toList();
  }

  /** The plan's tools, with what is known of those that cut. */
  public List<Tool> tools() {
    List<Tool> tools = new ArrayList<>();
    for (PlanFigures.ToolFigures figures : plan.tools()) {
      tools.add(
          programs.stream()
              .map(WrittenProgram::tool)
              .filter(t -> t.name().equals(figures.name()))
              .findFirst()
              .orElse(ProgramTool.plain(figures.name(), Tool.Shape.FLAT, figures.diameterMm(), 0)));
    }
    if (tools.isEmpty()) {
      programs.forEach(p -> tools.add(p.tool()));
    }
    return tools;
  }
}
