package plyscape.planner;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import plyscape.fault.Warnings;
import plyscape.machine.Machine;
import plyscape.machine.MotionModel;
import plyscape.toolpath.PathPlanner;
import plyscape.toolpath.bound.LowerBound;
import plyscape.toolpath.task.PocketLevel;
import plyscape.toolpath.task.ToolRun;

/**
 * How near the plans of panels come to the lower bound, and where the rest of the time goes: Tarn
 * Hollow, the Eildon Hills, two made grounds as hilly as those, two ranges of hills, two rough
 * reliefs, two made towns and two made ranges with rivers; and any job file. Run by
 * scripts/bench-times.sh.
 */
public final class TimeTable {

  private final Warnings warnings = new Warnings();
  private final BenchPanels panels = new BenchPanels(warnings);
  private final boolean alone;

  private TimeTable(boolean alone) {
    this.alone = alone;
  }

  /**
   * Arguments: names of panels or job files to run (all panels if none), {@code --alone} to also
   * plan with the 1.5 mm cutter alone.
   */
  public static void main(String[] args) {
    List<String> wanted = Arrays.stream(args).filter(a -> !a.startsWith("--")).toList();
    var table = new TimeTable(Arrays.asList(args).contains("--alone"));
    for (String name : wanted.isEmpty() ? BenchPanels.NAMES : wanted) {
      if (name.endsWith(".yaml") && !Files.exists(Path.of(name))) {
        System.out.printf(Locale.ROOT, "%s: left out, there is no such job%n", name);
      } else {
        table.run(name);
      }
    }
  }

  private void run(String name) {
    BenchPanel panel = panels.of(name);
    Machine machine = panel.machine();
    long start = System.nanoTime();
    List<ToolRun> runs =
        PathPlanner.plan(panel.levels(), panel.tools(), machine, panel.carved(), warnings);
    double planned = (System.nanoTime() - start) / 1e9;
    double bound =
        LowerBound.seconds(panel.levels(), panel.tools(), panel.carved(), LowerBound.CELL_MM);
    List<TimeAudit> parts = new ArrayList<>();
    TimeAudit audit = new TimeAudit(panel.carved(), machine);
    TimeAudit before = audit;
    for (ToolRun run : runs) {
      before = before.next();
      before.add(run);
      parts.add(before);
      audit.addSums(before);
    }
    System.out.printf(
        Locale.ROOT,
        "%s: bound %.0f s of %.0f s = %.3f (planned in %.1f s)%n",
        name,
        bound,
        audit.totalS,
        bound / audit.totalS,
        planned);
    System.out.printf(Locale.ROOT, "  %-56s %9s  %7s", "", "s", "");
    runs.forEach(run -> System.out.printf(Locale.ROOT, "%8.1f", run.tool().diameterMm()));
    System.out.println(" mm");
    row("lower bound", bound, audit.totalS, parts, a -> Double.NaN);
    row(
        "dearer cutter or more depths than the bound's",
        audit.idealS - bound,
        audit.totalS,
        parts,
        a -> a.idealS);
    row(
        "less than the stepover bitten (walls, corners)",
        audit.narrowS,
        audit.totalS,
        parts,
        a -> a.narrowS);
    row("feed reduced in slots", audit.slowFeedS, audit.totalS, parts, a -> a.slowFeedS);
    row("air at feed (links, ground cut before)", audit.airS, audit.totalS, parts, a -> a.airS);
    row("entries", audit.entryS, audit.totalS, parts, a -> a.entryS);
    row("acceleration", audit.accelerationS, audit.totalS, parts, a -> a.accelerationS);
    row(
        "travel (" + Math.round(audit.rapidMm) + " mm rapids)",
        audit.travelS,
        audit.totalS,
        parts,
        a -> a.travelS);
    row(audit.lifts + " lifts and slants", audit.liftS, audit.totalS, parts, a -> a.liftS);
    row("total", audit.totalS, audit.totalS, parts, a -> a.totalS);
    System.out.printf(
        Locale.ROOT,
        "  %d moves, %d arcs, %.0f mm cut, passes %s%n",
        audit.moves,
        audit.arcs,
        audit.cutMm,
        runs.stream().map(r -> r.passes().size()).toList());
    if (alone) {
      double seconds = alone(panel);
      System.out.printf(
          Locale.ROOT,
          "  every level in full with the 1.5 mm cutter alone: %.0f s, %.2f times as long%n",
          seconds,
          seconds / audit.totalS);
    }
  }

  private static void row(
      String what,
      double seconds,
      double total,
      List<TimeAudit> parts,
      ToDoubleFunction<TimeAudit> part) {
    StringBuilder line = new StringBuilder();
    line.append(
        String.format(
            Locale.ROOT, "  %-56s %7.0f s %5.1f %%", what, seconds, 100 * seconds / total));
    for (TimeAudit audit : parts) {
      double s = part.applyAsDouble(audit);
      line.append(Double.isNaN(s) ? "" : String.format(Locale.ROOT, " %7.0f", s));
    }
    System.out.println(line);
  }

  /** Each level over all of its pocket, from the level above, planned as a job of its own. */
  private double alone(BenchPanel panel) {
    Machine machine = panel.machine();
    int last = panel.tools().size() - 1;
    double seconds = 0;
    double above = 0;
    for (PocketLevel level : panel.levels()) {
      var only =
          new PocketLevel(
              level.plyNumber(), level.depthMm() - above, level.pocket(), level.pocket());
      above = level.depthMm();
      for (ToolRun run :
          PathPlanner.plan(
              List.of(only),
              panel.tools().subList(last, last + 1),
              machine,
              panel.carved(),
              warnings)) {
        seconds +=
            new MotionModel(machine).times(0, 0, -machine.safeHeightMm(), run.moves()).totalS();
      }
    }
    return seconds;
  }
}
