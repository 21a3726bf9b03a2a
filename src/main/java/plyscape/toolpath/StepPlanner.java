package plyscape.toolpath;

import java.util.ArrayList;
import java.util.List;
import plyscape.machine.Tool;
import plyscape.toolpath.cover.LeftSpots;
import plyscape.toolpath.cover.PlannedFloor;
import plyscape.toolpath.cover.Reach;
import plyscape.toolpath.cover.RestWorth;
import plyscape.toolpath.cover.RingCover;
import plyscape.toolpath.cover.StepNodes;
import plyscape.toolpath.cover.StepWork;
import plyscape.toolpath.cover.WallNeed;
import plyscape.toolpath.cover.WallRest;
import plyscape.toolpath.depth.DepthStep;
import plyscape.toolpath.lattice.CoarseMap;
import plyscape.toolpath.lattice.Ring;
import plyscape.toolpath.ring.LevelField;
import plyscape.toolpath.ring.Piece;
import plyscape.toolpath.ring.RingTracer;
import plyscape.toolpath.slot.SlotPlaces;
import plyscape.toolpath.task.PathOptions;

/**
 * The pieces of rings that the steps of one cutter need, on a panel as the steps before leave it.
 */
final class StepPlanner {

  /** Nodes nearer to a wall than this are left to the exact test of the wall. */
  static final double NODE_REST_MM = 0.045;

  /** Patches of less than this many squares of the diameter are taken by the wall ring alone. */
  private static final double SMALL_PATCH = 5;

  private final Tool tool;
  private final Reach reach;

  /** Whether no cutter runs before it. */
  private final boolean first;

  /** The next smaller cutter that gets as deep; null when none follows. */
  private final Tool next;

  /** Smaller patches are left to it, mm2; 0 when none follows. */
  private final double leastPatchMm2;

  private final PathOptions options;

  StepPlanner(Tool tool, Reach reach, boolean first, Tool next, PathOptions options) {
    this.tool = tool;
    this.reach = reach;
    this.first = first;
    this.next = next;
    leastPatchMm2 = next == null ? 0 : RestWorth.leastMm2(tool, next);
    this.options = options;
  }

  /**
   * The work of a step.
   *
   * @param field of its level
   * @param floor as it is before
   */
  StepWork work(DepthStep step, LevelField field, PlannedFloor floor, RingTracer tracer) {
    StepNodes nodes =
        new StepNodes(step, reach, floor, tool.stepdownMm(), first ? 0 : NODE_REST_MM);
    RestWorth worth = new RestWorth(nodes);
    if (next != null) {
      worth.drop(tool, next, step.depthMm(), floor);
    }
    if (!first) {
      worth.markSmall(SMALL_PATCH * tool.diameterMm() * tool.diameterMm());
    }
    List<Piece> pieces =
        leastPatchMm2 > 0 && !nodes.anyWanted()
            ? List.of()
            : pieces(step, field, nodes, floor, tracer);
    return new StepWork(step, field, pieces, tool.stepoverMm());
  }

  private List<Piece> pieces(
      DepthStep step, LevelField field, StepNodes nodes, PlannedFloor floor, RingTracer tracer) {
    double radius = tool.radiusMm();
    boolean finishes = leastPatchMm2 == 0 && step.depthMm() >= reach.depthMm(step.level()) - 1e-9;
    WallNeed need = finishes && !first ? need(step, field, floor) : WallNeed.NONE;
    List<Ring> walls = reach.walls(step.level());
    CoarseMap near = nodes.nearWanted(radius);
    LevelField.Spacing spacing =
        new LevelField.Spacing(radius, tool.stepoverMm(), options.wallAllowance(tool));
    // Rests are small: rings through them are drawn as they are.
    float[] smooth = first ? field.rounded(spacing) : field.field().distance;
    List<Ring> rings = new ArrayList<>(need == WallNeed.NONE ? near.near(walls) : walls);
    rings.addAll(field.innerRings(tracer, smooth, spacing, near));
    RingCover cover = new RingCover(nodes, radius, tool.stepoverMm());
    List<Piece> pieces = new ArrayList<>(cover.choose(rings, near, need, leastPatchMm2));
    if (nodes.markLeft()) {
      rings.addAll(field.ringsBetween(tracer, smooth, spacing, near));
      pieces.addAll(cover.chooseForLeft(rings, near));
      pieces.addAll(new LeftSpots(field.field(), nodes, radius).pieces());
    }
    return options.climb() ? pieces : pieces.stream().map(Piece::reversed).toList();
  }

  /** What the walls need, narrow places apart, which are cut by themselves. */
  private WallNeed need(DepthStep step, LevelField field, PlannedFloor floor) {
    WallRest rest = new WallRest(field.field(), step.depthMm(), floor);
    SlotPlaces slots = reach.slots(step.level());
    return (x, y) -> !slots.at(field.field().lattice, x, y) && rest.at(x, y);
  }
}
