package plyscape.toolpath;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Puts the pieces of a pass in cutting order: a piece comes after all pieces of inner rings that
 * lie beside it, so that it takes one stepover only; beyond that for short ways between them
 * ({@link TourOrder}). Deterministic.
 */
final class PieceOrder {

  /** Where one sample of a piece lies. */
  private record Sample(int piece, double x, double y) {}

  private final List<Piece> pieces;
  private final double spacing;
  private final List<List<Integer>> after = new ArrayList<>();
  private final double[][] sampleX;
  private final double[][] sampleY;

  /**
   * @param pieces to be ordered
   * @param spacingMm between neighbouring rings
   */
  PieceOrder(List<Piece> pieces, double spacingMm) {
    this.pieces = pieces;
    this.spacing = spacingMm;
    sampleX = new double[pieces.size()][];
    sampleY = new double[pieces.size()][];
    for (int p = 0; p < pieces.size(); p++) {
      after.add(new ArrayList<>());
      sample(p);
    }
    relate();
  }

  private void sample(int p) {
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

  /** Which pieces must wait for which: those beside each other, the inner first. */
  private void relate() {
    double cell = 2 * spacing;
    double near = 1.7 * spacing;
    Map<Long, List<Sample>> places = new HashMap<>();
    for (int p = 0; p < pieces.size(); p++) {
      for (int s = 0; s < sampleX[p].length; s++) {
        places
            .computeIfAbsent(key(sampleX[p][s], sampleY[p][s], cell, 0, 0), k -> new ArrayList<>())
            .add(new Sample(p, sampleX[p][s], sampleY[p][s]));
      }
    }
    int[] seen = new int[pieces.size()];
    Arrays.fill(seen, -1);
    for (int p = 0; p < pieces.size(); p++) {
      for (int s = 0; s < sampleX[p].length; s++) {
        for (int a = -1; a <= 1; a++) {
          for (int b = -1; b <= 1; b++) {
            for (Sample other :
                places.getOrDefault(key(sampleX[p][s], sampleY[p][s], cell, a, b), List.of())) {
              int q = other.piece();
              if (seen[q] != p
                  && pieces.get(q).index() < pieces.get(p).index()
                  && Math.hypot(other.x() - sampleX[p][s], other.y() - sampleY[p][s]) < near) {
                seen[q] = p;
                after.get(p).add(q);
              }
            }
          }
        }
      }
    }
  }

  private static long key(double x, double y, double cell, int a, int b) {
    long i = (long) Math.floor(x / cell) + a;
    long j = (long) Math.floor(y / cell) + b;
    return (i << 32) ^ (j & 0xffffffffL);
  }

  /** Takes each next piece. */
  interface Cutter {
    void cut(Piece piece);
  }

  /** Hands the pieces over in order, starting from a point. */
  void run(double x, double y, Cutter cutter) {
    List<List<Integer>> before = new ArrayList<>();
    pieces.forEach(piece -> before.add(new ArrayList<>()));
    for (int p = 0; p < pieces.size(); p++) {
      for (int q : after.get(p)) {
        before.get(q).add(p);
      }
    }
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
    for (TourOrder.Visit visit : TourOrder.of(items, x, y)) {
      Piece piece = pieces.get(visit.item());
      cutter.cut(visit.reversed() ? piece.reversed() : piece);
    }
  }
}
