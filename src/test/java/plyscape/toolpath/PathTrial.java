package plyscape.toolpath;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.machine.Machine;
import plyscape.machine.MotionModel;
import plyscape.machine.Move;
import plyscape.machine.Times;
import plyscape.machine.Tool;
import plyscape.machine.Workshop;
import plyscape.toolpath.bound.LowerBound;
import plyscape.toolpath.task.Pass;
import plyscape.toolpath.task.PocketLevel;
import plyscape.toolpath.task.ToolRun;

/**
 * A trial run by hand: plans a seeded panel and prints times against the lower bound. Not a test.
 */
public final class PathTrial {

  public static final Machine MACHINE = Workshop.ROUTER;

  private PathTrial() {}

  public static Tool tool(double diameter, double feed, double stepdown, double stepover) {
    return Workshop.cutter("end mill " + diameter, Tool.Shape.FLAT, diameter, 12)
        .with(Workshop.cutting(feed, 500, stepdown, stepover));
  }

  /** Arguments: seed, panel mm, hill mm, cell of the check or 0, then cutter diameters. */
  public static void main(String[] args) {
    long seed = Long.parseLong(args[0]);
    double size = Double.parseDouble(args[1]);
    double hill = Double.parseDouble(args[2]);
    double cell = Double.parseDouble(args[3]);
    List<Tool> tools = new ArrayList<>();
    for (int i = 4; i < args.length; i++) {
      double d = Double.parseDouble(args[i]);
      tools.add(tool(d, d >= 6 ? 2400 : d >= 3 ? 1800 : 1200, d >= 6 ? 3 : d >= 3 ? 2 : 1, 0.45));
    }
    Box carved = new Box(6, 6, size - 6, size - 6);
    List<PocketLevel> levels = RandomPockets.make(seed, carved, 9, 0.94, hill);
    double walls = levels.stream().mapToDouble(l -> l.pocket().getLength()).sum();
    System.out.printf(Locale.ROOT, "walls %.0f mm, areas", walls);
    levels.forEach(l -> System.out.printf(Locale.ROOT, " %.0f", l.exposed().getArea()));
    System.out.println();
    List<ToolRun> runs = List.of();
    for (int t = 0; t < (cell < 0 ? 4 : 1); t++) {
      long t0 = System.nanoTime();
      Warnings warnings = new Warnings();
      runs = PathPlanner.plan(levels, tools, MACHINE, carved, warnings);
      System.out.printf(
          Locale.ROOT,
          "planned in %.2f s, warnings %s%n",
          (System.nanoTime() - t0) / 1e9,
          warnings.list());
    }
    report(runs, levels, tools, carved);
    if (cell > 0) {
      CutCheck check = new CutCheck(carved, cell);
      check.run(runs);
      check.compare(levels, tools);
      System.out.printf(
          Locale.ROOT,
          "gouged %.4f uncut %.4f rapid %.4f outside %.3f%n",
          check.gougedMm2,
          check.uncutMm2,
          check.rapidThroughMm2,
          check.outsideMm);
      check.notes.forEach(System.out::println);
    }
  }

  static void report(List<ToolRun> runs, List<PocketLevel> levels, List<Tool> tools, Box carved) {
    MotionModel model = new MotionModel(MACHINE);
    double total = 0;
    for (ToolRun run : runs) {
      for (Pass pass : run.passes()) {
        Move first = pass.moves().get(0);
        Times times = model.times(first.x(), first.y(), -MACHINE.safeHeightMm(), pass.moves());
        total += times.cutS() + times.rapidS();
        int lifts = 0;
        double ideal = 0;
        double plunge = 0;
        double px = first.x();
        double py = first.y();
        double pz = -4;
        Map<Double, Double> byFeed = new TreeMap<>();
        for (Move m : pass.moves()) {
          double d =
              Math.sqrt(
                  Math.pow(m.x() - px, 2) + Math.pow(m.y() - py, 2) + Math.pow(m.depth() - pz, 2));
          if (m.kind() == Move.Kind.RAPID) {
            if (m.depth() < pz) {
              lifts++;
            }
          } else {
            ideal += d / m.feedMmPerMin() * 60;
            byFeed.merge((double) Math.round(m.feedMmPerMin()), d, Double::sum);
            if (Math.abs(m.depth() - pz) > 1e-6) {
              plunge += d / m.feedMmPerMin() * 60;
            }
          }
          px = m.x();
          py = m.y();
          pz = m.depth();
        }
        StringBuilder feeds = new StringBuilder();
        byFeed.forEach((f, d) -> feeds.append(String.format(Locale.ROOT, " %.0f:%.0f", f, d)));
        System.out.printf(
            Locale.ROOT,
            "%-14s ply %d depth %.2f from %.2f: cut %.1f s (ideal %.1f, down %.1f) rapid %.1f s"
                + " lifts %d moves %d cut %.0f mm rapid %.0f mm |%s%n",
            run.tool().name(),
            pass.plyNumber(),
            pass.depthMm(),
            pass.stepdownFromMm(),
            times.cutS(),
            ideal,
            plunge,
            times.rapidS(),
            lifts,
            pass.moves().size(),
            times.cutMm(),
            times.rapidMm(),
            feeds);
      }
    }
    double bound = LowerBound.seconds(levels, tools, carved, LowerBound.CELL_MM);
    System.out.printf(
        Locale.ROOT, "total %.0f s, bound %.0f s, ratio %.3f%n", total, bound, bound / total);
  }
}
