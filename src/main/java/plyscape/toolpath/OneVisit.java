package plyscape.toolpath;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import plyscape.toolpath.cover.StepWork;
import plyscape.toolpath.lattice.LineSquares;
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

  private final double visitMm;
  private final LineSquares<Piece> lines = new LineSquares<>(SQUARE_MM);

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
      pieces.stream()
          .filter(Piece::wall)
          .forEach(piece -> visit.lines.add(piece, piece.x(), piece.y(), piece.closed()));
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

  /** The deeper pieces that a place lies on, in the order in which they were added. */
  private Set<Piece> at(double x, double y) {
    Set<Piece> here = new LinkedHashSet<>();
    lines.near(x, y, SAME_MM, here::add);
    return here;
  }
}
