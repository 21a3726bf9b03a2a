package plyscape.toolpath;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import plyscape.machine.Tool;
import plyscape.toolpath.cover.LeftSpots;
import plyscape.toolpath.cover.PlannedFloor;
import plyscape.toolpath.cover.Reach;
import plyscape.toolpath.cover.RestWorth;
import plyscape.toolpath.cover.RingCover;
import plyscape.toolpath.cover.StepNodes;
import plyscape.toolpath.cover.StepWork;
import plyscape.toolpath.cover.WallRest;
import plyscape.toolpath.depth.DepthPlan;
import plyscape.toolpath.depth.DepthSequence;
import plyscape.toolpath.depth.LevelWork;
import plyscape.toolpath.depth.RestTally;
import plyscape.toolpath.lattice.CoarseMap;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.FieldSmoothing;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.Ring;
import plyscape.toolpath.lattice.Stock;
import plyscape.toolpath.ring.LevelField;
import plyscape.toolpath.ring.Piece;
import plyscape.toolpath.ring.RingTracer;
import plyscape.toolpath.task.PathOptions;

/** Chooses all pieces of one cutter by what the cutters before it leave. */
final class ToolPlanner {

  /** Nodes nearer to a wall than this are left to the exact test of the wall. */
  private static final double NODE_REST_MM = 0.045;

  /**
   * A band cut by itself wastes about this share of a stepover along its wall, against a cut in
   * full.
   */
  private static final double BAND_WASTE = 0.4;

  /** Corners are rounded to this share of the cutter's radius. */
  private static final double ROUNDING = 0.4;

  /** Patches of less than this many squares of the diameter are taken by the wall ring alone. */
  private static final double SMALL_PATCH = 2.5;

  private final List<LevelField> fields;
  private final Lattice lattice;
  private final PlannedFloor floor;
  private final PathOptions options;
  private final RingTracer tracer;

  /** Nodes that a larger cutter could have cleared but left to a smaller one. */
  private final boolean[] skipped;

  private double leastPatchMm2;

  ToolPlanner(
      List<LevelField> fields,
      PlannedFloor floor,
      boolean[] skipped,
      PathOptions options,
      RingTracer tracer) {
    this.skipped = skipped;
    this.fields = fields;
    this.floor = floor;
    this.options = options;
    lattice = floor.lattice;
    this.tracer = tracer;
  }

  /** Levels that the flutes are long enough for. */
  int deepest(Tool tool) {
    int count = 0;
    while (count < fields.size() && reaches(tool, fields.get(count))) {
      count++;
    }
    return count;
  }

  /** Where a cutter can go, from its wall rings in each level. */
  Reach reach(Tool tool, List<List<Ring>> walls) {
    return new Reach(fields, walls, tool.radiusMm(), deepest(tool), lattice);
  }

  /**
   * Wall rings of each cutter in one level; all but the smallest that gets there round the corners
   * that it will cut anyway.
   *
   * @param tracer used for them all
   */
  static List<List<Ring>> walls(LevelField field, List<Tool> tools, RingTracer tracer) {
    List<List<Ring>> walls = new ArrayList<>();
    int last = tools.size() - 1;
    while (last > 0 && !reaches(tools.get(last), field)) {
      last--;
    }
    for (int t = 0; t < tools.size(); t++) {
      Tool tool = tools.get(t);
      double round = t == last ? 0 : ROUNDING * tool.radiusMm();
      walls.add(reaches(tool, field) ? field.wallRings(tracer, tool.radiusMm(), round) : List.of());
    }
    return walls;
  }

  /** Whether a cutter's flutes are long enough for a level. */
  static boolean reaches(Tool tool, LevelField field) {
    return field.level().depthMm() <= tool.fluteLengthMm() + 1e-9;
  }

  /**
   * The pieces of a cutter, step by step; the floor is left as they leave it.
   *
   * @param reach its reach
   * @param before radii of the cutters that run before it, largest first
   * @param later the smaller cutters that will follow, largest first
   */
  List<StepWork> choose(Tool tool, Reach reach, double[] before, List<Tool> later) {
    // Patches are left only to a cutter that gets as deep.
    leastPatchMm2 =
        later.stream()
            .filter(next -> deepest(next) >= deepest(tool))
            .findFirst()
            .map(next -> RestWorth.leastMm2(rate(tool), rate(next)))
            .orElse(0.0);
    double[] depths = fields.stream().mapToDouble(f -> f.level().depthMm()).toArray();
    DepthPlan plan =
        before.length == 0 ? freshPlan(tool, reach, depths) : restPlan(tool, reach, depths);
    List<StepWork> works = new ArrayList<>();
    for (DepthPlan.Step step : plan.steps()) {
      StepWork work = choose(tool, reach, before, depths, step);
      floor.clear(work.pieces(), tool.radiusMm(), step.depthMm());
      works.add(work);
    }
    return works;
  }

  /**
   * Seconds, by area alone, in which a cutter would clear what another (or it itself) can reach of
   * an untouched panel.
   */
  double freshSeconds(Tool tool, Reach reach) {
    double[] depths = fields.stream().mapToDouble(f -> f.level().depthMm()).toArray();
    return DepthSequence.seconds(
        works(tool, reach, depths), tool.stepdownMm(), DepthSequence.NOTHING_LEFT);
  }

  private DepthPlan freshPlan(Tool tool, Reach reach, double[] depths) {
    return DepthPlan.fresh(works(tool, reach, depths), tool.stepdownMm());
  }

  private List<LevelWork> works(Tool tool, Reach reach, double[] depths) {
    int[] exposed = new int[depths.length];
    for (byte k : reach.level) {
      if (k >= 0) {
        exposed[k]++;
      }
    }
    List<LevelWork> works = new ArrayList<>();
    int full = 0;
    for (int k = depths.length - 1; k >= 0; k--) {
      full += exposed[k];
      if (full > 0) {
        double wall = reach.walls.get(k).stream().mapToDouble(Ring::lengthMm).sum();
        double band =
            exposed[k] == 0
                ? 0
                : exposed[k] * lattice.nodeAreaMm2() + wall * tool.stepoverMm() * BAND_WASTE;
        works.add(
            0,
            new LevelWork(depths[k], full * lattice.nodeAreaMm2() / rate(tool), band / rate(tool)));
      }
    }
    return works;
  }

  private DepthPlan restPlan(Tool tool, Reach reach, double[] depths) {
    RestTally rest = new RestTally();
    int last = -1;
    for (int node = 0; node < reach.level.length; node++) {
      int k = reach.level[node];
      if (k >= 0
          && floor.depth[node] < depths[k] - Stock.SAME_MM
          && fields.get(k).field().distance[node] > NODE_REST_MM) {
        rest.add(floor.depth[node], k);
        last = Math.max(last, k);
      }
    }
    last = Math.max(last, deepest(tool) - 1);
    return last < 0
        ? new DepthPlan(List.of())
        : DepthPlan.rest(Arrays.copyOf(depths, last + 1), rest, tool.stepdownMm());
  }

  private static double rate(Tool tool) {
    return tool.stepoverMm() * tool.feedMmPerMin() / 60;
  }

  /** The pieces of rings that a step needs, on a panel as the steps before will leave it. */
  private StepWork choose(
      Tool tool, Reach reach, double[] before, double[] depths, DepthPlan.Step step) {
    LevelField field = fields.get(step.level());
    double off = before.length == 0 ? 0 : NODE_REST_MM;
    StepNodes nodes =
        new StepNodes(step, field.field(), tool, reach.level, depths, floor.depth, off);
    byte[] state = nodes.state;
    int wanted = nodes.wanted;
    boolean last = step.depthMm() >= depths[step.level()] - 1e-9;
    if (wanted > 0 && leastPatchMm2 > 0) {
      wanted = new RestWorth(lattice).drop(state, nodes.where, leastPatchMm2, skipped);
    }
    if (before.length > 0) {
      new RestWorth(lattice)
          .mark(state, nodes.where, SMALL_PATCH * tool.diameterMm() * tool.diameterMm());
    }
    if (wanted == 0 && leastPatchMm2 > 0) {
      return new StepWork(step, field, List.of(), tool.stepoverMm());
    }
    double radius = tool.radiusMm();
    double stepover = tool.stepoverMm();
    double allowance = options.wallAllowance(tool);
    RingCover.WallNeed need =
        last && leastPatchMm2 == 0 ? new WallRest(field.field(), before, skipped) : (x, y) -> false;
    List<Ring> walls = reach.walls.get(step.level());
    CoarseMap mask = new CoarseMap(lattice, state, RingCover.WANTED, radius, nodes.where);
    float[] smooth = smooth(field.field(), before.length == 0 ? stepover : 0);
    List<Ring> rings =
        new ArrayList<>(last && leastPatchMm2 == 0 && before.length > 0 ? walls : mask.near(walls));
    rings.addAll(field.innerRings(tracer, smooth, radius, stepover, allowance, mask, false));
    RingCover cover = new RingCover(lattice, state, mask, radius, stepover);
    List<Piece> pieces = new ArrayList<>(cover.choose(rings, need, leastPatchMm2, skipped));
    if (left(state, nodes.where)) {
      rings.addAll(field.innerRings(tracer, smooth, radius, stepover, allowance, mask, true));
      pieces.addAll(cover.chooseForLeft(rings));
      pieces.addAll(new LeftSpots(lattice, field.field(), state, radius, nodes.where).pieces());
    }
    if (!options.climb()) {
      pieces = pieces.stream().map(Piece::reversed).toList();
    }
    return new StepWork(step, field, pieces, stepover);
  }

  /**
   * Marks wanted nodes that the chosen rings left; whether there are any.
   *
   * @param where blocks outside which none was wanted
   */
  static boolean left(byte[] state, CoarseMap where) {
    boolean[] any = {false};
    where.eachRun(
        (first, last) -> {
          for (int node = first; node <= last; node++) {
            if ((state[node] & RingCover.WANTED) != 0) {
              state[node] |= RingCover.LEFT;
              any[0] = true;
            }
          }
        });
    return any[0];
  }

  /**
   * The field on which inner rings are drawn: smoothed where much is cleared, as it is for small
   * rests.
   */
  private float[] smooth(DistanceField field, double stepover) {
    int half = (int) Math.round(stepover / 4 / lattice.stepMm());
    int[] box = half < 1 ? null : field.range.boxOver(0);
    return box == null
        ? field.distance
        : FieldSmoothing.smooth(field.distance, lattice.columns(), box, half);
  }
}
