package plyscape.simulate;

import java.util.List;
import plyscape.grid.CellFrame;
import plyscape.simulate.stroke.ToolForm;

/**
 * What is to stay, mm deep at the centre of each cell, and the sharp ridges of its faces between
 * the centres: where a face rises to a cell and falls from the next one, both slopes are followed
 * on to the place where they meet. A round end rests on that, not on the cells beside it.
 */
final class FaceSurface {

  private static final byte IN_ROW = 1;
  private static final byte IN_COLUMN = 2;

  /** A ridge that bends by less from cell to cell is told by the centres, mm. */
  private static final double SHARP_MM = 0.02;

  private final CellFrame frame;
  private final float[] depth;

  /** Whether a ridge comes between a cell and the next one in its row, its column, or both. */
  private final byte[] ridges;

  /**
   * @param depth at each cell; not copied
   * @param targetOf each cell; ridges are looked for within one whose depths differ by place
   */
  FaceSurface(CellFrame frame, float[] depth, short[] targetOf, List<Target> targets) {
    this.frame = frame;
    this.depth = depth;
    ridges = new byte[depth.length];
    int n = frame.columns();
    for (int row = 0; row < frame.rows(); row++) {
      for (int i = row * n; i < (row + 1) * n; i++) {
        if (targetOf[i] >= 0 && targets.get(targetOf[i]).face() != null) {
          int column = i - row * n;
          boolean inRow = column > 0 && column < n - 2 && sharp(i, 1, targetOf);
          boolean inColumn = row > 0 && row < frame.rows() - 2 && sharp(i, n, targetOf);
          ridges[i] = (byte) ((inRow ? IN_ROW : 0) | (inColumn ? IN_COLUMN : 0));
        }
      }
    }
  }

  private boolean sharp(int i, int step, short[] targetOf) {
    return depth[i + 2 * step] - depth[i + step] - depth[i] + depth[i - step] > SHARP_MM
        && targetOf[i - step] == targetOf[i]
        && targetOf[i + step] == targetOf[i]
        && targetOf[i + 2 * step] == targetOf[i];
  }

  CellFrame frame() {
    return frame;
  }

  /** Depth at a cell's centre. */
  float at(int column, int row) {
    return depth[row * frame.columns() + column];
  }

  /** Whether a ridge comes just after a cell. */
  boolean ridgeAfter(int column, int row) {
    return ridges[row * frame.columns() + column] != 0;
  }

  /**
   * Deepest that a cutter's tip may be so far to the west and south of a cell's centre, for the
   * ridges just after it, mm; infinite where there is none.
   */
  double deepestTip(ToolForm form, int column, int row, double eastMm, double northMm) {
    int i = row * frame.columns() + column;
    double best = Double.POSITIVE_INFINITY;
    if ((ridges[i] & IN_ROW) != 0) {
      double share = share(i, 1);
      double off = Math.hypot(eastMm + share * frame.cellX(), northMm);
      best = over(form, ridge(i, 1, share), off);
    }
    if ((ridges[i] & IN_COLUMN) != 0) {
      double share = share(i, frame.columns());
      double off = Math.hypot(eastMm, northMm + share * frame.cellY());
      best = Math.min(best, over(form, ridge(i, frame.columns(), share), off));
    }
    return best;
  }

  private static double over(ToolForm form, double ridge, double off) {
    return off > form.radius() ? Double.POSITIVE_INFINITY : ridge + form.height(off);
  }

  /** Of the way to the next cell, where the slopes on both sides meet. */
  private double share(int i, int step) {
    double before = depth[i] - depth[i - step];
    double after = depth[i + 2 * step] - depth[i + step];
    double share = (depth[i + step] - after - depth[i]) / (before - after);
    return Math.max(0, Math.min(1, share));
  }

  private double ridge(int i, int step, double share) {
    return depth[i] + share * (depth[i] - depth[i - step]);
  }
}
