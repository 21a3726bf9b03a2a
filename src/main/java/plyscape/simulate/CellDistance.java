package plyscape.simulate;

import java.util.Arrays;
import java.util.function.IntPredicate;
import plyscape.grid.CellFrame;

/**
 * Distance of each cell's centre to the nearest marked cell's centre, mm, exact to a float, by
 * lower envelopes of parabolas row after row and column after column (Felzenszwalb and Huttenlocher
 * 2012; references.md, section 6). Infinite when none is marked.
 */
final class CellDistance {

  private final CellFrame frame;

  CellDistance(CellFrame frame) {
    this.frame = frame;
  }

  float[] from(IntPredicate marked) {
    int columns = frame.columns();
    int rows = frame.rows();
    float[] squared = new float[frame.size()];
    for (int i = 0; i < squared.length; i++) {
      squared[i] = marked.test(i) ? 0 : Float.POSITIVE_INFINITY;
    }
    Line line = new Line(Math.max(columns, rows));
    for (int row = 0; row < rows; row++) {
      line.run(squared, row * columns, 1, columns, frame.cellX());
    }
    for (int column = 0; column < columns; column++) {
      line.run(squared, column, columns, rows, frame.cellY());
    }
    for (int i = 0; i < squared.length; i++) {
      squared[i] = (float) Math.sqrt(squared[i]);
    }
    return squared;
  }

  /** One row or column. */
  private static final class Line {

    private final double[] value;
    private final int[] vertex;
    private final double[] boundary;

    Line(int longest) {
      value = new double[longest];
      vertex = new int[longest];
      boundary = new double[longest + 1];
    }

    void run(float[] data, int start, int step, int n, double cell) {
      int k = -1;
      for (int q = 0; q < n; q++) {
        value[q] = data[start + q * step];
        if (Double.isInfinite(value[q])) {
          continue;
        }
        double s = Double.NEGATIVE_INFINITY;
        while (k >= 0) {
          int p = vertex[k];
          s =
              (value[q] + q * q * cell * cell - value[p] - p * p * cell * cell)
                  / (2 * cell * (q - p));
          if (s > boundary[k]) {
            break;
          }
          k--;
        }
        k++;
        vertex[k] = q;
        boundary[k] = k == 0 ? Double.NEGATIVE_INFINITY : s;
      }
      if (k < 0) {
        Arrays.fill(value, 0, n, Double.POSITIVE_INFINITY);
        return;
      }
      int last = k;
      k = 0;
      for (int q = 0; q < n; q++) {
        while (k < last && boundary[k + 1] < q * cell) {
          k++;
        }
        double d = (q - vertex[k]) * cell;
        data[start + q * step] = (float) (d * d + value[vertex[k]]);
      }
    }
  }
}
