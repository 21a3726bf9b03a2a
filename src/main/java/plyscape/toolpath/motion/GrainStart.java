package plyscape.toolpath.motion;

import plyscape.toolpath.ring.Piece;

/**
 * Where a closed ring is begun and ended: on a stretch that runs along the ply's grain, if one is
 * near, because the mark of a start shows most, and fibres lift most easily, where a wall crosses
 * the grain (common practice). Rings inside the wall are begun there too, so that the next one out
 * finds its place beside it.
 */
final class GrainStart {

  /** Stretches within this of the grain run along it. */
  private static final double ALONG = Math.cos(Math.toRadians(30));

  /** A start along the grain may be farther away than the nearest one by this, mm. */
  private static final double DETOUR_MM = 10;

  private final double grainX;
  private final double grainY;
  private final double margin;

  /**
   * @param grainDegrees from X counterclockwise
   * @param marginMm kept from the ends of such stretches; shorter ones don't count
   */
  GrainStart(double grainDegrees, double marginMm) {
    grainX = Math.cos(Math.toRadians(grainDegrees));
    grainY = Math.sin(Math.toRadians(grainDegrees));
    margin = marginMm;
  }

  /**
   * A closed piece from its best start for a cutter at a place: along the grain, or the nearest
   * point where nothing along it is near.
   */
  Piece place(Piece piece, double x, double y) {
    int n = piece.size();
    boolean[] along = new boolean[n];
    int first = -1;
    for (int a = 0; a < n; a++) {
      double dx = piece.x()[(a + 1) % n] - piece.x()[a];
      double dy = piece.y()[(a + 1) % n] - piece.y()[a];
      along[a] = Math.abs(dx * grainX + dy * grainY) >= ALONG * Math.hypot(dx, dy);
      first = first < 0 && !along[a] ? a : first;
    }
    Piece nearest = piece.startingNear(x, y);
    double most = distance(nearest, 0, 0, x, y) + DETOUR_MM;
    int edge = -1;
    double way = 0;
    for (int s = 0; first >= 0 && s < n; s++) {
      int begin = (first + s) % n;
      double stretch = 0;
      int many = 0;
      while (s + many < n && along[(begin + many) % n]) {
        stretch += length(piece, (begin + many++) % n);
      }
      double so = 0;
      for (int e = 0; stretch > margin && e < many; e++) {
        int a = (begin + e) % n;
        double length = length(piece, a);
        double off = Math.min(margin, stretch / 2);
        double low = Math.max(0, off - so);
        double high = Math.min(length, stretch - off - so);
        if (length > 0 && low <= high) {
          double at = Math.max(low, Math.min(high, foot(piece, a, x, y)));
          double d = distance(piece, a, at / length, x, y);
          if (d < most) {
            most = d;
            edge = a;
            way = at;
          }
        }
        so += length;
      }
      s += Math.max(0, many - 1);
    }
    return edge < 0 ? nearest : piece.startingAfter(edge, way);
  }

  private static double length(Piece piece, int a) {
    int b = (a + 1) % piece.size();
    return Math.hypot(piece.x()[b] - piece.x()[a], piece.y()[b] - piece.y()[a]);
  }

  /** How far along an edge the point of its line nearest to a place lies, mm. */
  private static double foot(Piece piece, int a, double x, double y) {
    int b = (a + 1) % piece.size();
    double dx = piece.x()[b] - piece.x()[a];
    double dy = piece.y()[b] - piece.y()[a];
    return ((x - piece.x()[a]) * dx + (y - piece.y()[a]) * dy) / Math.hypot(dx, dy);
  }

  private static double distance(Piece piece, int a, double t, double x, double y) {
    int b = (a + 1) % piece.size();
    double px = piece.x()[a] + t * (piece.x()[b] - piece.x()[a]);
    double py = piece.y()[a] + t * (piece.y()[b] - piece.y()[a]);
    return Math.hypot(px - x, py - y);
  }
}
