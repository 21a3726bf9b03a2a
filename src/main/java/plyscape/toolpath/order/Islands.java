package plyscape.toolpath.order;

import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.ring.Piece;

/**
 * Tells small islands: wood that stands alone inside a pocket and is best held by what is around it
 * for long.
 */
final class Islands {

  /** Islands of less than so many squares of the cutter's diameter are small. */
  private static final double SMALL_SQUARES = 2;

  /** How far off the ring its two sides are compared, mm. */
  private static final double ASIDE_MM = 0.3;

  private Islands() {}

  /**
   * Whether a piece is a whole ring along the wall of a small island.
   *
   * @param field distances from the walls of the pocket
   */
  static boolean small(Piece piece, DistanceField field, double diameterMm) {
    if (!piece.wall() || !piece.closed() || piece.size() < 3) {
      return false;
    }
    double area = signedAreaMm2(piece);
    double radius = diameterMm / 2;
    // The cutter's centre goes round at its radius: of the area inside, a band of that width is no
    // wood.
    double wood = Math.abs(area) - piece.lengthMm() * radius + Math.PI * radius * radius;
    return wood < SMALL_SQUARES * diameterMm * diameterMm && woodInside(piece, field, area > 0);
  }

  private static boolean woodInside(Piece piece, DistanceField field, boolean counterClockwise) {
    int a = longest(piece);
    int b = (a + 1) % piece.size();
    double ax = piece.x()[a];
    double ay = piece.y()[a];
    double dx = piece.x()[b] - ax;
    double dy = piece.y()[b] - ay;
    double length = Math.max(1e-9, Math.hypot(dx, dy));
    double side = (counterClockwise ? ASIDE_MM : -ASIDE_MM) / length;
    double mx = ax + dx / 2;
    double my = ay + dy / 2;
    return field.at(mx - dy * side, my + dx * side) < field.at(mx + dy * side, my - dx * side);
  }

  /** First point of the longest line: beside it the two sides differ most clearly. */
  private static int longest(Piece piece) {
    int longest = 0;
    double most = -1;
    for (int i = 0; i < piece.size(); i++) {
      int j = (i + 1) % piece.size();
      double d = Math.hypot(piece.x()[j] - piece.x()[i], piece.y()[j] - piece.y()[i]);
      if (d > most) {
        most = d;
        longest = i;
      }
    }
    return longest;
  }

  private static double signedAreaMm2(Piece piece) {
    double twice = 0;
    int n = piece.size();
    for (int i = 0; i < n; i++) {
      int j = (i + 1) % n;
      twice += piece.x()[i] * piece.y()[j] - piece.x()[j] * piece.y()[i];
    }
    return twice / 2;
  }
}
