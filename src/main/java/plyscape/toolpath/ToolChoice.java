package plyscape.toolpath;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import plyscape.fault.Warnings;
import plyscape.machine.Machine;
import plyscape.machine.MotionModel;
import plyscape.machine.Tool;

/**
 * Which of the listed cutters are used. The smallest always is, as only it reaches everything, and
 * so is the smallest that gets down to a level that its flutes are too short for; the largest when
 * it saves more than its tool change, by area; of those between, the set with the least time in
 * all, found by planning each.
 */
final class ToolChoice {

  /** One choice of cutters, planned. */
  private record Variant(List<Integer> tools, List<ToolRun> runs, double seconds) {}

  private final List<LevelField> fields;
  private final Lattice lattice;
  private final List<Tool> tools;
  private final Machine machine;
  private final PathOptions options;
  private final double[] start;
  private final List<List<List<Ring>>> walls;

  /** Tracers that nobody uses now: their arrays are large, and one a thread will do. */
  private final Queue<RingTracer> tracers = new ConcurrentLinkedQueue<>();

  /** Cutters without which some level would not be cut as far as it can be. */
  private final boolean[] must;

  /**
   * @param fields levels, upper first
   * @param tools flat cutters, largest first
   * @param start X and Y over which the machine begins, mm
   */
  ToolChoice(
      List<LevelField> fields,
      Lattice lattice,
      List<Tool> tools,
      Machine machine,
      PathOptions options,
      double[] start) {
    this.fields = fields;
    this.lattice = lattice;
    this.tools = tools;
    this.machine = machine;
    this.options = options;
    this.start = start;
    // By level, then by cutter.
    walls = fields.stream().parallel().map(this::walls).toList();
    must = new boolean[tools.size()];
    must[tools.size() - 1] = true;
    for (LevelField field : fields) {
      IntStream.range(0, tools.size())
          .filter(t -> ToolPlanner.reaches(tools.get(t), field))
          .max()
          .ifPresent(t -> must[t] = true);
    }
  }

  private RingTracer tracer() {
    RingTracer free = tracers.poll();
    return free == null ? new RingTracer(lattice) : free;
  }

  private List<List<Ring>> walls(LevelField field) {
    RingTracer tracer = tracer();
    List<List<Ring>> rings = ToolPlanner.walls(field, tools, tracer);
    tracers.add(tracer);
    return rings;
  }

  /**
   * The runs of the best choice; cutters left out are told.
   *
   * @param firstRun takes the first run while those after it are planned
   */
  List<ToolRun> runs(Consumer<ToolRun> firstRun, Warnings warnings) {
    int last = tools.size() - 1;
    Stock stock = new Stock(lattice);
    boolean[] skipped = new boolean[lattice.size()];
    RingTracer tracer = tracer();
    ToolPlanner planner = new ToolPlanner(fields, stock, skipped, machine, options, tracer);
    List<Reach> reaches =
        IntStream.range(0, tools.size())
            .parallel()
            .mapToObj(
                t ->
                    planner.reach(tools.get(t), walls.stream().map(level -> level.get(t)).toList()))
            .toList();
    int first = 0;
    Reach reach = reaches.get(first);
    while (first < last && !must[first]) {
      double own = planner.freshSeconds(tools.get(first), reach);
      double next = planner.freshSeconds(tools.get(first + 1), reach);
      if (next - own >= options.toolChangeS()) {
        break;
      }
      leftOut(warnings, tools.get(first), own + options.toolChangeS() - next);
      first++;
      reach = reaches.get(first);
    }
    List<List<Integer>> choices = choices(first, last);
    List<Pass> passes =
        planner.plan(tools.get(first), reach, new double[0], tools(choices.get(0)), start);
    tracers.add(tracer);
    if (first == last) {
      return passes.isEmpty() ? List.of() : List.of(new ToolRun(tools.get(last), passes));
    }
    ToolRun begun = passes.isEmpty() ? null : new ToolRun(tools.get(first), passes);
    if (begun != null) {
      firstRun.accept(begun);
    }
    List<Variant> variants =
        choices.stream()
            .parallel()
            .map(choice -> variant(choice, begun, stock, skipped, reaches))
            .toList();
    Variant best = variants.get(0);
    for (Variant variant : variants) {
      best = variant.seconds() < best.seconds() - 1e-6 ? variant : best;
    }
    for (int t = first + 1; t < last; t++) {
      if (!best.tools().contains(t)) {
        int tool = t;
        double with =
            variants.stream()
                .filter(variant -> variant.tools().contains(tool))
                .mapToDouble(Variant::seconds)
                .min()
                .orElse(best.seconds());
        leftOut(warnings, tools.get(t), with - best.seconds());
      }
    }
    return best.runs();
  }

  private static void leftOut(Warnings warnings, Tool tool, double seconds) {
    warnings.add(
        "tool-left-out",
        String.format(
            Locale.ROOT,
            "%s is left out: with it the job would take %.0f s longer, its change included",
            tool.name(),
            seconds),
        tool.name());
  }

  /**
   * Sets of the cutters after the first: those that must be, with each of the others, with all
   * others.
   */
  private List<List<Integer>> choices(int first, int last) {
    int[] free = IntStream.rangeClosed(first + 1, last).filter(t -> !must[t]).toArray();
    List<List<Integer>> choices = new ArrayList<>();
    choices.add(choice(first, last, -1));
    for (int t : free) {
      choices.add(choice(first, last, t));
    }
    if (free.length > 1) {
      choices.add(IntStream.rangeClosed(first + 1, last).boxed().toList());
    }
    return choices;
  }

  private List<Integer> choice(int first, int last, int more) {
    return IntStream.rangeClosed(first + 1, last)
        .filter(t -> must[t] || t == more)
        .boxed()
        .toList();
  }

  private List<Tool> tools(List<Integer> choice) {
    return choice.stream().map(tools::get).toList();
  }

  private Variant variant(
      List<Integer> choice, ToolRun first, Stock stock, boolean[] skipped, List<Reach> reaches) {
    RingTracer tracer = tracer();
    ToolPlanner planner =
        new ToolPlanner(fields, stock.copy(), skipped.clone(), machine, options, tracer);
    List<ToolRun> runs = new ArrayList<>();
    double[] before = {};
    double[] at = start;
    if (first != null) {
      runs.add(first);
      before = new double[] {first.tool().radiusMm()};
    }
    for (int c = 0; c < choice.size(); c++) {
      Tool tool = tools.get(choice.get(c));
      List<Tool> later = tools(choice.subList(c + 1, choice.size()));
      List<Pass> more = planner.plan(tool, reaches.get(choice.get(c)), before, later, at);
      if (!more.isEmpty()) {
        runs.add(new ToolRun(tool, more));
        before = Arrays.copyOf(before, before.length + 1);
        before[before.length - 1] = tool.radiusMm();
      }
    }
    tracers.add(tracer);
    return new Variant(choice, List.copyOf(runs), seconds(runs));
  }

  private double seconds(List<ToolRun> runs) {
    MotionModel model = new MotionModel(machine);
    double sum = options.toolChangeS() * Math.max(0, runs.size() - 1);
    for (ToolRun run : runs) {
      sum += model.times(start[0], start[1], -machine.safeHeightMm(), run.moves()).totalS();
    }
    return sum;
  }
}
