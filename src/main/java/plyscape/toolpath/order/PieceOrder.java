package plyscape.toolpath.order;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import plyscape.machine.Machine;
import plyscape.machine.Tool;
import plyscape.toolpath.cover.StepWork;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.ring.Piece;

/**
 * Puts the pieces of all steps of a cutter in cutting order: what must wait for what says {@link
 * Precedence}; beyond that the cutter finishes one place down to its last step before it goes on to
 * the next, for short ways ({@link TourOrder}). Deterministic.
 */
public final class PieceOrder {

  private final List<StepWork> works;
  private final List<Piece> pieces = new ArrayList<>();
  private final int[] stepOf;
  private final Tool tool;
  private final Machine machine;
  private final double[][] sampleX;
  private final double[][] sampleY;

  /**
   * @param works of one cutter, in the order of their steps
   */
  public PieceOrder(List<StepWork> works, Tool tool, Machine machine) {
    this.works = works;
    this.tool = tool;
    this.machine = machine;
    works.forEach(work -> pieces.addAll(work.pieces()));
    stepOf = new int[pieces.size()];
    sampleX = new double[pieces.size()][];
    sampleY = new double[pieces.size()][];
    int p = 0;
    for (int w = 0; w < works.size(); w++) {
      for (int k = 0; k < works.get(w).pieces().size(); k++) {
        stepOf[p] = w;
        sample(p++, works.get(w).spacingMm());
      }
    }
  }

  private void sample(int p, double spacing) {
    Piece piece = pieces.get(p);
    double[] sx = new double[16];
    double[] sy = new double[16];
    int n = 0;
    int total = piece.size() + (piece.closed() ? 1 : 0);
    double since = spacing;
    for (int s = 0; s < total; s++) {
      int i = s % piece.size();
      double x = piece.x()[i];
      double y = piece.y()[i];
      double d = s == 0 ? 0 : Math.hypot(x - piece.x()[s - 1], y - piece.y()[s - 1]);
      int parts = Math.max(1, (int) Math.ceil(d / spacing));
      for (int q = 1; q <= parts; q++) {
        since += d / parts;
        if (since >= spacing || s == total - 1 && q == parts) {
          since = 0;
          if (n == sx.length) {
            sx = Arrays.copyOf(sx, 2 * n);
            sy = Arrays.copyOf(sy, 2 * n);
          }
          double t = s == 0 ? 1 : (double) q / parts;
          double fromX = s == 0 ? x : piece.x()[s - 1];
          double fromY = s == 0 ? y : piece.y()[s - 1];
          sx[n] = fromX + t * (x - fromX);
          sy[n++] = fromY + t * (y - fromY);
        }
      }
    }
    sampleX[p] = Arrays.copyOf(sx, n);
    sampleY[p] = Arrays.copyOf(sy, n);
  }

  /** Takes each next piece. */
  public interface Cutter {
    void cut(StepWork work, Piece piece);
  }

  /** Hands the pieces over in order, starting from a point. */
  public void run(double x, double y, Cutter cutter) {
    int[][] before = new Precedence(works, pieces, stepOf, sampleX, sampleY, tool).before();
    List<TourItem> items = new ArrayList<>();
    for (int p = 0; p < pieces.size(); p++) {
      Piece whole = pieces.get(p);
      Piece piece = whole.needed() == null ? whole : whole.needed();
      if (piece.closed()) {
        items.add(new TourItem(sampleX[p], sampleY[p], TourItem.Kind.RING, before[p]));
      } else {
        int last = piece.size() - 1;
        items.add(
            new TourItem(
                new double[] {piece.x()[0], piece.x()[last]},
                new double[] {piece.y()[0], piece.y()[last]},
                piece.wall() && piece.slot() == null
                    ? TourItem.Kind.PATH
                    : TourItem.Kind.EITHER_WAY,
                before[p]));
      }
    }
    List<DistanceField> fields = works.stream().map(work -> work.field().field()).toList();
    TravelCost cost = new GapCost(stepOf, fields, tool, machine);
    for (TourOrder.Visit visit : TourOrder.of(items, x, y, cost)) {
      Piece piece = pieces.get(visit.item());
      cutter.cut(works.get(stepOf[visit.item()]), visit.reversed() ? piece.reversed() : piece);
    }
  }
}
