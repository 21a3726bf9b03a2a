package plyscape.toolpath.order;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import plyscape.machine.Tool;
import plyscape.toolpath.cover.StepWork;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.ring.Piece;

/**
 * Which pieces of a cutter must wait for which. Within a step a piece comes after all pieces of
 * inner rings that lie beside it, so that it takes one stepover only; of two steps whose pieces lie
 * over each other the earlier comes first. A small island is freed after all around it has been cut
 * ({@link Islands}).
 */
final class Precedence {

  /** Rings within so many spacings lie beside each other. */
  private static final double BESIDE = 1.7;

  /**
   * Two lines a diameter apart have samples no farther apart than that and this share of the
   * spacing at which they are sampled.
   */
  private static final double SAMPLED = 0.2;

  /** So many groups of pieces are looked at by as many threads as there are. */
  private static final int GROUPS = 16;

  private final int[] stepOf;
  private final int[] ringOf;
  private final boolean[] island;
  private final double[][] sampleX;
  private final double[][] sampleY;

  /** Piece of each sample. */
  private final int[] pieceOf;

  private final double[] x;
  private final double[] y;
  private final SampleBuckets buckets;

  /** Squared distances within which pieces of a step lie beside each other, by step, mm2. */
  private final double[] beside;

  /** Within which pieces may lie over each other. */
  private final double[] over;

  /**
   * @param works of one cutter, in the order of their steps
   * @param pieces of all steps
   * @param stepOf the step of each piece
   * @param sampleX points along each piece, about a spacing apart, mm
   * @param sampleY the same
   */
  Precedence(
      List<StepWork> works,
      List<Piece> pieces,
      int[] stepOf,
      double[][] sampleX,
      double[][] sampleY,
      Tool tool) {
    this.stepOf = stepOf;
    this.sampleX = sampleX;
    this.sampleY = sampleY;
    ringOf = pieces.stream().mapToInt(Piece::index).toArray();
    island = new boolean[stepOf.length];
    for (int p = 0; p < island.length; p++) {
      DistanceField field = works.get(stepOf[p]).field().field();
      island[p] = Islands.small(pieces.get(p), field, tool.diameterMm());
    }
    double cell = tool.diameterMm();
    beside = new double[works.size()];
    over = new double[works.size()];
    for (int w = 0; w < works.size(); w++) {
      double spacing = works.get(w).spacingMm();
      double reach = tool.diameterMm() + SAMPLED * spacing;
      cell = Math.max(cell, reach);
      beside[w] = BESIDE * spacing * BESIDE * spacing;
      over[w] = reach * reach;
    }
    int total = Arrays.stream(sampleX).mapToInt(xs -> xs.length).sum();
    pieceOf = new int[total];
    x = new double[total];
    y = new double[total];
    int n = 0;
    for (int p = 0; p < stepOf.length; p++) {
      for (int s = 0; s < sampleX[p].length; s++) {
        pieceOf[n] = p;
        x[n] = sampleX[p][s];
        y[n++] = sampleY[p][s];
      }
    }
    buckets = new SampleBuckets(x, y, cell);
  }

  /** For each piece those that must have been cut before it, rising. */
  int[][] before() {
    int pieces = stepOf.length;
    int[][] after = new int[pieces][];
    int group = pieces / GROUPS + 1;
    IntStream.range(0, GROUPS)
        .parallel()
        .forEach(
            g -> {
              int[] seen = new int[pieces];
              Arrays.fill(seen, -1);
              int end = Math.min(pieces, (g + 1) * group);
              for (int p = g * group; p < end; p++) {
                after[p] = after(p, seen);
              }
            });
    int[][] before = new int[pieces][0];
    int[] count = new int[pieces];
    for (int p = 0; p < pieces; p++) {
      for (int q : after[p]) {
        if (count[q] == before[q].length) {
          before[q] = Arrays.copyOf(before[q], 2 * count[q] + 4);
        }
        before[q][count[q]++] = p;
      }
    }
    Arrays.setAll(before, q -> Arrays.copyOf(before[q], count[q]));
    return before;
  }

  /**
   * The pieces that must wait for one.
   *
   * @param seen the last piece that each piece was found to wait for
   */
  private int[] after(int p, int[] seen) {
    Waiting waiting = new Waiting(p, seen);
    for (int s = 0; s < sampleX[p].length; s++) {
      waiting.px = sampleX[p][s];
      waiting.py = sampleY[p][s];
      buckets.around(waiting.px, waiting.py, waiting::look);
    }
    return Arrays.copyOf(waiting.found, waiting.count);
  }

  /** Pieces that wait for one piece. */
  private final class Waiting {
    private final int p;
    private final int step;
    private final int[] seen;
    private double px;
    private double py;
    private int[] found = new int[8];
    private int count;

    Waiting(int p, int[] seen) {
      this.p = p;
      this.seen = seen;
      step = stepOf[p];
    }

    /** Looks at a sample near one of the piece's. */
    void look(int sample) {
      int q = pieceOf[sample];
      if (seen[q] == p || stepOf[q] < step) {
        return;
      }
      double near = over[step];
      if (stepOf[q] == step && (!island[q] || island[p])) {
        if (ringOf[q] >= ringOf[p]) {
          return;
        }
        near = beside[step];
      }
      double dx = x[sample] - px;
      double dy = y[sample] - py;
      if (dx * dx + dy * dy < near) {
        seen[q] = p;
        if (count == found.length) {
          found = Arrays.copyOf(found, 2 * count);
        }
        found[count++] = q;
      }
    }
  }
}
