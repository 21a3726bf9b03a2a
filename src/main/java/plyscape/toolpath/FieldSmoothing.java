package plyscape.toolpath;

import java.util.stream.IntStream;

/**
 * A field averaged over a square, twice along each axis: inner rings are drawn on it, so that they
 * turn gently where the exact distance has a crease. The average of distances is itself nowhere
 * steeper than the distance.
 */
final class FieldSmoothing {

  private FieldSmoothing() {}

  /**
   * The field averaged over (2 half + 1) nodes in each direction, twice; the array handed in is
   * left as it is.
   */
  static float[] smooth(float[] field, int columns, int rows, int half) {
    float[] a = field.clone();
    if (half < 1) {
      return a;
    }
    for (int time = 0; time < 2; time++) {
      IntStream.range(0, rows).parallel().forEach(j -> line(a, j * columns, 1, columns, half));
      columns(a, columns, rows, half);
    }
    return a;
  }

  private static void line(float[] a, int start, int stride, int count, int half) {
    float[] old = new float[count];
    for (int i = 0; i < count; i++) {
      old[i] = a[start + i * stride];
    }
    double sum = 0;
    for (int i = -half; i <= half; i++) {
      sum += old[Math.max(0, Math.min(count - 1, i))];
    }
    double share = 1.0 / (2 * half + 1);
    for (int i = 0; i < count; i++) {
      a[start + i * stride] = (float) (sum * share);
      sum += old[Math.min(count - 1, i + half + 1)] - old[Math.max(0, i - half)];
    }
  }

  /**
   * Columns in blocks, row by row, so that memory is read in order; block borders don't touch the
   * result.
   */
  private static void columns(float[] a, int columns, int rows, int half) {
    int block = 64;
    IntStream.range(0, (columns + block - 1) / block)
        .parallel()
        .forEach(
            b -> {
              int from = b * block;
              int width = Math.min(block, columns - from);
              float[] old = new float[rows * width];
              for (int j = 0; j < rows; j++) {
                System.arraycopy(a, j * columns + from, old, j * width, width);
              }
              double[] sum = new double[width];
              for (int j = -half; j <= half; j++) {
                int r = Math.max(0, Math.min(rows - 1, j)) * width;
                for (int i = 0; i < width; i++) {
                  sum[i] += old[r + i];
                }
              }
              double share = 1.0 / (2 * half + 1);
              for (int j = 0; j < rows; j++) {
                int in = Math.min(rows - 1, j + half + 1) * width;
                int out = Math.max(0, j - half) * width;
                for (int i = 0; i < width; i++) {
                  a[j * columns + from + i] = (float) (sum[i] * share);
                  sum[i] += old[in + i] - old[out + i];
                }
              }
            });
  }
}
