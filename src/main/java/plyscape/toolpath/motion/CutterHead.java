package plyscape.toolpath.motion;

import plyscape.machine.Machine;
import plyscape.machine.RapidTime;
import plyscape.machine.Tool;
import plyscape.toolpath.lattice.Stock;
import plyscape.toolpath.task.PathOptions;

/**
 * Where one cutter is and what it can do from there: go on at depth, lift off and over, leave a
 * wall. What it meets on the way is cut in the planner's stock.
 */
final class CutterHead {

  /** The last bit down onto cleared ground goes at plunge feed, mm. */
  static final double TOUCH_MM = 0.2;

  final Stock stock;
  final Tool tool;
  final Machine machine;
  final PathOptions options;
  final double radius;
  final WidthFeed feeds;
  private final RapidTime rapids;

  /** Moves of the pass being made. */
  MoveList moves;

  /** Floor of the step being cut, mm. */
  double depth;

  /** Whether the cutter is in the wood or on a floor, not above. */
  boolean down;

  /** Where the cutter may go in the step being cut. */
  Clearway way;

  /** The same in the step at whose depth the cutter is, while it is on its way to another. */
  Clearway here;

  /** Whether what was cut last lies along a wall. */
  boolean alongWall;

  /** Direction in which the last piece was left; NaN after anything else. */
  double headingX = Double.NaN;

  double headingY = Double.NaN;

  /**
   * @param stock panel as the cutters before left it
   * @param start where the cutter hangs, at safe height
   */
  CutterHead(Stock stock, Tool tool, Machine machine, PathOptions options, double[] start) {
    this.stock = stock;
    this.tool = tool;
    this.machine = machine;
    this.options = options;
    radius = tool.radiusMm();
    rapids = new RapidTime(machine);
    feeds = new WidthFeed(stock, tool, options);
    moves = new MoveList(start[0], start[1], -machine.safeHeightMm());
  }

  /** Whether the cutter is down at the depth of the step being cut. */
  boolean level() {
    return down && here == way;
  }

  /** Whether the way straight to a place at this depth is open and not dearer than lifting. */
  boolean staysDown(double x, double y) {
    double length = Math.hypot(x - moves.x, y - moves.y);
    if (length < 1e-9) {
      return true;
    }
    if (length > 60 || !way.free(moves.x, moves.y, x, y)) {
      return false;
    }
    double feed = tool.feedMmPerMin() / 60;
    double width = feeds.widthMm(stock.standing(moves.x, moves.y, x, y, radius, depth), length);
    double stay = length / (feed * options.feedShare(width, tool.stepoverMm(), tool.diameterMm()));
    return stay < liftSeconds(length) + (width > 0 ? 1 : 0);
  }

  private double liftSeconds(double length) {
    double up = rapids.seconds(depth + options.clearanceMm());
    double over = rapids.seconds(length);
    return 2 * up + over + TOUCH_MM / (tool.plungeMmPerMin() / 60);
  }

  /** Straight to a place at depth, at the feed that what stands in between allows. */
  void link(double x, double y) {
    WallLead lead = offWall();
    if (lead != null && way.free(lead.x(), lead.y(), x, y)) {
      swing(lead);
    }
    double length = Math.hypot(x - moves.x, y - moves.y);
    if (length > 1e-9) {
      int count = stock.cut(moves.x, moves.y, x, y, radius, depth);
      moves.line(x, y, depth, tool.feedMmPerMin() * feeds.share(feeds.widthMm(count, length)));
    }
    stock.cutDisk(x, y, radius, depth);
  }

  /** Lifts over the local stock, goes over to a place and comes down to a height there. */
  void over(double x, double y, double toDepth) {
    if (!down) {
      moves.rapid(x, y, moves.depth);
    } else {
      leaveWall();
      headingX = Double.NaN;
      double height =
          Math.min(
              Math.min(moves.depth, depth - TOUCH_MM),
              rapidDepth(way.highest(moves.x, moves.y, x, y)));
      lift(height);
      moves.rapid(x, y, height);
    }
    double open = way.clear(x, y) ? toDepth : Math.min(toDepth, way.highest(x, y, x, y) - TOUCH_MM);
    if (open > moves.depth) {
      moves.rapid(x, y, open);
    }
  }

  /** Depth at which a rapid goes over wood or floor that stands no higher than a depth. */
  private double rapidDepth(double highest) {
    double clearance =
        highest <= Stock.SAME_MM
            ? options.clearanceMm()
            : highest < moves.depth - Stock.SAME_MM ? options.clearanceMm() / 2 : TOUCH_MM;
    return Math.max(-machine.safeHeightMm(), highest - clearance);
  }

  void lift(double toDepth) {
    if (down) {
      leaveWall();
      if (!here.clear(moves.x, moves.y)) {
        moves.line(moves.x, moves.y, Math.max(toDepth, -TOUCH_MM), tool.feedMmPerMin());
      }
      down = false;
    }
    headingX = Double.NaN;
    moves.rapid(moves.x, moves.y, toDepth);
  }

  /**
   * A tangent arc or a short step off the wall, so that the cutter doesn't rub along it going up.
   */
  void leaveWall() {
    if (here.clear(moves.x, moves.y)) {
      return;
    }
    WallLead lead = offWall();
    if (lead != null) {
      swing(lead);
      return;
    }
    double[] spot = here.clearSpot(moves.x, moves.y);
    if (spot != null) {
      moves.line(spot[0], spot[1], moves.depth, tool.feedMmPerMin());
    }
  }

  /** The arc by which the wall just cut can be left, or null. */
  private WallLead offWall() {
    return alongWall && !Double.isNaN(headingX)
        ? WallLead.off(
            here, options.climb(), tool.stepoverMm(), moves.x, moves.y, headingX, headingY)
        : null;
  }

  private void swing(WallLead lead) {
    moves.arc(
        lead.clockwise(),
        lead.x(),
        lead.y(),
        moves.depth,
        lead.centreX(),
        lead.centreY(),
        tool.feedMmPerMin());
    headingX = Double.NaN;
  }
}
