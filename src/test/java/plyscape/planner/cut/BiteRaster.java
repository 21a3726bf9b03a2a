package plyscape.planner.cut;

import java.util.function.DoubleBinaryOperator;
import plyscape.machine.Move;

/**
 * Wood as depths at cell centres, 0.1 mm apart: tells of each move of a flat-ended cutter where it
 * took how much in depth. Plain and slow on purpose; shares nothing with planner and simulator.
 */
public final class BiteRaster {

  static final double CELL_MM = 0.1;

  /** Ways are cut in steps no longer than this, each as deep as its deeper end. */
  private static final double STEP_MM = 1;

  private final int columns;
  private final int rows;
  private final double[] depthMm;
  private final double highestMm;
  private double x;
  private double y;
  private double z;

  public BiteRaster(double widthMm, double heightMm) {
    this(widthMm, heightMm, (placeX, placeY) -> 0);
  }

  /** Wood whose uncut face lies at these depths. */
  public BiteRaster(double widthMm, double heightMm, DoubleBinaryOperator face) {
    columns = (int) Math.round(widthMm / CELL_MM);
    rows = (int) Math.round(heightMm / CELL_MM);
    depthMm = new double[columns * rows];
    double highest = 0;
    for (int i = 0; i < depthMm.length; i++) {
      depthMm[i] = face.applyAsDouble((i % columns + 0.5) * CELL_MM, (i / columns + 0.5) * CELL_MM);
      highest = Math.min(highest, depthMm[i]);
    }
    highestMm = highest;
  }

  /** The cutter stands here. */
  public void start(double startX, double startY, double depth) {
    x = startX;
    y = startY;
    z = depth;
  }

  /** How deep it is cut at a place, mm. */
  public double depthAt(double placeX, double placeY) {
    return depthMm[(int) (placeY / CELL_MM) * columns + (int) (placeX / CELL_MM)];
  }

  /** Cuts a move; gives the area, mm2, where it took more than this in depth. */
  public double cut(Move move, double radiusMm, double mostMm) {
    double fromX = x;
    double fromY = y;
    double fromZ = z;
    double turn = move.isArc() ? turn(move) : 0;
    double radius = Math.hypot(fromX - move.centreX(), fromY - move.centreY());
    double start = Math.atan2(fromY - move.centreY(), fromX - move.centreX());
    double length =
        move.isArc() ? Math.abs(turn) * radius : Math.hypot(move.x() - fromX, move.y() - fromY);
    int steps = (int) Math.max(1, Math.ceil(Math.max(length / STEP_MM, Math.abs(turn) / 0.1)));
    int cells = 0;
    for (int i = 1; i <= steps; i++) {
      double t = (double) i / steps;
      double toX = fromX + t * (move.x() - fromX);
      double toY = fromY + t * (move.y() - fromY);
      if (move.isArc() && i < steps) {
        toX = move.centreX() + radius * Math.cos(start + t * turn);
        toY = move.centreY() + radius * Math.sin(start + t * turn);
      }
      cells += step(toX, toY, fromZ + t * (move.depth() - fromZ), radiusMm, mostMm);
    }
    return cells * CELL_MM * CELL_MM;
  }

  /** How far an arc turns, counterclockwise positive; whole when it ends where it began. */
  private double turn(Move move) {
    double from = Math.atan2(y - move.centreY(), x - move.centreX());
    double to = Math.atan2(move.y() - move.centreY(), move.x() - move.centreX());
    boolean left = move.kind() == Move.Kind.COUNTERCLOCKWISE;
    double turn = left ? to - from : from - to;
    turn += turn <= 1e-9 ? 2 * Math.PI : 0;
    return left ? turn : -turn;
  }

  private int step(double toX, double toY, double toZ, double radiusMm, double mostMm) {
    double deepest = Math.max(z, toZ);
    int over = 0;
    double dx = toX - x;
    double dy = toY - y;
    double length2 = dx * dx + dy * dy;
    int west = (int) Math.max(0, (Math.min(x, toX) - radiusMm) / CELL_MM);
    int east = (int) Math.min(columns - 1, (Math.max(x, toX) + radiusMm) / CELL_MM);
    int south = (int) Math.max(0, (Math.min(y, toY) - radiusMm) / CELL_MM);
    int north = (int) Math.min(rows - 1, (Math.max(y, toY) + radiusMm) / CELL_MM);
    for (int row = south; deepest > highestMm && row <= north; row++) {
      for (int column = west; column <= east; column++) {
        double px = (column + 0.5) * CELL_MM - x;
        double py = (row + 0.5) * CELL_MM - y;
        double t = length2 == 0 ? 0 : Math.max(0, Math.min(1, (px * dx + py * dy) / length2));
        double acrossX = px - t * dx;
        double acrossY = py - t * dy;
        int cell = row * columns + column;
        if (acrossX * acrossX + acrossY * acrossY <= radiusMm * radiusMm
            && deepest > depthMm[cell]) {
          over += deepest - depthMm[cell] > mostMm ? 1 : 0;
          depthMm[cell] = deepest;
        }
      }
    }
    x = toX;
    y = toY;
    z = toZ;
    return over;
  }
}
