package plyscape.bend;

import java.util.ArrayList;
import java.util.List;
import plyscape.machine.ArcGeometry;
import plyscape.machine.Move;

/**
 * Bends moves of the flat plan: each is split where a straight change of Z along it would leave the
 * bent depth by more than 0.0035 mm (what is left to 0.005 is for rounding); arcs stay arcs. Moves
 * at safe height stay there, and between safe height and just over the panel the bend fades in.
 * Immutable.
 */
public final class BentMoves {

  private static final double TOLERANCE_MM = 0.0035;

  /** The face is looked at in steps no longer than this, mm. */
  private static final double STEP_MM = 0.5;

  /** Pieces of the face that one step is taken to cross at most. */
  private static final int MOST_KINKS = 16;

  /** Up to this height over the panel moves follow the bend, mm. */
  private static final double NEAR_MM = 1;

  private final Bend bend;
  private final double safeMm;
  private final double nearMm;

  /**
   * For moves whose safe height is given.
   *
   * @param safeMm height over the flat panel, above the highest place of the bent one
   */
  public BentMoves(Bend bend, double safeMm) {
    this.bend = bend;
    this.safeMm = safeMm;
    this.nearMm = Math.min(NEAR_MM, safeMm / 2);
  }

  /** The moves bent, the first from a place and depth of the flat plan. */
  public List<Move> of(double fromX, double fromY, double fromDepth, List<Move> moves) {
    List<Move> out = new ArrayList<>(moves.size());
    double x = fromX;
    double y = fromY;
    double depth = fromDepth;
    for (Move move : moves) {
      bend(new MovePath(x, y, depth, move), out);
      x = move.x();
      y = move.y();
      depth = move.depth();
    }
    return out;
  }

  /** Depth below the flat panel's top face at which a point of a flat move is cut. */
  double belowMm(double x, double y, double flat) {
    if (flat >= -nearMm) {
      return bend.belowMm(x, y, flat);
    }
    double share = Math.max(0, Math.min(1, (safeMm + flat) / (safeMm - nearMm)));
    return flat - share * bend.top().heightMm(x, y);
  }

  private void bend(MovePath path, List<Move> out) {
    double[] stops = stops(path);
    double[] below = new double[stops.length];
    for (int i = 0; i < stops.length; i++) {
      double t = stops[i];
      below[i] = belowMm(path.x(t), path.y(t), path.depth(t));
    }
    split(path, stops, below, 0, stops.length - 1, out);
  }

  private void split(
      MovePath path, double[] stops, double[] below, int from, int to, List<Move> out) {
    int worst = -1;
    double most = TOLERANCE_MM;
    for (int i = from + 1; i < to; i++) {
      double share = (stops[i] - stops[from]) / (stops[to] - stops[from]);
      double off = Math.abs(below[from] + share * (below[to] - below[from]) - below[i]);
      if (off > most) {
        most = off;
        worst = i;
      }
    }
    if (worst < 0) {
      out.add(path.to(stops[to], below[to]));
      return;
    }
    split(path, stops, below, from, worst, out);
    split(path, stops, below, worst, to, out);
  }

  /** Shares of the way at which the bent depth is looked at, both ends and all kinks in it. */
  private double[] stops(MovePath path) {
    if (path.lengthMm() == 0) {
      return new double[] {0, 1};
    }
    int steps = Math.max(2, (int) Math.ceil(path.lengthMm() / STEP_MM));
    List<Double> stops = new ArrayList<>();
    stops.add(0.0);
    int piece = piece(path, 0);
    for (int i = 1; i <= steps; i++) {
      double t = (double) i / steps;
      int next = piece(path, t);
      for (int k = 0; piece != next && k < MOST_KINKS; k++) {
        double last = stops.get(stops.size() - 1);
        double kink = kink(path, last, t, piece);
        if (kink > last && kink < t) {
          stops.add(kink);
        }
        piece = piece(path, kink);
      }
      stops.add(t);
      piece = next;
    }
    return stops.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private double kink(MovePath path, double from, double to, int piece) {
    double low = from;
    double high = to;
    for (int i = 0; i < 30; i++) {
      double mid = (low + high) / 2;
      if (piece(path, mid) == piece) {
        low = mid;
      } else {
        high = mid;
      }
    }
    return high;
  }

  private int piece(MovePath path, double t) {
    return bend.top().piece(path.x(t), path.y(t));
  }

  /** A move as a way that is gone from 0 to 1. */
  private static final class MovePath {

    private final double fromX;
    private final double fromY;
    private final double fromDepth;
    private final Move move;
    private final ArcGeometry arc;

    MovePath(double fromX, double fromY, double fromDepth, Move move) {
      this.fromX = fromX;
      this.fromY = fromY;
      this.fromDepth = fromDepth;
      this.move = move;
      this.arc = move.isArc() ? ArcGeometry.of(fromX, fromY, 0, move) : null;
    }

    /** Length seen from above. */
    double lengthMm() {
      return arc == null
          ? Math.hypot(move.x() - fromX, move.y() - fromY)
          : Math.abs(arc.radius() * arc.sweep());
    }

    double x(double t) {
      if (t == 1) {
        return move.x();
      }
      return arc == null
          ? fromX + t * (move.x() - fromX)
          : move.centreX() + arc.radius() * Math.cos(arc.startAngle() + t * arc.sweep());
    }

    double y(double t) {
      if (t == 1) {
        return move.y();
      }
      return arc == null
          ? fromY + t * (move.y() - fromY)
          : move.centreY() + arc.radius() * Math.sin(arc.startAngle() + t * arc.sweep());
    }

    double depth(double t) {
      return fromDepth + t * (move.depth() - fromDepth);
    }

    Move to(double t, double below) {
      return new Move(
          move.kind(), x(t), y(t), below, move.centreX(), move.centreY(), move.feedMmPerMin());
    }
  }
}
