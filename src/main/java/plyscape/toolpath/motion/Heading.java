package plyscape.toolpath.motion;

import plyscape.toolpath.ring.Piece;

/**
 * A place and a direction there, panel mm.
 *
 * @param x of the place
 * @param y the same
 * @param ux direction, of length 1
 * @param uy the same
 */
record Heading(double x, double y, double ux, double uy) {

  /** How a piece begins; null when its first two points are the same place. */
  static Heading ofStart(Piece piece) {
    return along(piece.x()[0], piece.y()[0], piece.x()[1], piece.y()[1], piece, 0);
  }

  /** How a piece ends. */
  static Heading ofEnd(Piece piece) {
    int n = piece.size();
    int before = piece.closed() ? n - 1 : n - 2;
    int last = piece.closed() ? 0 : n - 1;
    return along(
        piece.x()[before], piece.y()[before], piece.x()[last], piece.y()[last], piece, last);
  }

  private static Heading along(double ax, double ay, double bx, double by, Piece piece, int at) {
    double d = Math.hypot(bx - ax, by - ay);
    return d < 1e-6
        ? null
        : new Heading(piece.x()[at], piece.y()[at], (bx - ax) / d, (by - ay) / d);
  }
}
