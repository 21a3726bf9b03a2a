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
    Piece near = piece.startingNear(head.x(), head.y());
    if (head.level() && head.staysDown(near.x()[0], near.y()[0])) {
      return near;
    }
    int step = Math.max(1, piece.size() / 48);
    int best = -1;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < piece.size(); i += step) {
      double d = Math.hypot(piece.x()[i] - head.x(), piece.y()[i] - head.y());
      if (d < least && head.way().clearSpot(piece.x()[i], piece.y()[i]) != null) {
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
    double[] spot = head.way().farClearSpot(x, y);
    if (spot != null && head.mayCut(spot[0], spot[1], x, y)) {
      head.touchDown(spot[0], spot[1]);
      head.link(x, y);
      return piece;
    }
    return intoWood(piece);
  }

  /** Goes over to a place, or to open ground beside it, and down to a depth. */
  void down(double x, double y, double depth) {
    if (head.level() && head.staysDown(x, y)) {
      head.link(x, y);
      // Lines are thinned from the first place on: the cutter must be as high as that.
      head.sink(x, y, depth);
      return;
    }
    land(x, y, depth);
  }

  /** Goes over to a place by rapids, or to open ground beside it, and down to a depth. */
  void land(double x, double y, double depth) {
    double[] near = head.way().clearSpot(x, y, depth);
    double[] spot = near != null && head.mayCut(near[0], near[1], x, y, depth) ? near : null;
    double downX = spot == null ? x : spot[0];
    double downY = spot == null ? y : spot[1];
    head.over(downX, downY, head.above(depth));
    head.sink(downX, downY, depth);
    if (spot != null) {
      // The first way goes on from here: begun at the spot it would leave wood at the start.
      head.along(List.of(new double[] {x, y, depth, head.tool().feedMmPerMin()}));
    }
  }

  private Piece intoWood(Piece piece) {
    double x = piece.x()[0];
    double y = piece.y()[0];
    double highest = highest(piece);
    double above = head.above(highest);
    double[] roomy = head.way().roomySpot(x, y);
    if (roomy != null && head.maySink(roomy[0], roomy[1], above)) {
      head.over(roomy[0], roomy[1], above);
      head.sink(roomy[0], roomy[1], above);
    } else {
      head.over(x, y, -CutterHead.FACE_MM);
      head.sink(x, y, above);
    }
    head.sink(x, y, highest);
    if (piece.lengthMm() < leastRoomMm()) {
      head.bore();
      return piece;
    }
    return ramp(piece, highest);
  }

  /** A tangent arc from cleared ground onto a piece along a wall, or null. */
  WallLead leadOnto(Piece piece) {
    Heading start = piece.wall() ? Heading.ofStart(piece) : null;
    if (start == null || piece.lengthMm() < RampEntry.LEAST_ROOM_MM) {
      return null;
    }
    Clearway way = head.way();
    WallLead lead =
        WallLead.on(
            head.leads(way, piece),
            start,
            (openX, openY) ->
                way.clear(openX, openY)
                    || head.level() && way.room(openX, openY) >= 0 && head.staysDown(openX, openY));
    return lead == null || head.mayCut(lead.points(start.x(), start.y())) ? lead : null;
  }

  /** Goes onto a piece along a wall by a tangent arc; whether there was room. */
  private boolean onto(Piece piece) {
    WallLead lead = leadOnto(piece);
    if (lead == null) {
      return false;
    }
    if (head.level() && head.staysDown(lead.x(), lead.y())) {
      head.link(lead.x(), lead.y());
    } else {
      head.touchDown(lead.x(), lead.y());
    }
    head.swingOn(lead, piece.x()[0], piece.y()[0]);
    return true;
  }

  private Piece ramp(Piece piece, double fromDepth) {
    double degrees = head.options().rampDegrees();
    List<double[]> points =
        piece.closed()
            ? RampEntry.around(piece, fromDepth, head.floor(), degrees)
            : RampEntry.toAndFro(piece, fromDepth, head.floor(), degrees, reachMm());
    head.ramp(points);
    if (!piece.closed()) {
      return piece;
    }
    // The floor under the ramp is still sloped: the round begins at the ramp's end and covers it.
    int next = points.size() % piece.size();
    return insert(piece.startingAfter(next, 0), head.x(), head.y());
  }

  /**
   * A piece shorter than this is no room for a ramp, mm: the middle of the cutter would stay over
   * wood all the way down, as it does going straight.
   */
  private double leastRoomMm() {
    return Math.max(RampEntry.LEAST_ROOM_MM, head.tool().diameterMm());
  }

  /** How far along an open piece a ramp goes to and fro, mm. */
  private double reachMm() {
    return 4 * head.tool().diameterMm();
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

  /** Depth of the highest wood under what a ramp into a piece may cover, mm. */
  private double highest(Piece piece) {
    double least = Double.POSITIVE_INFINITY;
    double so = 0;
    double most = piece.closed() ? Double.POSITIVE_INFINITY : reachMm();
    int n = piece.size();
    for (int i = 1; i < n + (piece.closed() ? 1 : 0) && so <= most; i++) {
      double ax = piece.x()[i - 1];
      double ay = piece.y()[i - 1];
      double bx = piece.x()[i % n];
      double by = piece.y()[i % n];
      least = Math.min(least, head.way().highestInside(ax, ay, bx, by));
      so += Math.hypot(bx - ax, by - ay);
    }
    return least;
  }
}
