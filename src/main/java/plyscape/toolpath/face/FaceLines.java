package plyscape.toolpath.face;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Lays parallel lines for one finishing cutter where it takes something off, a stepover apart; then
 * lines halfway between where ridges stand higher than the cusp (on slopes, and along walls that
 * the first lines missed), then halfway again, and so on as far as the lattice allows, and beside
 * walls and cliffs a little farther: where one runs along the lines, only one of them comes as near
 * to it as the cutter can.
 */
final class FaceLines {

  /** Less than this above a face isn't worth going there, mm. */
  private static final double LEAST_MM = 0.005;

  /** Rounding to three places, thinning and looking at nodes: lines are lifted by this, mm. */
  static final double LIFT_MM = 0.002;

  /** Gaps up to this are gone over at feed: a lift costs as much time as about this way, mm. */
  private static final double GAP_MM = 8;

  /** Columns from one look to the next. */
  private static final int STRIDE = 2;

  /** What the lift, and faces between the nodes, may add to a ridge as it is looked at, mm. */
  private static final double UNSEEN_MM = 0.0035;

  /** Lines are looked at in every other column: a ridge between may be higher by this share. */
  private static final double BETWEEN_SHARE = 0.03;

  /** Level ground mustn't be gone over twice for the noise of the nodes. */
  private static final double LEVEL_SHARE = 0.9;

  /** Of a cusp that is hardly more than that so much is planned with. */
  private static final double LEAST_SHARE = 0.4;

  /** A line that bends by less at a place goes over no peak between places, mm. */
  private static final double PEAK_MM = 0.003;

  private static final int ROWS_PER_BAND = 64;

  /** Lines beside walls are halved until they are no farther apart: what may be left on one, mm. */
  private static final double FINE_MM = 0.05;

  /** Going nearer to a wall by less than this isn't worth a line, mm. */
  private static final double NEARER_MM = 0.02;

  /** Where the tip goes down by more from row to row it is beside a wall or a cliff, mm a mm. */
  private static final double CLIFF = 1;

  private final FaceLattice lattice;
  private final DropCutter drop;
  private final double cuspMm;
  private final int stepoverRows;

  /** Depths at the looks of each row in this layer, NaN where none was needed. */
  private final double[][] known;

  /**
   * @param stepoverRows rows from line to line, a multiple of 4
   */
  FaceLines(FaceLattice lattice, DropCutter drop, double cuspMm, int stepoverRows) {
    this.lattice = lattice;
    this.drop = drop;
    this.cuspMm = cuspMm;
    this.stepoverRows = stepoverRows;
    known = new double[lattice.rows][];
  }

  /** Height over which a ridge is cut once more, so that none stands higher than a cusp, mm. */
  private static double mostRidgeMm(double cuspMm) {
    return Math.max(LEAST_SHARE * cuspMm, (1 - BETWEEN_SHARE) * cuspMm - UNSEEN_MM);
  }

  /** Height of ridges on level ground for which lines are laid: a little under that, mm. */
  static double levelRidgeMm(double cuspMm) {
    return LEVEL_SHARE * mostRidgeMm(cuspMm);
  }

  /**
   * Runs of one layer, as the cutter may go since it began; the stock is lowered by them.
   *
   * @param before the stock when the last layer by the same rules began: where nothing has been cut
   *     since, nothing can be now; null to look everywhere
   */
  List<FaceRun> layer(float[] before) {
    int n = stepoverRows;
    double ridge = mostRidgeMm(cuspMm);
    List<FaceRun> runs = new ArrayList<>();
    Arrays.fill(known, null);
    set(lattice.margin, n, Math.min(LEAST_MM, cuspMm / 2), n / 2, before, runs);
    set(lattice.margin + n / 2, n, ridge, drop.around(), before, runs);
    set(lattice.margin + n / 4, n / 2, ridge, drop.around(), before, runs);
    for (int between : halfway(n / 4)) {
      set(lattice.margin + between, n / 4, ridge, drop.around(), before, runs);
    }
    if (!drop.form().flat()) {
      for (int parts = 2; lattice.stepMm > parts / 2 * FINE_MM; parts *= 2) {
        for (int part = 1; part < parts; part += 2) {
          besideWalls((double) part / parts, ridge, before, runs);
        }
      }
    }
    Arrays.fill(known, null);
    return runs;
  }

  /**
   * Rows between two lines, those first that halve what is left. A flat cutter goes but once
   * between: along a wall its steps are as good as any line more.
   */
  private List<Integer> halfway(int gap) {
    List<Integer> rows = new ArrayList<>();
    List<int[]> gaps = new ArrayList<>(List.of(new int[] {0, gap}));
    for (int i = 0; i < gaps.size(); i++) {
      int from = gaps.get(i)[0];
      int to = gaps.get(i)[1];
      if (to - from > 1) {
        int middle = (from + to) / 2;
        rows.add(middle);
        gaps.add(new int[] {from, middle});
        gaps.add(new int[] {middle, to});
      }
    }
    return drop.form().flat() ? rows.subList(0, gap % 2 == 0 ? 1 : 0) : rows;
  }

  private void set(
      int first, int step, double tolerance, int across, float[] before, List<FaceRun> runs) {
    boolean[] work = look(tolerance, before);
    cut(
        IntStream.iterate(first, row -> row < lattice.endRow, row -> row + step)
            .parallel()
            .mapToObj(row -> row(row, work, tolerance, across))
            .filter(row -> !row.runs().isEmpty())
            .toList(),
        runs);
  }

  /** Lines a share of the way from each row to the next one. */
  private void besideWalls(double share, double tolerance, float[] before, List<FaceRun> runs) {
    boolean[] work = look(tolerance, before);
    cut(
        IntStream.range(lattice.margin, lattice.endRow - 1)
            .parallel()
            .mapToObj(row -> beside(row, share, work, tolerance))
            .filter(row -> !row.runs().isEmpty())
            .toList(),
        runs);
  }

  /** Blocks where something is to be taken off the stock as it is now. */
  private boolean[] look(double tolerance, float[] before) {
    drop.look();
    boolean[] work = lattice.workAround(tolerance, drop.around());
    if (before != null) {
      boolean[] changed = lattice.changedAround(before, drop.around() + 1);
      for (int b = 0; b < work.length; b++) {
        work[b] &= changed[b];
      }
    }
    return work;
  }

  private void cut(List<FaceRow> rows, List<FaceRun> runs) {
    int bands = (lattice.rows + ROWS_PER_BAND - 1) / ROWS_PER_BAND;
    IntStream.range(0, bands)
        .parallel()
        .forEach(
            band -> {
              int from = band * ROWS_PER_BAND;
              rows.forEach(row -> row.stamp(drop, from, from + ROWS_PER_BAND));
            });
    rows.forEach(row -> runs.addAll(row.runs()));
  }

  /** Whether a line goes over a sharp rise at a place, as far as its neighbours are known. */
  private static boolean peak(double[] depth, int i) {
    return i > 0 && i < depth.length - 1 && depth[i - 1] + depth[i + 1] - 2 * depth[i] > PEAK_MM;
  }

  private FaceRow row(int row, boolean[] work, double tolerance, int across) {
    int n = (lattice.endColumn - 1 - lattice.margin) / STRIDE + 1;
    double[] depth = new double[n];
    boolean[] takes = new boolean[n];
    Arrays.fill(depth, Double.NaN);
    for (int i = 0; i < n; i++) {
      int column = column(i);
      if (work[lattice.blockOf(column, row)]) {
        depth[i] = drop.atNode(column, row);
        takes[i] = drop.takesOff(column, row, depth[i] - LIFT_MM, tolerance, across);
      }
    }
    known[row] = depth;
    return joined(new FaceRow(lattice, row), depth, takes, i -> drop.atNode(column(i), row));
  }

  private FaceRow beside(int row, double share, boolean[] work, double tolerance) {
    FaceRow cut = new FaceRow(lattice, row + share);
    double[] one = known[row];
    double[] other = known[row + 1];
    double[] depth = new double[one.length];
    boolean[] takes = new boolean[one.length];
    Arrays.fill(depth, Double.NaN);
    double least = Math.max(tolerance, CLIFF * lattice.stepMm);
    for (int i = 0; i < depth.length; i++) {
      // Not so where nothing is known of a row: there no cutter has anything to do.
      if (Math.abs(one[i] - other[i]) > least && work[lattice.blockOf(column(i), row)]) {
        double u = lattice.u(column(i));
        depth[i] = drop.at(u, cut.v());
        double tip = depth[i] - LIFT_MM;
        takes[i] =
            new TipPlace(lattice, drop.form(), u, cut.v(), tip).takesOff(tolerance, NEARER_MM);
      }
    }
    return joined(cut, depth, takes, i -> drop.at(lattice.u(column(i)), cut.v()));
  }

  /** Runs over all looks that take something off, and over short gaps between them. */
  private FaceRow joined(FaceRow cut, double[] depth, boolean[] takes, IntToDoubleFunction tip) {
    int n = depth.length;
    int gap = (int) (GAP_MM / (STRIDE * lattice.stepMm));
    int i = 0;
    while (i < n) {
      if (!takes[i]) {
        i++;
        continue;
      }
      int last = i;
      for (int k = i; k < n && k - last <= gap; k++) {
        last = takes[k] ? k : last;
      }
      int end = Math.min(n - 1, last + 1);
      for (int k = Math.max(0, i - 1); k <= end; k++) {
        depth[k] = Double.isNaN(depth[k]) ? tip.applyAsDouble(k) : depth[k];
      }
      run(Math.max(0, i - 1), end, depth, cut);
      i = end + 1;
    }
    return cut;
  }

  private int column(int look) {
    return lattice.margin + look * STRIDE;
  }

  /** Adds the run from one look to another. */
  private void run(int first, int last, double[] depth, FaceRow cut) {
    FaceProfile profile = new FaceProfile(drop, cut.v());
    for (int k = first; k <= last; k++) {
      profile.to(lattice.u(column(k)), depth[k], peak(depth, k - 1) || peak(depth, k));
      cut.look(column(k), depth[k] - LIFT_MM);
    }
    cut.run(profile.run(LIFT_MM), last - first + 1);
  }
}
