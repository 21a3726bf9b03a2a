package plyscape.toolpath.motion;

import java.util.List;
import plyscape.machine.Machine;
import plyscape.machine.Move;
import plyscape.machine.RapidTime;
import plyscape.machine.Tool;
import plyscape.toolpath.cover.StepWork;
import plyscape.toolpath.lattice.Ring;
import plyscape.toolpath.lattice.Stock;
import plyscape.toolpath.ring.Chunks;
import plyscape.toolpath.ring.Piece;
import plyscape.toolpath.task.PathOptions;

/**
 * Where one cutter is, and the commands that move it: along a piece, straight or by arcs at depth,
 * down, up and over. What it meets on the way is cut in the planner's stock.
 */
final class CutterHead {

  /** The last bit down onto the panel's face, which isn't quite flat, goes at plunge feed, mm. */
  static final double FACE_MM = 0.2;

  /** Arcs along a wall may come nearer to it than the lines they stand for by this, mm. */
  private static final double WALL_SIDE_MM = 0.002;

  private final Stock stock;
  private final Tool tool;
  private final Machine machine;
  private final PathOptions options;
  private final double radius;
  private final WidthFeed feeds;
  private final RapidTime rapids;
  private final BiteLimit bites;
  private final RapidHop hop;

  /** Moves of the pass being made. */
  private MoveList moves;

  /** Depth of the step being cut, mm. */
  private double floor;

  /** Whether the cutter is in the wood or on a floor, not above. */
  private boolean down;

  /** Where the cutter may go in the step being cut. */
  private Clearway way;

  /** The same in the step at whose depth the cutter is, while it is on its way to another. */
  private Clearway here;

  /** What was cut last, if it lies along a wall; else null. */
  private Piece wall;

  /** How the last piece was left; null after anything else. */
  private Heading heading;

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
    bites = new BiteLimit(stock, tool);
    hop = new RapidHop(machine, options.room());
    feeds = new WidthFeed(stock, tool, options, machine.leastChipMm());
    moves = new MoveList(start[0], start[1], -machine.safeHeightMm());
  }

  double x() {
    return moves.x;
  }

  double y() {
    return moves.y;
  }

  Tool tool() {
    return tool;
  }

  PathOptions options() {
    return options;
  }

  /** Depth of the step being cut, mm. */
  double floor() {
    return floor;
  }

  /** Where the cutter may go in the step being cut. */
  Clearway way() {
    return way;
  }

  /** How the piece cut last was left; null after anything else. */
  Heading heading() {
    return heading;
  }

  /** Whether the cutter is down at the depth of the step being cut. */
  boolean level() {
    return down && here == way && moves.depth >= floor - Stock.SAME_MM;
  }

  /** Begins a step: all that follows is cut to its depth. */
  void begin(double depthMm, Clearway where) {
    floor = depthMm;
    way = where;
    here = here == null ? where : here;
    heading = null;
  }

  /** Leaves the wall that the cutter may stand at; the moves since the last time. */
  List<Move> endPass() {
    if (down) {
      leaveWall();
    }
    return takeMoves();
  }

  /** Lifts to safe height; the moves since the last time. */
  List<Move> park() {
    lift(-machine.safeHeightMm());
    return takeMoves();
  }

  private List<Move> takeMoves() {
    List<Move> done = moves.moves();
    moves = new MoveList(moves.x, moves.y, moves.depth);
    return done;
  }

  /** Whether the stepdown allows to go straight from A to B at the step's depth. */
  boolean mayCut(double ax, double ay, double bx, double by) {
    return mayCut(ax, ay, bx, by, floor);
  }

  /** The same at another depth. */
  boolean mayCut(double ax, double ay, double bx, double by, double toDepth) {
    return bites.allows(ax, ay, bx, by, toDepth);
  }

  /** Whether it allows to go straight down to a depth at a place. */
  boolean maySink(double x, double y, double toDepth) {
    return mayCut(x, y, x, y, toDepth);
  }

  /** Whether it allows to go along points. */
  boolean mayCut(double[][] points) {
    return bites.allows(points, floor);
  }

  /** Whether the way straight to a place at this depth is open and not dearer than lifting. */
  boolean staysDown(double x, double y) {
    double length = Math.hypot(x - moves.x, y - moves.y);
    if (length < 1e-9) {
      return true;
    }
    double[][] open = length > 60 ? null : way.round(moves.x, moves.y, x, y);
    if (open == null || !mayCut(open)) {
      return false;
    }
    double feed = tool.feedMmPerMin() / 60;
    double width = feeds.widthMm(stock.standing(moves.x, moves.y, x, y, radius, floor), length);
    double stay = length / (feed * options.feedShare(width, tool.stepoverMm(), tool.diameterMm()));
    return stay < liftSeconds(length) + (width > 0 ? 1 : 0);
  }

  private double liftSeconds(double length) {
    double up = rapids.seconds(floor + options.room().faceMm());
    double touch = options.room().floorMm() / (tool.plungeMmPerMin() / 60);
    return 2 * up + rapids.seconds(length) + touch;
  }

  /** To a place at depth, straight if that is open, at the feed that the wood there allows. */
  void link(double x, double y) {
    WallLead lead = offWall();
    if (lead != null && way.free(lead.x(), lead.y(), x, y) && mayCut(lead.x(), lead.y(), x, y)) {
      swingOff(lead);
    }
    double[][] open = way.round(moves.x, moves.y, x, y);
    if (open != null && open.length > 2) {
      leg(open[1][0], open[1][1]);
    }
    leg(x, y);
    stock.cutDisk(x, y, radius, floor);
  }

  private void leg(double x, double y) {
    double length = Math.hypot(x - moves.x, y - moves.y);
    if (length > 1e-9) {
      int count = stock.cut(moves.x, moves.y, x, y, radius, floor);
      moves.line(x, y, floor, feed(count, length));
    }
  }

  /** Feed at which so many nodes are newly cut on a way. */
  private double feed(int nodes, double length) {
    return tool.feedMmPerMin() * feeds.share(feeds.widthMm(nodes, length));
  }

  /** The feeds of the cutter. */
  WidthFeed feeds() {
    return feeds;
  }

  /** Goes over to a place and down to a height there by rapids over what stands between. */
  void over(double x, double y, double toDepth) {
    double open =
        way.clear(x, y, toDepth) ? toDepth : Math.min(toDepth, above(way.highest(x, y, x, y)));
    if (!down) {
      moves.rapid(x, y, moves.depth);
      moves.rapid(x, y, Math.max(open, moves.depth));
      return;
    }
    leaveWall();
    heading = null;
    down = false;
    double[] from = {moves.x, moves.y, moves.depth};
    moves.addAll(
        hop.moves(from, new double[] {x, y, open}, floor - options.room().floorMm(), way::highest));
  }

  /** Depth to which a rapid may come down on wood or floor that stands no higher than a depth. */
  double above(double highest) {
    double room = options.room().floorMm();
    return Math.max(
        -machine.safeHeightMm(),
        highest - (highest <= Stock.SAME_MM ? Math.max(FACE_MM, room) : room));
  }

  private void lift(double toDepth) {
    if (down) {
      leaveWall();
      down = false;
    }
    heading = null;
    moves.rapid(moves.x, moves.y, toDepth);
  }

  /** Straight down to a place and a depth at plunge feed, or up as a rapid; cuts nothing. */
  void sink(double x, double y, double toDepth) {
    moves.rapid(moves.x, moves.y, Math.min(toDepth, moves.depth));
    moves.line(x, y, toDepth, tool.plungeMmPerMin());
    down = true;
  }

  /** Over to cleared ground and down onto its floor. */
  void touchDown(double x, double y) {
    over(x, y, floor - options.room().floorMm());
    sink(x, y, floor);
  }

  /** Straight down into the wood to the floor, where the cutter is. */
  void bore() {
    sink(moves.x, moves.y, floor);
    stock.cutDisk(moves.x, moves.y, radius, floor);
  }

  /**
   * Down a ramp into the wood.
   *
   * @param points X, Y and depth of each, the last at the floor
   */
  void ramp(List<double[]> points) {
    double from = moves.depth;
    double x = moves.x;
    double y = moves.y;
    for (double[] point : points) {
      double deep = (point[2] - from) / Math.min(tool.stepdownMm(), floor - from + 1e-9);
      double feed = tool.feedMmPerMin() * feeds.share(tool.diameterMm() * deep);
      double most = RampEntry.mostFeed(moves, point, tool.plungeMmPerMin());
      moves.line(point[0], point[1], point[2], Math.min(feed, most));
      if (deep > 0.5) {
        stock.cut(x, y, point[0], point[1], radius, floor);
        stock.cutDisk(point[0], point[1], radius, floor);
      }
      x = point[0];
      y = point[1];
    }
  }

  /** Along the arc of a lead from its open end onto the wall's path at a place. */
  void swingOn(WallLead lead, double x, double y) {
    double[][] points = lead.points(x, y);
    int count = 0;
    double length = 0;
    for (int i = points.length - 1; i > 0; i--) {
      count += cut(points[i], points[i - 1]);
      length += Math.hypot(points[i - 1][0] - points[i][0], points[i - 1][1] - points[i][1]);
    }
    moves.arc(lead.reversedTo(x, y), floor, feed(count, length));
  }

  private int cut(double[] a, double[] b) {
    return stock.cut(a[0], a[1], b[0], b[1], radius, floor);
  }

  /** Along a biarc at depth. */
  void glide(Biarc biarc) {
    double[][] points = way.along(biarc, moves.x, moves.y);
    int count = 0;
    for (int i = 1; i < points.length; i++) {
      count += cut(points[i - 1], points[i]);
    }
    double feed = feed(count, biarc.lengthMm());
    moves.arc(biarc.first(), floor, feed);
    moves.arc(biarc.second(), floor, feed);
  }

  /**
   * Straight from place to place.
   *
   * @param points X, Y, depth and feed to it of each; the feed falls where that would be faster
   *     down than the plunge
   */
  void along(List<double[]> points) {
    for (double[] point : points) {
      boolean atFloor = Math.min(moves.depth, point[2]) >= floor - Stock.SAME_MM;
      if (atFloor) {
        stock.cutDisk(moves.x, moves.y, radius, floor);
        stock.cut(moves.x, moves.y, point[0], point[1], radius, floor);
      }
      double most = RampEntry.mostFeed(moves, point, tool.plungeMmPerMin());
      moves.line(point[0], point[1], point[2], Math.min(point[3], most));
    }
    here = way;
    heading = null;
    wall = null;
  }

  /** Along a piece at depth, from its first point, where the cutter is. */
  void follow(Piece piece) {
    here = way;
    Ring ring = new Ring(piece.index(), piece.closed(), piece.x(), piece.y());
    Chunks chunks = Chunks.of(ring, Math.max(6 * stock.lattice.stepMm(), Math.min(1, radius / 3)));
    double[] shares = feeds.cut(chunks, floor);
    double arcs = PathOptions.ARC_TOLERANCE_MM;
    double left = piece.wall() && !pocketLeft(piece) ? WALL_SIDE_MM : arcs;
    double right = piece.wall() && pocketLeft(piece) ? WALL_SIDE_MM : arcs;
    List<Move> lines = ChunkLines.of(chunks, shares, tool.feedMmPerMin(), floor);
    moves.addAll(ArcFitter.fit(moves.x, moves.y, floor, lines, left, right));
    heading = Heading.ofEnd(piece);
    wall = piece.wall() ? piece : null;
  }

  /** A tangent arc or a short step off the wall, so that going up doesn't rub along it. */
  private void leaveWall() {
    if (here.clear(moves.x, moves.y)) {
      return;
    }
    WallLead lead = offWall();
    if (lead != null) {
      swingOff(lead);
      return;
    }
    double[] spot = here.clearSpot(moves.x, moves.y);
    if (spot != null && bites.allows(moves.x, moves.y, spot[0], spot[1], moves.depth)) {
      moves.line(spot[0], spot[1], moves.depth, tool.feedMmPerMin());
    }
  }

  /** The arc by which the wall just cut can be left, or null. */
  private WallLead offWall() {
    WallLead lead =
        wall != null && heading != null ? WallLead.off(leads(here, wall), heading) : null;
    return lead != null && bites.allows(lead.points(moves.x, moves.y), moves.depth) ? lead : null;
  }

  /** What must be cut higher up before a piece of a step. */
  List<BiteLimit.Before> before(StepWork work, Piece piece) {
    return bites.before(work, piece);
  }

  /** How leads onto a piece along a wall and off it are laid. */
  WallLead.Site leads(Clearway where, Piece piece) {
    return new WallLead.Site(where, pocketLeft(piece), tool.stepoverMm());
  }

  private boolean pocketLeft(Piece piece) {
    return options.climb() != piece.against();
  }

  private void swingOff(WallLead lead) {
    moves.arc(lead.arc(), moves.depth, tool.feedMmPerMin());
    heading = null;
  }
}
