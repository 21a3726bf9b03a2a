package plyscape.toolpath.motion;

import plyscape.toolpath.ring.Piece;

/** Goes over from one piece to a near one without a stop, by two arcs that are tangent to both. */
final class PieceGlide {

  /** Ways ahead, in stepovers, at which a neighbouring closed ring is met. */
  static final double[] LEADS = {2, 1.4, 0.8};

  /** A way longer by this is as dear as the two stops it saves, mm. */
  private static final double STOP_WORTH_MM = 6;

  /** Tighter bows aren't cut, mm. */
  private static final double LEAST_RADIUS_MM = 0.25;

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
        : glide(piece, piece.startingNear(head.x(), head.y()));
  }

  private Piece glide(Piece piece, Piece from) {
    double gap = Math.hypot(from.x()[0] - head.x(), from.y()[0] - head.y());
    if (gap > 4 * head.tool().stepoverMm()) {
      return null;
    }
    double length = piece.lengthMm();
    for (double lead : LEADS) {
      double ahead = lead * head.tool().stepoverMm();
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
    Heading from = head.heading();
    Heading to = Heading.ofStart(piece);
    if (from == null || to == null) {
      return false;
    }
    double gap = Math.hypot(to.x() - head.x(), to.y() - head.y());
    if (gap < 0.05 || gap > 5 * head.tool().stepoverMm()) {
      return false;
    }
    Biarc biarc = Biarc.between(from, to);
    if (biarc == null
        || biarc.radiusMm() < LEAST_RADIUS_MM
        || biarc.lengthMm() > gap + STOP_WORTH_MM) {
      return false;
    }
    double[][] points = head.way().along(biarc, head.x(), head.y());
    if (!head.way().free(points) || !head.mayCut(points)) {
      return false;
    }
    head.glide(biarc);
    return true;
  }
}
