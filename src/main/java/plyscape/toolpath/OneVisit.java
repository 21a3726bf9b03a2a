package plyscape.toolpath;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import plyscape.toolpath.cover.StepWork;
import plyscape.toolpath.ring.Piece;

/**
 * Leaves out pieces along walls that lie over a piece of a deeper step and are about as long: that
 * one takes all that stands under it in one visit, which spares the way there and coming down.
 */
final class OneVisit {

  /** Pieces this near to each other lie one over the other, mm. */
  private static final double SAME_MM = 0.02;

  /** Squares by which lines are found, mm. */
  private static final double SQUARE_MM = 0.5;

  /** A line of a piece of a deeper step. */
  private record Line(Piece of, double ax, double ay, double bx, double by) {

    boolean holds(double x, double y) {
      double dx = bx - ax;
      double dy = by - ay;
      double squared = dx * dx + dy * dy;
      double t = squared == 0 ? 0 : ((x - ax) * dx + (y - ay) * dy) / squared;
      t = Math.max(0, Math.min(1, t));
      return Math.hypot(x - ax - t * dx, y - ay - t * dy) <= SAME_MM;
    }
  }

  private final double visitMm;
  private final Map<Long, List<Line>> lines = new HashMap<>();

  private OneVisit(double visitMm) {
    this.visitMm = visitMm;
  }

  /**
   * The works, less what deeper ones take along.
   *
   * @param works in the order of their steps
   * @param visitMm a visit takes as long as cutting so far, mm
   */
  static List<StepWork> of(List<StepWork> works, double visitMm) {
    List<StepWork> deepestFirst = new ArrayList<>(works);
    deepestFirst.sort(Comparator.comparingDouble(work -> -work.step().depthMm()));
    OneVisit visit = new OneVisit(visitMm);
    Map<StepWork, StepWork> left = new HashMap<>();
    for (StepWork work : deepestFirst) {
      Set<Piece> taken = visit.taken(work.pieces());
      List<Piece> pieces = work.pieces().stream().filter(piece -> !taken.contains(piece)).toList();
      pieces.stream().filter(Piece::wall).forEach(visit::add);
      left.put(work, new StepWork(work.step(), work.field(), pieces, work.spacingMm()));
    }
    return works.stream().map(left::get).toList();
  }

  /** Which of a step's pieces deeper ones take along. */
  private Set<Piece> taken(List<Piece> pieces) {
    Map<Piece, List<Piece>> over = new HashMap<>();
    for (Piece piece : pieces) {
      Piece deeper = piece.wall() ? under(piece) : null;
      if (deeper != null) {
        over.computeIfAbsent(deeper, key -> new ArrayList<>()).add(piece);
      }
    }
    Set<Piece> taken = new HashSet<>();
    over.forEach(
        (deeper, upper) -> {
          double length = upper.stream().mapToDouble(Piece::lengthMm).sum();
          if (deeper.lengthMm() - length < visitMm * upper.size()) {
            taken.addAll(upper);
          }
        });
    return taken;
  }

  private void add(Piece piece) {
    int n = piece.size();
    for (int i = 1; i < n + (piece.closed() ? 1 : 0); i++) {
      Line line =
          new Line(piece, piece.x()[i - 1], piece.y()[i - 1], piece.x()[i % n], piece.y()[i % n]);
      int left = square(Math.min(line.ax, line.bx) - SAME_MM);
      int right = square(Math.max(line.ax, line.bx) + SAME_MM);
      int top = square(Math.max(line.ay, line.by) + SAME_MM);
      for (int b = square(Math.min(line.ay, line.by) - SAME_MM); b <= top; b++) {
        for (int a = left; a <= right; a++) {
          lines.computeIfAbsent(key(a, b), k -> new ArrayList<>()).add(line);
        }
      }
    }
  }

  private static int square(double mm) {
    return (int) Math.floor(mm / SQUARE_MM);
  }

  private static long key(int a, int b) {
    return ((long) a << 32) + b;
  }

  /** The shortest deeper piece that lies under all of a piece, or null. */
  private Piece under(Piece piece) {
    int n = piece.size();
    Set<Piece> under = at(piece.x()[0], piece.y()[0]);
    for (int i = 1; i < n + (piece.closed() ? 1 : 0) && !under.isEmpty(); i++) {
      double dx = piece.x()[i % n] - piece.x()[i - 1];
      double dy = piece.y()[i % n] - piece.y()[i - 1];
      // Both ends of a straight way may lie on a piece that goes round it.
      int parts = Math.max(1, (int) Math.ceil(Math.hypot(dx, dy) / SQUARE_MM));
      for (int p = 1; p <= parts; p++) {
        double t = (double) p / parts;
        under.retainAll(at(piece.x()[i - 1] + t * dx, piece.y()[i - 1] + t * dy));
      }
    }
    return under.stream().min(Comparator.comparingDouble(Piece::lengthMm)).orElse(null);
  }

  /** The deeper pieces that a place lies on. */
  private Set<Piece> at(double x, double y) {
    Set<Piece> here = new HashSet<>();
    for (Line line : lines.getOrDefault(key(square(x), square(y)), List.of())) {
      if (line.holds(x, y)) {
        here.add(line.of());
      }
    }
    return here;
  }
}
