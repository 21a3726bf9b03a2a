package plyscape.toolpath.motion;

import java.util.List;
import plyscape.toolpath.ring.Piece;

/**
 * Brings a cutter to a piece and down to its depth: at depth over cleared ground, by an arc onto a
 * wall, down onto a cleared floor, or by a ramp into standing wood.
 */
final class PieceEntry {

  private final CutterHead head;

  PieceEntry(CutterHead head) {
    this.head = head;
  }

  /** A closed piece from where it is best begun: near, on cleared ground, along the grain. */
  Piece started(Piece piece, Piece along) {
    if (piece.wall() && leadOnto(along) != null) {
      return along;
    }
    Piece near = piece.startingNear(head.moves.x, head.moves.y);
    if (head.level() && head.staysDown(near.x()[0], near.y()[0])) {
      return near;
    }
    int step = Math.max(1, piece.size() / 48);
    int best = -1;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < piece.size(); i += step) {
      double d = Math.hypot(piece.x()[i] - head.moves.x, piece.y()[i] - head.moves.y);
      if (d < least && head.way.clearSpot(piece.x()[i], piece.y()[i]) != null) {
        least = d;
        best = i;
      }
    }
    return best < 0 ? along : piece.startingAfter(best, 0);
  }

  /**
   * Goes to the start of a piece and down to the depth; what is then to be cut (a closed piece may
   * start elsewhere).
   */
  Piece enter(Piece piece) {
    double x = piece.x()[0];
    double y = piece.y()[0];
    if (onto(piece)) {
      return piece;
    }
    if (head.level() && head.staysDown(x, y)) {
      head.link(x, y);
      return piece;
    }
    double[] spot = head.way.clearSpot(x, y);
    if (spot != null) {
      head.over(spot[0], spot[1], head.depth - CutterHead.TOUCH_MM);
      head.moves.line(spot[0], spot[1], head.depth, head.tool.plungeMmPerMin());
      head.down = true;
      head.link(x, y);
      return piece;
    }
    double length = piece.lengthMm();
    double highest = highest(piece);
    double[] roomy = head.way.roomySpot(x, y);
    if (roomy != null) {
      head.over(roomy[0], roomy[1], highest - CutterHead.TOUCH_MM);
    } else {
      head.over(x, y, -CutterHead.TOUCH_MM);
      head.moves.line(x, y, highest - CutterHead.TOUCH_MM, head.tool.plungeMmPerMin());
    }
    if (roomy != null) {
      head.moves.line(
          roomy[0], roomy[1], highest - CutterHead.TOUCH_MM, head.tool.plungeMmPerMin());
    }
    head.moves.line(x, y, highest, head.tool.plungeMmPerMin());
    head.down = true;
    if (length < RampEntry.LEAST_ROOM_MM) {
      head.moves.line(x, y, head.depth, head.tool.plungeMmPerMin());
      head.stock.cutDisk(x, y, head.radius, head.depth);
      return piece;
    }
    return ramp(piece, highest);
  }

  /** A tangent arc from cleared ground onto a piece along a wall, or null. */
  WallLead leadOnto(Piece piece) {
    double x = piece.x()[0];
    double y = piece.y()[0];
    double ahead = Math.hypot(piece.x()[1] - x, piece.y()[1] - y);
    if (!piece.wall() || piece.lengthMm() < RampEntry.LEAST_ROOM_MM || ahead < 1e-6) {
      return null;
    }
    return WallLead.on(
        head.way,
        (openX, openY) ->
            head.way.clear(openX, openY)
                || head.level() && head.way.room(openX, openY) >= 0 && head.staysDown(openX, openY),
        head.options.climb(),
        head.tool.stepoverMm(),
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
    if (head.level() && head.staysDown(lead.x(), lead.y())) {
      head.link(lead.x(), lead.y());
    } else {
      head.over(lead.x(), lead.y(), head.depth - CutterHead.TOUCH_MM);
      head.moves.line(lead.x(), lead.y(), head.depth, head.tool.plungeMmPerMin());
      head.down = true;
    }
    double[][] points = lead.points(x, y);
    int count = 0;
    double length = 0;
    for (int i = points.length - 1; i > 0; i--) {
      double[] a = points[i];
      double[] b = points[i - 1];
      count += head.stock.cut(a[0], a[1], b[0], b[1], head.radius, head.depth);
      length += Math.hypot(b[0] - a[0], b[1] - a[1]);
    }
    double feed = head.tool.feedMmPerMin() * head.feeds.share(head.feeds.widthMm(count, length));
    head.moves.arc(lead.clockwise(), x, y, head.depth, lead.centreX(), lead.centreY(), feed);
    return true;
  }

  private Piece ramp(Piece piece, double fromDepth) {
    List<double[]> points =
        piece.closed()
            ? RampEntry.around(piece, fromDepth, head.depth, head.options.rampDegrees())
            : RampEntry.toAndFro(
                piece,
                fromDepth,
                head.depth,
                head.options.rampDegrees(),
                4 * head.tool.diameterMm());
    double x = head.moves.x;
    double y = head.moves.y;
    for (double[] point : points) {
      double deep =
          (point[2] - fromDepth) / Math.min(head.tool.stepdownMm(), head.depth - fromDepth + 1e-9);
      head.moves.line(
          point[0],
          point[1],
          point[2],
          head.tool.feedMmPerMin() * head.feeds.share(head.tool.diameterMm() * deep));
      if (deep > 0.5) {
        head.stock.cut(x, y, point[0], point[1], head.radius, head.depth);
        head.stock.cutDisk(point[0], point[1], head.radius, head.depth);
      }
      x = point[0];
      y = point[1];
    }
    if (!piece.closed()) {
      return piece;
    }
    // The floor under the ramp is still sloped: the round begins at the ramp's end and covers it.
    int next = points.size() % piece.size();
    return insert(piece.startingAfter(next, 0), head.moves.x, head.moves.y);
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
    double most = 4 * head.tool.diameterMm();
    int n = piece.size();
    for (int i = 1; i < n + (piece.closed() ? 1 : 0); i++) {
      if (!piece.closed() && so > most) {
        break;
      }
      double bx = piece.x()[i % n];
      double by = piece.y()[i % n];
      least = Math.min(least, head.way.highestInside(piece.x()[i - 1], piece.y()[i - 1], bx, by));
      so += Math.hypot(bx - piece.x()[i - 1], by - piece.y()[i - 1]);
    }
    return least;
  }
}
