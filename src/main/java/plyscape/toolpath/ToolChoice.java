package plyscape.toolpath;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import java.util.stream.IntStream;
import plyscape.fault.Warnings;
import plyscape.machine.Machine;
import plyscape.machine.MotionModel;
import plyscape.machine.Tool;
import plyscape.toolpath.cover.PlannedFloor;
import plyscape.toolpath.cover.Reach;
import plyscape.toolpath.cover.StepWork;
import plyscape.toolpath.cover.ThinParts;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.Ring;
import plyscape.toolpath.lattice.Stock;
import plyscape.toolpath.motion.PassCutter;
import plyscape.toolpath.order.PieceOrder;
import plyscape.toolpath.ring.LevelField;
import plyscape.toolpath.ring.RingTracer;
import plyscape.toolpath.slot.SlotPlaces;
import plyscape.toolpath.task.Pass;
import plyscape.toolpath.task.PathEvents;
import plyscape.toolpath.task.PathOptions;
import plyscape.toolpath.task.ToolRun;

/**
 * Which of the listed cutters are used. The smallest always is, as only it reaches everything, and
 * so is the smallest that gets down to a level that its flutes are too short for; the largest when
 * it saves more than its tool change, by area; of those between, the set with the least time in
 * all, found by planning each.
 */
final class ToolChoice {

  /** Chosen pieces of one cutter, by its steps. */
  private record ToolWork(Tool tool, List<StepWork> works) {

    boolean any() {
      return works.stream().anyMatch(work -> !work.pieces().isEmpty());
    }
  }

  /** One choice of cutters after the first, with their pieces. */
  private record Chosen(List<Integer> tools, List<ToolWork> works) {}

  /** One choice of cutters, planned. */
  private record Variant(List<Integer> tools, List<ToolRun> runs, double seconds) {}

  /** The first cutter's run, null when it has nothing to do, and the panel as it leaves it. */
  private record FirstCut(ToolRun run, Stock stock) {}

  private final List<LevelField> fields;
  private final Lattice lattice;
  private final List<Tool> tools;
  private final Machine machine;
  private final PathOptions options;
  private final double[] start;

  /** Wall rings by level, then by cutter. */
  private final List<List<List<Ring>>> walls;

  /** Narrow places, in the same way. */
  private final List<List<SlotPlaces>> slots;

  private final List<Reach> reaches;
  private final ThinParts thin;

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
    slots = fields.stream().parallel().map(field -> ToolPlanner.slots(field, tools)).toList();
    walls = IntStream.range(0, fields.size()).parallel().mapToObj(this::walls).toList();
    thin = ThinParts.of(fields, lattice);
    reaches = reaches();
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

  private List<List<Ring>> walls(int k) {
    RingTracer tracer = tracer();
    List<List<Ring>> rings = ToolPlanner.walls(fields.get(k), tools, slots.get(k), tracer);
    tracers.add(tracer);
    return rings;
  }

  /**
   * The runs of the best choice; cutters left out get a warning. The pieces of all cutters are
   * chosen while those of the first are already put in order and made into moves.
   *
   * @param beside hears of the first run while those after it are planned
   */
  List<ToolRun> runs(PathEvents beside, Warnings warnings) {
    int first = first(warnings);
    List<List<Integer>> choices = choices(first, tools.size() - 1);
    PlannedFloor floor = new PlannedFloor(lattice, thin);
    ToolWork begun = chosen(first, true, tools(choices.get(0)), floor);
    if (first == tools.size() - 1) {
      beside.spare();
      FirstCut cut = firstCut(begun);
      return cut.run() == null ? List.of() : List.of(cut.run());
    }
    boolean only = choices.size() == 1;
    ForkJoinTask<List<Chosen>> choosing =
        ForkJoinPool.commonPool()
            .submit(
                () ->
                    choices.stream()
                        .parallel()
                        .map(choice -> chosen(choice, begun, only ? floor : floor.copy()))
                        .toList());
    beside.spare();
    FirstCut cut = firstCut(begun);
    if (cut.run() != null) {
      beside.first(cut.run());
    }
    List<Variant> variants =
        choosing.join().stream()
            .parallel()
            .map(more -> variant(more, cut, only ? cut.stock() : cut.stock().copy(), !only))
            .toList();
    Variant best = best(variants);
    tellLeftOut(first, variants, best, warnings);
    return best.runs();
  }

  private List<Reach> reaches() {
    return IntStream.range(0, tools.size())
        .parallel()
        .mapToObj(
            t ->
                new Reach(
                    fields,
                    walls.stream().map(level -> level.get(t)).toList(),
                    slots.stream().map(level -> level.get(t)).toList(),
                    tools.get(t).radiusMm(),
                    ToolPlanner.deepest(tools.get(t), fields),
                    thin))
        .toList();
  }

  /** The largest cutter that saves more than its change, or must be; larger ones get a warning. */
  private int first(Warnings warnings) {
    int first = 0;
    while (first < tools.size() - 1 && !must[first]) {
      Reach reach = reaches.get(first);
      double own = ToolPlanner.freshSeconds(tools.get(first), reach);
      double next = ToolPlanner.freshSeconds(tools.get(first + 1), reach);
      if (next - own >= options.toolChangeS()) {
        break;
      }
      leftOut(warnings, tools.get(first), own + options.toolChangeS() - next);
      first++;
    }
    return first;
  }

  private static Variant best(List<Variant> variants) {
    Variant best = variants.get(0);
    for (Variant variant : variants) {
      best = variant.seconds() < best.seconds() - 1e-6 ? variant : best;
    }
    return best;
  }

  /** Tells what each cutter after the first would cost that the best choice does without. */
  private void tellLeftOut(int first, List<Variant> variants, Variant best, Warnings warnings) {
    for (int t = first + 1; t < tools.size() - 1; t++) {
      if (!best.tools().contains(t)) {
        int other = t;
        double with =
            variants.stream()
                .filter(variant -> variant.tools().contains(other))
                .mapToDouble(Variant::seconds)
                .min()
                .orElse(best.seconds());
        leftOut(warnings, tools.get(t), with - best.seconds());
      }
    }
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

  private FirstCut firstCut(ToolWork work) {
    Stock stock = new Stock(lattice);
    List<Pass> passes = passes(work, stock);
    return new FirstCut(passes.isEmpty() ? null : new ToolRun(work.tool(), passes), stock);
  }

  /** The pieces of the cutters after the first. */
  private Chosen chosen(List<Integer> choice, ToolWork first, PlannedFloor floor) {
    boolean untouched = !first.any();
    List<ToolWork> works = new ArrayList<>();
    for (int c = 0; c < choice.size(); c++) {
      List<Tool> later = tools(choice.subList(c + 1, choice.size()));
      ToolWork work = chosen(choice.get(c), untouched, later, floor);
      if (work.any()) {
        works.add(work);
        untouched = false;
      }
    }
    return new Chosen(choice, works);
  }

  /** The pieces of one cutter, on an untouched panel or after others. */
  private ToolWork chosen(int t, boolean first, List<Tool> later, PlannedFloor floor) {
    RingTracer tracer = tracer();
    ToolPlanner planner = new ToolPlanner(fields, floor, options, tracer);
    Tool tool = tools.get(t);
    ToolWork work = new ToolWork(tool, planner.choose(tool, reaches.get(t), first, later));
    tracers.add(tracer);
    return work;
  }

  private Variant variant(Chosen chosen, FirstCut first, Stock stock, boolean compared) {
    List<ToolRun> runs = new ArrayList<>();
    if (first.run() != null) {
      runs.add(first.run());
    }
    for (ToolWork work : chosen.works()) {
      runs.add(new ToolRun(work.tool(), passes(work, stock)));
    }
    return new Variant(chosen.tools(), List.copyOf(runs), compared ? seconds(runs) : 0);
  }

  /** The passes that cut chosen pieces, which are cut in the stock. */
  private List<Pass> passes(ToolWork work, Stock stock) {
    PassCutter cutter = new PassCutter(stock, work.tool(), machine, options, start);
    new PieceOrder(work.works(), work.tool(), machine).run(start[0], start[1], cutter::cut);
    return cutter.passes();
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
