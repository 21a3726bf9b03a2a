package plyscape.toolpath;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import plyscape.machine.Tool;
import plyscape.toolpath.cover.PlannedFloor;
import plyscape.toolpath.cover.Reach;
import plyscape.toolpath.cover.RestWorth;
import plyscape.toolpath.cover.StepWork;
import plyscape.toolpath.depth.DepthPlan;
import plyscape.toolpath.depth.DepthSequence;
import plyscape.toolpath.depth.DepthStep;
import plyscape.toolpath.depth.LevelWork;
import plyscape.toolpath.depth.RestTally;
import plyscape.toolpath.lattice.Ring;
import plyscape.toolpath.ring.LevelField;
import plyscape.toolpath.ring.Piece;
import plyscape.toolpath.ring.RingTracer;
import plyscape.toolpath.slot.SlotChoice;
import plyscape.toolpath.slot.SlotPlaces;
import plyscape.toolpath.slot.SlotWay;
import plyscape.toolpath.task.PathOptions;

/** Chooses all pieces of one cutter after another by what those before leave. */
final class ToolPlanner {

  /**
   * A band cut by itself wastes about this share of a stepover along its wall, against a cut in
   * full.
   */
  private static final double BAND_WASTE = 0.4;

  /** Time that a visit to a place takes beside the cutting, s. */
  private static final double VISIT_S = 0.6;

  /** Corners are rounded to this share of the cutter's radius. */
  private static final double ROUNDING = 0.4;

  private final List<LevelField> fields;
  private final PlannedFloor floor;
  private final PathOptions options;
  private final RingTracer tracer;

  /**
   * @param fields levels, upper first
   * @param floor as it is; it is left as the chosen pieces leave it
   */
  ToolPlanner(List<LevelField> fields, PlannedFloor floor, PathOptions options, RingTracer tracer) {
    this.fields = fields;
    this.floor = floor;
    this.options = options;
    this.tracer = tracer;
  }

  /** How many levels the flutes are long enough for. */
  static int deepest(Tool tool, List<LevelField> fields) {
    int count = 0;
    while (count < fields.size() && reaches(tool, fields.get(count))) {
      count++;
    }
    return count;
  }

  /** Whether a cutter's flutes are long enough for a level. */
  static boolean reaches(Tool tool, LevelField field) {
    return field.level().depthMm() <= tool.fluteLengthMm() + 1e-9;
  }

  /** Narrow places of each cutter in one level. */
  static List<SlotPlaces> slots(LevelField field, List<Tool> tools) {
    int last = last(field, tools);
    return IntStream.range(0, tools.size())
        .mapToObj(
            t ->
                reaches(tools.get(t), field)
                    ? SlotPlaces.of(field.field(), tools.get(t).radiusMm(), t == last)
                    : SlotPlaces.none())
        .toList();
  }

  /** The smallest cutter whose flutes are long enough for a level, or the first. */
  private static int last(LevelField field, List<Tool> tools) {
    int last = tools.size() - 1;
    while (last > 0 && !reaches(tools.get(last), field)) {
      last--;
    }
    return last;
  }

  /**
   * Wall rings of each cutter in one level, narrow places left out; all but the smallest that gets
   * there round the corners that it will cut anyway.
   *
   * @param slots narrow places of each cutter
   * @param tracer used for them all
   */
  static List<List<Ring>> walls(
      LevelField field, List<Tool> tools, List<SlotPlaces> slots, RingTracer tracer) {
    List<List<Ring>> walls = new ArrayList<>();
    int last = last(field, tools);
    for (int t = 0; t < tools.size(); t++) {
      Tool tool = tools.get(t);
      double round = t == last ? 0 : ROUNDING * tool.radiusMm();
      List<Ring> rings =
          reaches(tool, field) ? field.wallRings(tracer, tool.radiusMm(), round) : List.of();
      walls.add(slots.get(t).without(field.field().lattice, rings));
    }
    return walls;
  }

  /**
   * The pieces of a cutter, step by step; the floor is left as they leave it.
   *
   * @param reach its reach
   * @param first whether no cutter runs before it
   * @param later the smaller cutters that will follow, largest first
   */
  List<StepWork> choose(Tool tool, Reach reach, boolean first, List<Tool> later) {
    Tool next = next(tool, later);
    List<StepWork> slots = slots(tool, reach, next);
    StepPlanner steps = new StepPlanner(tool, reach, first, next, options);
    DepthPlan plan = first ? freshPlan(tool, reach) : restPlan(tool, reach);
    List<StepWork> works = new ArrayList<>();
    for (DepthStep step : plan.steps()) {
      StepWork work = steps.work(step, fields.get(step.level()), floor, tracer);
      floor.clear(work.pieces(), tool.radiusMm(), step.depthMm());
      works.add(work);
    }
    if (!first) {
      works = OneVisit.of(works, VISIT_S * tool.feedMmPerMin() / 60);
    }
    // Last, as they are then open at their ends.
    List<StepWork> all = Stream.concat(works.stream(), slots.stream()).toList();
    all.forEach(work -> floor.pass(work.pieces(), tool.radiusMm(), work.step().depthMm()));
    return all;
  }

  /** The narrow places that a cutter has to cut, a step a level. */
  private List<StepWork> slots(Tool tool, Reach reach, Tool next) {
    double leastMm2 = next == null ? 0 : RestWorth.leastMm2(tool, next);
    SlotChoice choice = new SlotChoice(fields.get(0).field().lattice, tool.radiusMm());
    List<StepWork> works = new ArrayList<>();
    for (int k = 0; k < deepest(tool, fields); k++) {
      int level = k;
      List<SlotWay> chosen =
          choice.choose(reach.slots(k).ways(), node -> reach.stands(node, level, floor), leastMm2);
      if (!chosen.isEmpty()) {
        for (boolean left : new boolean[] {true, false}) {
          List<Piece> sides = chosen.stream().map(slot -> Piece.of(slot.side(left))).toList();
          floor.clear(sides, tool.radiusMm() + SlotChoice.CLEARED_MM, reach.depthMm(k));
        }
        works.add(
            new StepWork(
                new DepthStep(k, reach.depthMm(k), false, 0),
                fields.get(k),
                chosen.stream().map(Piece::of).toList(),
                tool.stepoverMm()));
      }
    }
    return works;
  }

  /** The next smaller cutter that gets as deep, to which patches may be left; or null. */
  private Tool next(Tool tool, List<Tool> later) {
    return later.stream()
        .filter(next -> deepest(next, fields) >= deepest(tool, fields))
        .findFirst()
        .orElse(null);
  }

  /**
   * Seconds, by area alone, in which a cutter would clear what another (or it itself) can reach of
   * an untouched panel.
   */
  static double freshSeconds(Tool tool, Reach reach) {
    return DepthSequence.seconds(works(tool, reach), tool.stepdownMm());
  }

  private static DepthPlan freshPlan(Tool tool, Reach reach) {
    return DepthPlan.fresh(works(tool, reach), tool.stepdownMm());
  }

  private static List<LevelWork> works(Tool tool, Reach reach) {
    double[] exposed = reach.areasMm2();
    double rate = RestWorth.rateMm2PerS(tool);
    List<LevelWork> works = new ArrayList<>();
    double full = 0;
    for (int k = exposed.length - 1; k >= 0; k--) {
      full += exposed[k];
      if (full > 0) {
        double wall = reach.walls(k).stream().mapToDouble(Ring::lengthMm).sum();
        double band = exposed[k] == 0 ? 0 : exposed[k] + wall * tool.stepoverMm() * BAND_WASTE;
        works.add(0, new LevelWork(reach.depthMm(k), full / rate, band / rate));
      }
    }
    return works;
  }

  private DepthPlan restPlan(Tool tool, Reach reach) {
    int deepest = deepest(tool, fields);
    if (deepest == 0) {
      return new DepthPlan(List.of());
    }
    RestTally rest = reach.rest(floor, StepPlanner.NODE_REST_MM);
    return DepthPlan.rest(Arrays.copyOf(reach.depthsMm(), deepest), rest, tool.stepdownMm());
  }
}
