package plyscape.toolpath.order;

import java.util.List;
import plyscape.machine.Machine;
import plyscape.machine.RapidTime;
import plyscape.machine.Tool;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.Lattice;

/**
 * About what it costs to go from one piece to the next, s: the cheaper of lifting and of staying
 * down where that is open.
 */
final class GapCost implements TravelCost {

  /** Lifting and coming down again takes about this long, s. */
  private static final double LIFT_S = 0.35;

  /** Longer ways at depth save too little against lifting to be looked at, mm. */
  private static final double STAYING_MM = 12;

  /** A way this much too near to a wall still counts as open: it can be laid a little aside, mm. */
  private static final double NEAR_WALL_MM = 0.1;

  /** Steps at which a way along a wall is looked at, mm. */
  private static final double LOOK_MM = 0.2;

  private final int[] stepOf;
  private final List<DistanceField> fields;
  private final RapidTime rapids;
  private final double secondsPerMm;
  private final double needMm;

  /**
   * @param stepOf the step of each piece
   * @param fields by step
   */
  GapCost(int[] stepOf, List<DistanceField> fields, Tool tool, Machine machine) {
    this.stepOf = stepOf;
    this.fields = fields;
    rapids = new RapidTime(machine);
    secondsPerMm = 60 / tool.feedMmPerMin();
    needMm = tool.radiusMm() - NEAR_WALL_MM;
  }

  @Override
  public double of(int from, double fromX, double fromY, int to, double toX, double toY) {
    double mm = length(fromX, fromY, toX, toY);
    double lifting = LIFT_S + rapids.seconds(mm);
    double staying = mm * secondsPerMm;
    return staying < lifting
            && mayStay(from, to, mm)
            && openEitherWay(fields.get(stepOf[from]), fromX, fromY, toX, toY, mm)
        ? staying
        : lifting;
  }

  @Override
  public double least(int from, double fromX, double fromY, int to, double toX, double toY) {
    double mm = length(fromX, fromY, toX, toY);
    double staying = mm * secondsPerMm;
    if (mayStay(from, to, mm) && staying <= LIFT_S) {
      return staying;
    }
    double lifting = LIFT_S + rapids.seconds(mm);
    return staying < lifting && mayStay(from, to, mm) ? staying : lifting;
  }

  private static double length(double fromX, double fromY, double toX, double toY) {
    double dx = toX - fromX;
    double dy = toY - fromY;
    return Math.sqrt(dx * dx + dy * dy);
  }

  private boolean mayStay(int from, int to, double mm) {
    return from >= 0 && mm <= STAYING_MM && stepOf[from] == stepOf[to];
  }

  /**
   * The same answer there and back, though the steps of a look would fall otherwise: a stretch that
   * is turned round must cost what it did, or turning it helps for ever.
   */
  private boolean openEitherWay(
      DistanceField field, double ax, double ay, double bx, double by, double length) {
    boolean forth = ax < bx || ax == bx && ay <= by;
    return forth ? open(field, ax, ay, bx, by, length) : open(field, bx, by, ax, ay, length);
  }

  /** Whether no wall is in the way straight from one place to another. */
  private boolean open(
      DistanceField field, double ax, double ay, double bx, double by, double length) {
    Lattice lattice = field.lattice;
    double ux = (bx - ax) / length;
    double uy = (by - ay) / length;
    // Distances change no faster than the place does: from roomy ground a long step is safe.
    double so = 0;
    while (so < length) {
      double room = field.distance[lattice.nearest(ax + so * ux, ay + so * uy)] - needMm;
      if (room < 0) {
        return false;
      }
      so += room > LOOK_MM ? room : LOOK_MM;
    }
    return true;
  }
}
