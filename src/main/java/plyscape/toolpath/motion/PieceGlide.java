package plyscape.toolpath.motion;

import plyscape.toolpath.ring.Piece;

/** Goes over from one piece to a near one without a stop, by two arcs that are tangent to both. */
final class PieceGlide {

  /** Ways ahead, in stepovers, at which a neighbouring closed ring is met. */
  static final double[] LEADS = {2, 1.4, 0.8};

  /** A way longer by this is as dear as the two stops it saves, mm. */
  private static final double STOP_WORTH_MM = 6;

  private final CutterHead head;
  private final PieceEntry entry;

  /**
   * @param entry what does it where there is no room to glide
   */
  PieceGlide(CutterHead head, PieceEntry entry) {
    this.head = head;
    this.entry = entry;
  }

  /**
   * Goes over to a near piece without a stop, if there is room; the piece from where it was met, or
   * null.
   */
  Piece onto(Piece piece, Piece along) {
    if (!piece.closed()) {
      return glideTo(piece) ? piece : null;
    }
    Piece met = glide(piece, along);
    return met != null || entry.leadOnto(along) != null
        ? met
        : glide(piece, piece.startingNear(head.moves.x, head.moves.y));
  }

  private Piece glide(Piece piece, Piece from) {
    double gap = Math.hypot(from.x()[0] - head.moves.x, from.y()[0] - head.moves.y);
    if (gap > 4 * head.tool.stepoverMm()) {
      return null;
    }
    double length = piece.lengthMm();
    for (double lead : LEADS) {
      double ahead = lead * head.tool.stepoverMm();
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
    double gap = Math.hypot(bx - head.moves.x, by - head.moves.y);
    double ahead = Math.hypot(piece.x()[1] - bx, piece.y()[1] - by);
    if (gap < 0.05
        || gap > 5 * head.tool.stepoverMm()
        || ahead < 1e-6
        || Double.isNaN(head.headingX)) {
      return false;
    }
    Biarc biarc =
        Biarc.between(
            head.moves.x,
            head.moves.y,
            head.headingX,
            head.headingY,
            bx,
            by,
            (piece.x()[1] - bx) / ahead,
            (piece.y()[1] - by) / ahead);
    if (biarc == null || biarc.radiusMm() < 0.25 || biarc.lengthMm() > gap + STOP_WORTH_MM) {
      return false;
    }
    double[][] points = head.way.along(biarc, head.moves.x, head.moves.y, bx, by);
    if (!head.way.free(points)) {
      return false;
    }
    int count = 0;
    for (int i = 1; i < points.length; i++) {
      count +=
          head.stock.cut(
              points[i - 1][0],
              points[i - 1][1],
              points[i][0],
              points[i][1],
              head.radius,
              head.depth);
    }
    double feed =
        head.tool.feedMmPerMin() * head.feeds.share(head.feeds.widthMm(count, biarc.lengthMm()));
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
      head.moves.line(x, y, head.depth, feed);
    } else {
      head.moves.arc(clockwise, x, y, head.depth, cx, cy, feed);
    }
  }
}
