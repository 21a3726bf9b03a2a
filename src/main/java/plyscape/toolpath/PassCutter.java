package plyscape.toolpath;

import java.util.ArrayList;
import java.util.List;
import plyscape.machine.Machine;
import plyscape.machine.Tool;

/**
 * Turns the ordered pieces of one cutter into moves and cuts them in the planner's stock: ways
 * between pieces, entries, and the feed, which falls where the cutter takes more than its stepover.
 * A new pass begins whenever the step changes.
 */
final class PassCutter {

  /** The last bit down onto cleared ground goes at plunge feed, mm. */
  private static final double TOUCH_MM = 0.2;

  /** Arcs along a wall may come nearer to it than the lines they stand for by this, mm. */
  private static final double WALL_SIDE_MM = 0.002;

  /** Ways ahead, in stepovers, at which a neighbouring closed ring is met. */
  private static final double[] LEADS = {2, 1.4, 0.8};

  /** A way longer by this is as dear as the two stops it saves, mm. */
  private static final double STOP_WORTH_MM = 6;

  private final Stock stock;
  private final Tool tool;
  private final Machine machine;
  private final PathOptions options;
  private final double radius;
  private final WidthFeed feeds;
  private final List<Pass> passes = new ArrayList<>();
  private MoveList moves;
  private StepWork work;
  private double depth;
  private boolean down;

  /** Where rings of the step being cut begin. */
  private GrainStart starts;

  /** Where the cutter may go in the step being cut. */
  private Clearway way;

  /** The same in the step at whose depth the cutter is, while it is on its way to another. */
  private Clearway here;

  private boolean alongWall;
  private double headingX = Double.NaN;
  private double headingY = Double.NaN;

  /**
   * @param stock panel as the cutters before left it
   * @param start where the cutter hangs, at safe height
   */
  PassCutter(Stock stock, Tool tool, Machine machine, PathOptions options, double[] start) {
    this.stock = stock;
    this.tool = tool;
    this.machine = machine;
    this.options = options;
    radius = tool.radiusMm();
    feeds = new WidthFeed(stock, tool, options);
    moves = new MoveList(start[0], start[1], -machine.safeHeightMm());
  }

  /** Lifts to safe height; the passes. */
  List<Pass> passes() {
    if (work != null) {
      lift(-machine.safeHeightMm());
      endPass();
      work = null;
    }
    return List.copyOf(passes);
  }

  private void endPass() {
    DepthPlan.Step step = work.step();
    passes.add(
        new Pass(work.field().level().plyNumber(), step.depthMm(), step.fromMm(), moves.moves()));
    moves = new MoveList(moves.x, moves.y, moves.depth);
  }

  private void begin(StepWork next) {
    if (work != null) {
      if (down) {
        leaveWall();
      }
      endPass();
    }
    work = next;
    depth = next.step().depthMm();
    way = new Clearway(next.field().field(), stock, radius, depth);
    starts = new GrainStart(next.field().level().grainDegrees(), LEADS[0] * tool.stepoverMm());
    if (here == null) {
      here = way;
    }
    headingX = Double.NaN;
  }

  /** Whether the cutter is down at the depth of the step being cut. */
  private boolean level() {
    return down && here == way;
  }

  /** Cuts a piece of a step. */
  @SuppressWarnings("ReferenceEquality") // another step of the same shape is another step
  void cut(StepWork of, Piece piece) {
    if (of != work) {
      begin(of);
    }
    Piece entered = level() ? glide(piece) : null;
    if (entered == null) {
      entered = enter(piece.closed() ? started(piece) : piece);
    }
    here = way;
    follow(entered);
    alongWall = entered.wall();
  }

  /**
   * Goes over to a near piece without a stop, if there is room; the piece from where it was met, or
   * null.
   */
  private Piece glide(Piece piece) {
    if (!piece.closed()) {
      return glideTo(piece) ? piece : null;
    }
    Piece along = starts.place(piece, moves.x, moves.y);
    Piece met = glide(piece, along);
    return met != null || leadOnto(along) != null
        ? met
        : glide(piece, piece.startingNear(moves.x, moves.y));
  }

  private Piece glide(Piece piece, Piece from) {
    double gap = Math.hypot(from.x()[0] - moves.x, from.y()[0] - moves.y);
    if (gap > 4 * tool.stepoverMm()) {
      return null;
    }
    double length = piece.lengthMm();
    for (double lead : LEADS) {
      double ahead = lead * tool.stepoverMm();
      if (ahead < length / 3) {
        Piece placed = from.startingAfter(0, ahead);
        if (glideTo(placed)) {
          return placed;
        }
      }
    }
    return null;
  }

  private boolean glideTo(Piece piece) {
    double bx = piece.x()[0];
    double by = piece.y()[0];
    double gap = Math.hypot(bx - moves.x, by - moves.y);
    double ahead = Math.hypot(piece.x()[1] - bx, piece.y()[1] - by);
    if (gap < 0.05 || gap > 5 * tool.stepoverMm() || ahead < 1e-6 || Double.isNaN(headingX)) {
      return false;
    }
    Biarc biarc =
        Biarc.between(
            moves.x,
            moves.y,
            headingX,
            headingY,
            bx,
            by,
            (piece.x()[1] - bx) / ahead,
            (piece.y()[1] - by) / ahead);
    if (biarc == null || biarc.radiusMm() < 0.25 || biarc.lengthMm() > gap + STOP_WORTH_MM) {
      return false;
    }
    double[][] points = way.along(biarc, moves.x, moves.y, bx, by);
    if (!way.free(points)) {
      return false;
    }
    int count = 0;
    for (int i = 1; i < points.length; i++) {
      count +=
          stock.cut(points[i - 1][0], points[i - 1][1], points[i][0], points[i][1], radius, depth);
    }
    double feed = tool.feedMmPerMin() * feeds.share(feeds.widthMm(count, biarc.lengthMm()));
    side(
        biarc.middleX(),
        biarc.middleY(),
        biarc.firstX(),
        biarc.firstY(),
        biarc.firstClockwise(),
        feed);
    side(bx, by, biarc.secondX(), biarc.secondY(), biarc.secondClockwise(), feed);
    return true;
  }

  private void side(double x, double y, double cx, double cy, boolean clockwise, double feed) {
    if (Double.isNaN(cx) || Math.hypot(x - cx, y - cy) > 500) {
      moves.line(x, y, depth, feed);
    } else {
      moves.arc(clockwise, x, y, depth, cx, cy, feed);
    }
  }

  /** A closed piece from where it is best begun: near, on cleared ground, along the grain. */
  private Piece started(Piece piece) {
    Piece along = starts.place(piece, moves.x, moves.y);
    if (piece.wall() && leadOnto(along) != null) {
      return along;
    }
    Piece near = piece.startingNear(moves.x, moves.y);
    if (level() && staysDown(near.x()[0], near.y()[0])) {
      return near;
    }
    int step = Math.max(1, piece.size() / 48);
    int best = -1;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < piece.size(); i += step) {
      double d = Math.hypot(piece.x()[i] - moves.x, piece.y()[i] - moves.y);
      if (d < least && way.clearSpot(piece.x()[i], piece.y()[i]) != null) {
        least = d;
        best = i;
      }
    }
    return best < 0 ? along : piece.startingAfter(best, 0);
  }

  /** Whether the way straight to a place at this depth is open and not dearer than lifting. */
  private boolean staysDown(double x, double y) {
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
    double up = RapidTime.seconds(depth + options.clearanceMm(), machine);
    double over = RapidTime.seconds(length, machine);
    return 2 * up + over + TOUCH_MM / (tool.plungeMmPerMin() / 60);
  }

  /**
   * Goes to the start of a piece and down to the depth; what is then to be cut (a closed piece may
   * start elsewhere).
   */
  private Piece enter(Piece piece) {
    double x = piece.x()[0];
    double y = piece.y()[0];
    if (onto(piece)) {
      return piece;
    }
    if (level() && staysDown(x, y)) {
      link(x, y);
      return piece;
    }
    double[] spot = way.clearSpot(x, y);
    if (spot != null) {
      over(spot[0], spot[1], depth - TOUCH_MM);
      moves.line(spot[0], spot[1], depth, tool.plungeMmPerMin());
      down = true;
      link(x, y);
      return piece;
    }
    double length = piece.lengthMm();
    double highest = highest(piece);
    double[] roomy = way.roomySpot(x, y);
    if (roomy != null) {
      over(roomy[0], roomy[1], highest - TOUCH_MM);
    } else {
      over(x, y, -TOUCH_MM);
      moves.line(x, y, highest - TOUCH_MM, tool.plungeMmPerMin());
    }
    if (roomy != null) {
      moves.line(roomy[0], roomy[1], highest - TOUCH_MM, tool.plungeMmPerMin());
    }
    moves.line(x, y, highest, tool.plungeMmPerMin());
    down = true;
    if (length < RampEntry.LEAST_ROOM_MM) {
      moves.line(x, y, depth, tool.plungeMmPerMin());
      stock.cutDisk(x, y, radius, depth);
      return piece;
    }
    return ramp(piece, highest);
  }

  /** A tangent arc from cleared ground onto a piece along a wall, or null. */
  private WallLead leadOnto(Piece piece) {
    double x = piece.x()[0];
    double y = piece.y()[0];
    double ahead = Math.hypot(piece.x()[1] - x, piece.y()[1] - y);
    if (!piece.wall() || piece.lengthMm() < RampEntry.LEAST_ROOM_MM || ahead < 1e-6) {
      return null;
    }
    return WallLead.on(
        way,
        (openX, openY) ->
            way.clear(openX, openY)
                || level() && way.room(openX, openY) >= 0 && staysDown(openX, openY),
        options.climb(),
        tool.stepoverMm(),
        x,
        y,
        (piece.x()[1] - x) / ahead,
        (piece.y()[1] - y) / ahead);
  }

  /** Goes onto a piece along a wall by a tangent arc; whether there was room. */
  private boolean onto(Piece piece) {
    double x = piece.x()[0];
    double y = piece.y()[0];
    WallLead lead = leadOnto(piece);
    if (lead == null) {
      return false;
    }
    if (level() && staysDown(lead.x(), lead.y())) {
      link(lead.x(), lead.y());
    } else {
      over(lead.x(), lead.y(), depth - TOUCH_MM);
      moves.line(lead.x(), lead.y(), depth, tool.plungeMmPerMin());
      down = true;
    }
    double[][] points = lead.points(x, y);
    int count = 0;
    double length = 0;
    for (int i = points.length - 1; i > 0; i--) {
      double[] a = points[i];
      double[] b = points[i - 1];
      count += stock.cut(a[0], a[1], b[0], b[1], radius, depth);
      length += Math.hypot(b[0] - a[0], b[1] - a[1]);
    }
    double feed = tool.feedMmPerMin() * feeds.share(feeds.widthMm(count, length));
    moves.arc(lead.clockwise(), x, y, depth, lead.centreX(), lead.centreY(), feed);
    return true;
  }

  private Piece ramp(Piece piece, double fromDepth) {
    List<double[]> points =
        piece.closed()
            ? RampEntry.around(piece, fromDepth, depth, options.rampDegrees())
            : RampEntry.toAndFro(
                piece, fromDepth, depth, options.rampDegrees(), 4 * tool.diameterMm());
    double x = moves.x;
    double y = moves.y;
    for (double[] point : points) {
      double deep = (point[2] - fromDepth) / Math.min(tool.stepdownMm(), depth - fromDepth + 1e-9);
      moves.line(
          point[0],
          point[1],
          point[2],
          tool.feedMmPerMin() * feeds.share(tool.diameterMm() * deep));
      if (deep > 0.5) {
        stock.cut(x, y, point[0], point[1], radius, depth);
        stock.cutDisk(point[0], point[1], radius, depth);
      }
      x = point[0];
      y = point[1];
    }
    if (!piece.closed()) {
      return piece;
    }
    // The floor under the ramp is still sloped: the round begins at the ramp's end and covers it.
    int next = points.size() % piece.size();
    return insert(piece.startingAfter(next, 0), moves.x, moves.y);
  }

  /** A closed piece with one more point at its front. */
  private static Piece insert(Piece piece, double x, double y) {
    int n = piece.size();
    double[] px = new double[n + 1];
    double[] py = new double[n + 1];
    px[0] = x;
    py[0] = y;
    System.arraycopy(piece.x(), 0, px, 1, n);
    System.arraycopy(piece.y(), 0, py, 1, n);
    return new Piece(piece.index(), true, px, py);
  }

  private double highest(Piece piece) {
    double least = Double.POSITIVE_INFINITY;
    double so = 0;
    double most = 4 * tool.diameterMm();
    int n = piece.size();
    for (int i = 1; i < n + (piece.closed() ? 1 : 0); i++) {
      if (!piece.closed() && so > most) {
        break;
      }
      double bx = piece.x()[i % n];
      double by = piece.y()[i % n];
      least = Math.min(least, way.highestInside(piece.x()[i - 1], piece.y()[i - 1], bx, by));
      so += Math.hypot(bx - piece.x()[i - 1], by - piece.y()[i - 1]);
    }
    return least;
  }

  /** Straight to a place at depth, at the feed that what stands in between allows. */
  private void link(double x, double y) {
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
  private void over(double x, double y, double toDepth) {
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

  private void lift(double toDepth) {
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
  private void leaveWall() {
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

  private void follow(Piece piece) {
    Ring ring = new Ring(piece.index(), piece.closed(), piece.x(), piece.y());
    Chunks chunks = Chunks.of(ring, Math.max(6 * stock.lattice.stepMm(), Math.min(1, radius / 3)));
    double[] shares = feeds.cut(chunks, depth);
    MoveList path = new MoveList(moves.x, moves.y, depth);
    for (int c = 0; c < chunks.count(); c++) {
      double feed = tool.feedMmPerMin() * shares[c];
      boolean changes = c + 1 < chunks.count() && shares[c + 1] != shares[c];
      for (int i = chunks.start(c) + 1; i <= chunks.start(c + 1); i++) {
        boolean end = i == chunks.start(c + 1) && (changes || c + 1 == chunks.count());
        if (end || chunks.own(i)) {
          path.line(chunks.x(i), chunks.y(i), depth, feed);
        }
      }
    }
    double left = piece.wall() && !options.climb() ? WALL_SIDE_MM : ArcFitter.TOLERANCE_MM;
    double right = piece.wall() && options.climb() ? WALL_SIDE_MM : ArcFitter.TOLERANCE_MM;
    moves.addAll(ArcFitter.fit(moves.x, moves.y, depth, path.moves(), left, right));
    int n = piece.size();
    int before = piece.closed() ? n - 1 : n - 2;
    int last = piece.closed() ? 0 : n - 1;
    double d = Math.hypot(piece.x()[last] - piece.x()[before], piece.y()[last] - piece.y()[before]);
    headingX = (piece.x()[last] - piece.x()[before]) / d;
    headingY = (piece.y()[last] - piece.y()[before]) / d;
  }
}
