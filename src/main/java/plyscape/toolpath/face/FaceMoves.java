package plyscape.toolpath.face;

import java.util.ArrayList;
import java.util.List;
import plyscape.machine.Machine;
import plyscape.machine.Move;
import plyscape.machine.Tool;
import plyscape.toolpath.motion.MoveList;
import plyscape.toolpath.order.TourItem;
import plyscape.toolpath.order.TourOrder;
import plyscape.toolpath.task.RapidRoom;

/**
 * Runs of a finishing cutter as moves, in an order with short ways between: near ones are joined at
 * feed just above what may be touched, farther ones by rapids over the wood that stands there. Down
 * is never faster than the cutter's plunge.
 */
final class FaceMoves {

  /** Height over what may be touched on the way to a near run, mm. */
  private static final double OVER_MM = 0.05;

  /** Highest lift on such a way; above it a rapid is quicker. */
  private static final double MOST_RISE_MM = 1.5;

  /** Rapids come down to this above wood, mm. */
  private static final double AIR_MM = 0.3;

  /** More than the top face may be off, mm. */
  private static final double OVER_FACE_MM = 0.05;

  /** A lift and a way down cost about this, s. */
  private static final double LIFT_S = 1.2;

  /** Rounding of both ends of a short slope must not make it a fast plunge, mm. */
  private static final double PLACE_MM = 0.001;

  private final FaceLattice lattice;
  private final DropCutter drop;
  private final Tool tool;
  private final Machine machine;
  private final double clearanceMm;
  private final double airMm;
  private final double nearMm;
  private float[] standing;
  private float[] before;
  private final MoveList moves;
  private final double safe;
  private boolean high = true;

  /**
   * @param nearMm runs that end this near to the next one's beginning are joined
   */
  FaceMoves(
      FaceLattice lattice,
      DropCutter drop,
      Tool tool,
      FaceTask task,
      double nearMm,
      double[] start) {
    this.lattice = lattice;
    this.drop = drop;
    this.tool = tool;
    machine = task.machine();
    double face = task.panel().flatnessMm() + OVER_FACE_MM;
    clearanceMm = Math.max(RapidRoom.of(machine).faceMm(), face);
    airMm = Math.max(AIR_MM, face);
    this.nearMm = nearMm;
    safe = -machine.safeHeightMm();
    moves = new MoveList(start[0], start[1], safe);
  }

  /** Takes the stock as it is before the next runs, a copy. */
  void look(float[] stock) {
    before = stock;
    standing = lattice.leastAround(before, drop.around() + FaceLattice.BLOCK / 2);
  }

  /** Cuts runs, in an order of their own. */
  void cut(List<FaceRun> runs) {
    List<TourItem> items = new ArrayList<>(runs.size());
    for (FaceRun run : runs) {
      double[] u = {run.u()[0], run.u()[run.size() - 1]};
      double[] v = {run.v(), run.v()};
      items.add(new TourItem(u, v, TourItem.Kind.EITHER_WAY, new int[0]));
    }
    double feed = tool.feedMmPerMin() / 60;
    double rapid = machine.rapidMmPerMin() / 60;
    double startU = lattice.turned ? moves.y : moves.x;
    double startV = lattice.turned ? moves.x : moves.y;
    for (TourOrder.Visit visit :
        TourOrder.of(
            items, startU, startV, gap -> gap <= nearMm ? gap / feed : LIFT_S + gap / rapid)) {
      run(runs.get(visit.item()), visit.reversed());
    }
  }

  /** Ends at safe height. */
  List<Move> finish() {
    up(safe);
    return moves.moves();
  }

  private void run(FaceRun run, boolean backwards) {
    int n = run.size();
    int first = backwards ? n - 1 : 0;
    if (high || !link(run.u()[first], run.v(), run.depth()[first])) {
      travel(run.u()[first], run.v(), run.depth()[first]);
    }
    for (int k = 0; k < n; k++) {
      int i = backwards ? n - 1 - k : k;
      feed(run.u()[i], run.v(), run.depth()[i]);
    }
  }

  private double nowU() {
    return lattice.turned ? moves.y : moves.x;
  }

  private double nowV() {
    return lattice.turned ? moves.x : moves.y;
  }

  /** Goes to a near place at feed, over what may not be touched; false when that isn't near. */
  private boolean link(double u, double v, double depth) {
    double fromU = nowU();
    double fromV = nowV();
    double way = Math.hypot(u - fromU, v - fromV);
    if (way > nearMm) {
      return false;
    }
    int n = (int) Math.ceil(way / (lattice.stepMm / 2)) + 1;
    double over = Math.min(moves.depth, depth);
    double lower = over - MOST_RISE_MM;
    for (int i = 0; i <= n; i++) {
      double t = (double) i / n;
      over = Math.min(over, drop.at(fromU + t * (u - fromU), fromV + t * (v - fromV)) - OVER_MM);
      if (over < lower) {
        return false;
      }
    }
    over = Math.max(over, safe);
    feed(fromU, fromV, over);
    feed(u, v, over);
    return true;
  }

  private void travel(double u, double v, double depth) {
    double over = high ? safe : Math.min(moves.depth, highest(nowU(), nowV(), u, v) - clearanceMm);
    over = Math.max(over, safe);
    up(over);
    moves.rapid(lattice.x(u, v), lattice.y(u, v), over);
    double down = Math.min(drop.airAbove(before, u, v), depth) - airMm;
    if (down > over) {
      moves.rapid(lattice.x(u, v), lattice.y(u, v), down);
    }
    high = false;
  }

  private void up(double depth) {
    if (depth < moves.depth) {
      moves.rapid(moves.x, moves.y, depth);
    }
  }

  /** Depth above which nothing stands along a line, mm: by blocks, so on the safe side. */
  private double highest(double u0, double v0, double u1, double v1) {
    double block = FaceLattice.BLOCK * lattice.stepMm;
    int n = (int) Math.ceil(Math.hypot(u1 - u0, v1 - v0) / (block / 4)) + 1;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i <= n; i++) {
      double t = (double) i / n;
      int column = node(u0 + t * (u1 - u0) - lattice.minU, lattice.columns);
      int row = node(v0 + t * (v1 - v0) - lattice.minV, lattice.rows);
      least = Math.min(least, standing[lattice.blockOf(column, row)]);
    }
    return least;
  }

  private int node(double from, int count) {
    return Math.max(0, Math.min(count - 1, (int) Math.round(from / lattice.stepMm)));
  }

  private void feed(double u, double v, double depth) {
    double x = lattice.x(u, v);
    double y = lattice.y(u, v);
    double down = depth - moves.depth;
    double feed = tool.feedMmPerMin();
    if (down > 0) {
      // As steep as the words of both ends, rounded, may make it.
      double flat = Math.max(0, Math.hypot(x - moves.x, y - moves.y) - 1.5 * PLACE_MM);
      double most = down + PLACE_MM;
      feed = Math.min(feed, tool.plungeMmPerMin() * Math.hypot(flat, most) / most);
      feed = Math.max(1, Math.floor(feed));
    }
    moves.line(x, y, depth, feed);
  }
}
