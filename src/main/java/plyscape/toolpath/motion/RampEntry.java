package plyscape.toolpath.motion;

import java.util.ArrayList;
import java.util.List;
import plyscape.toolpath.ring.Piece;

/**
 * Ways down into standing wood along a piece, no steeper than an angle: points (x, y, depth), panel
 * mm. A closed piece is followed round and round; an open one to and fro, so that the way ends
 * where it began.
 */
final class RampEntry {

  /** A piece shorter than this is no room for a ramp, mm. */
  static final double LEAST_ROOM_MM = 1.0;

  /** Places are written to this, mm; lengths and drops may come out so much otherwise. */
  private static final double PLACE_MM = 0.001;

  private RampEntry() {}

  /**
   * The feed at which a cutter goes down no faster than its plunge, mm/min, whatever rounding makes
   * of the ends.
   *
   * @param from where it is
   * @param to X, Y and depth that it goes to
   */
  static double mostFeed(MoveList from, double[] to, double plungeMmPerMin) {
    double drop = to[2] - from.depth + PLACE_MM;
    double along = Math.hypot(to[0] - from.x, to[1] - from.y) - PLACE_MM * Math.sqrt(2);
    double most = plungeMmPerMin * Math.hypot(Math.max(0, along), drop) / drop;
    return drop <= PLACE_MM ? Double.POSITIVE_INFINITY : Math.max(1, Math.floor(most));
  }

  /** Along a closed piece from its first point; ends somewhere on it. */
  static List<double[]> around(Piece piece, double fromDepth, double toDepth, double degrees) {
    double slope = Math.tan(Math.toRadians(degrees));
    List<double[]> points = new ArrayList<>();
    double depth = fromDepth;
    int n = piece.size();
    for (int i = 0; depth < toDepth; i++) {
      int a = i % n;
      int b = (i + 1) % n;
      double d = Math.hypot(piece.x()[b] - piece.x()[a], piece.y()[b] - piece.y()[a]);
      double next = depth + d * slope;
      if (next >= toDepth) {
        double t = (toDepth - depth) / (next - depth);
        points.add(
            new double[] {
              piece.x()[a] + t * (piece.x()[b] - piece.x()[a]),
              piece.y()[a] + t * (piece.y()[b] - piece.y()[a]),
              toDepth
            });
        return points;
      }
      points.add(new double[] {piece.x()[b], piece.y()[b], next});
      depth = next;
    }
    return points;
  }

  /** To and fro along the beginning of an open piece; ends at its first point. */
  static List<double[]> toAndFro(
      Piece piece, double fromDepth, double toDepth, double degrees, double stretchMm) {
    double slope = Math.tan(Math.toRadians(degrees));
    double need = (toDepth - fromDepth) / slope;
    List<double[]> out = beginning(piece, Math.max(LEAST_ROOM_MM, Math.min(stretchMm, need / 2)));
    double length = out.get(out.size() - 1)[2];
    int turns = 2 * (int) Math.max(1, Math.ceil(need / (2 * length)));
    double drop = (toDepth - fromDepth) / (turns * length);
    List<double[]> points = new ArrayList<>();
    for (int turn = 0; turn < turns; turn++) {
      double start = fromDepth + turn * length * drop;
      if (turn % 2 == 0) {
        for (int i = 1; i < out.size(); i++) {
          points.add(new double[] {out.get(i)[0], out.get(i)[1], start + out.get(i)[2] * drop});
        }
      } else {
        for (int i = out.size() - 2; i >= 0; i--) {
          points.add(
              new double[] {out.get(i)[0], out.get(i)[1], start + (length - out.get(i)[2]) * drop});
        }
      }
    }
    points.get(points.size() - 1)[2] = toDepth;
    return points;
  }

  /** The first part of a piece: points (x, y, way so far). */
  private static List<double[]> beginning(Piece piece, double lengthMm) {
    List<double[]> points = new ArrayList<>();
    points.add(new double[] {piece.x()[0], piece.y()[0], 0});
    double way = 0;
    for (int i = 1; i < piece.size(); i++) {
      double d = Math.hypot(piece.x()[i] - piece.x()[i - 1], piece.y()[i] - piece.y()[i - 1]);
      if (way + d >= lengthMm) {
        double t = (lengthMm - way) / d;
        points.add(
            new double[] {
              piece.x()[i - 1] + t * (piece.x()[i] - piece.x()[i - 1]),
              piece.y()[i - 1] + t * (piece.y()[i] - piece.y()[i - 1]),
              lengthMm
            });
        return points;
      }
      way += d;
      points.add(new double[] {piece.x()[i], piece.y()[i], way});
    }
    return points;
  }
}
