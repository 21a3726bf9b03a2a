package plyscape.toolpath;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import plyscape.machine.Machine;
import plyscape.machine.Tool;

/**
 * Puts the pieces of all steps of a cutter in cutting order. Within a step a piece comes after all
 * pieces of inner rings that lie beside it, so that it takes one stepover only; of two steps whose
 * pieces lie over each other the earlier comes first. A small island is freed after all around it
 * has been cut. Beyond that the cutter finishes one place down to its last step before it goes on
 * to the next, for short ways ({@link TourOrder}). Deterministic.
 */
final class PieceOrder {

  /** Rings within so many spacings lie beside each other. */
  private static final double BESIDE = 1.7;

  private final List<StepWork> works;
  private final List<Piece> pieces = new ArrayList<>();
  private final List<Integer> steps = new ArrayList<>();
  private final Tool tool;
  private final Machine machine;
  private final List<List<Integer>> before = new ArrayList<>();
  private final double[][] sampleX;
  private final double[][] sampleY;

  /**
   * @param works of one cutter, in the order of their steps
   */
  PieceOrder(List<StepWork> works, Tool tool, Machine machine) {
    this.works = works;
    this.tool = tool;
    this.machine = machine;
    for (int w = 0; w < works.size(); w++) {
      for (Piece piece : works.get(w).pieces()) {
        pieces.add(piece);
        steps.add(w);
        before.add(new ArrayList<>());
      }
    }
    sampleX = new double[pieces.size()][];
    sampleY = new double[pieces.size()][];
    for (int p = 0; p < pieces.size(); p++) {
      sample(p, works.get(steps.get(p)).spacingMm());
    }
    relate();
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

  /** Which pieces must wait for which. */
  private void relate() {
    double cell = tool.diameterMm();
    for (StepWork work : works) {
      cell = Math.max(cell, reach(work));
    }
    int total = 0;
    for (double[] xs : sampleX) {
      total += xs.length;
    }
    int[] pieceOf = new int[total];
    double[] x = new double[total];
    double[] y = new double[total];
    int n = 0;
    for (int p = 0; p < pieces.size(); p++) {
      for (int s = 0; s < sampleX[p].length; s++) {
        pieceOf[n] = p;
        x[n] = sampleX[p][s];
        y[n++] = sampleY[p][s];
      }
    }
    var buckets = new SampleBuckets(x, y, cell);
    boolean[] island = new boolean[pieces.size()];
    for (int p = 0; p < island.length; p++) {
      DistanceField field = works.get(steps.get(p)).field().field();
      island[p] = Islands.small(pieces.get(p), field, tool.diameterMm());
    }
    int[] seen = new int[pieces.size()];
    Arrays.fill(seen, -1);
    for (int i = 0; i < n; i++) {
      int p = pieceOf[i];
      StepWork work = works.get(steps.get(p));
      double beside = BESIDE * work.spacingMm();
      double over = reach(work);
      double px = x[i];
      double py = y[i];
      buckets.around(
          px,
          py,
          other -> {
            int q = pieceOf[other];
            boolean held = island[q] && !island[p] && steps.get(p).equals(steps.get(q));
            if (seen[q] != p && (held || first(p, q))) {
              double dx = x[other] - px;
              double dy = y[other] - py;
              double near = held || !steps.get(p).equals(steps.get(q)) ? over : beside;
              if (dx * dx + dy * dy < near * near) {
                seen[q] = p;
                before.get(q).add(p);
              }
            }
          });
    }
  }

  /** Pieces of different steps with samples within this may lie over each other, mm. */
  private double reach(StepWork work) {
    return tool.diameterMm() + work.spacingMm();
  }

  private boolean first(int p, int q) {
    int step = steps.get(p).compareTo(steps.get(q));
    return step != 0 ? step < 0 : pieces.get(q).index() < pieces.get(p).index();
  }

  /** Takes each next piece. */
  interface Cutter {
    void cut(StepWork work, Piece piece);
  }

  /** Hands the pieces over in order, starting from a point. */
  void run(double x, double y, Cutter cutter) {
    List<TourItem> items = new ArrayList<>();
    for (int p = 0; p < pieces.size(); p++) {
      Piece piece = pieces.get(p);
      int[] earlier = before.get(p).stream().mapToInt(Integer::intValue).toArray();
      if (piece.closed()) {
        items.add(new TourItem(sampleX[p], sampleY[p], TourItem.Kind.RING, earlier));
      } else {
        int last = piece.size() - 1;
        items.add(
            new TourItem(
                new double[] {piece.x()[0], piece.x()[last]},
                new double[] {piece.y()[0], piece.y()[last]},
                piece.wall() ? TourItem.Kind.PATH : TourItem.Kind.EITHER_WAY,
                earlier));
      }
    }
    for (TourOrder.Visit visit : TourOrder.of(items, x, y, gaps())) {
      Piece piece = pieces.get(visit.item());
      cutter.cut(works.get(steps.get(visit.item())), visit.reversed() ? piece.reversed() : piece);
    }
  }

  private TravelCost gaps() {
    int[] stepOf = steps.stream().mapToInt(Integer::intValue).toArray();
    List<DistanceField> fields = works.stream().map(work -> work.field().field()).toList();
    return new GapCost(stepOf, fields, tool, machine);
  }
}
