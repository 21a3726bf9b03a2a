package plyscape.toolpath.face;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Lays parallel lines for one finishing cutter where it takes something off, a stepover apart; then
 * lines halfway between where ridges stand higher than the cusp (on slopes, and along walls that
 * the first lines missed), then halfway again, and so on as far as the lattice allows: where a wall
 * runs along the lines, only one of them comes as near to it as the cutter can.
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

  private final FaceLattice lattice;
  private final DropCutter drop;
  private final double cuspMm;
  private final int stepoverRows;

  /**
   * @param stepoverRows rows from line to line, a multiple of 4
   */
  FaceLines(FaceLattice lattice, DropCutter drop, double cuspMm, int stepoverRows) {
    this.lattice = lattice;
    this.drop = drop;
    this.cuspMm = cuspMm;
    this.stepoverRows = stepoverRows;
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
    set(lattice.margin, n, Math.min(LEAST_MM, cuspMm / 2), n / 2, before, runs);
    set(lattice.margin + n / 2, n, ridge, drop.around(), before, runs);
    set(lattice.margin + n / 4, n / 2, ridge, drop.around(), before, runs);
    for (int between : halfway(n / 4)) {
      set(lattice.margin + between, n / 4, ridge, drop.around(), before, runs);
    }
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
    drop.look();
    boolean[] work = lattice.workAround(tolerance, drop.around());
    if (before != null) {
      boolean[] changed = lattice.changedAround(before, drop.around() + 1);
      for (int b = 0; b < work.length; b++) {
        work[b] &= changed[b];
      }
    }
    List<FaceRow> rows =
        IntStream.iterate(first, row -> row < lattice.endRow, row -> row + step)
            .parallel()
            .mapToObj(row -> row(row, work, tolerance, across))
            .filter(row -> !row.runs().isEmpty())
            .toList();
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
    int gap = (int) (GAP_MM / (STRIDE * lattice.stepMm));
    FaceRow cut = new FaceRow(lattice, row);
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
      run(row, Math.max(0, i - 1), end, depth, cut);
      i = end + 1;
    }
    return cut;
  }

  private int column(int look) {
    return lattice.margin + look * STRIDE;
  }

  /** Adds the run from one look to another. */
  private void run(int row, int first, int last, double[] depth, FaceRow cut) {
    FaceProfile profile = new FaceProfile(drop, lattice.v(row));
    for (int k = first; k <= last; k++) {
      depth[k] = Double.isNaN(depth[k]) ? drop.atNode(column(k), row) : depth[k];
      profile.to(lattice.u(column(k)), depth[k], peak(depth, k - 1) || peak(depth, k));
      cut.look(column(k), depth[k] - LIFT_MM);
    }
    cut.run(profile.run(LIFT_MM), last - first + 1);
  }
}
