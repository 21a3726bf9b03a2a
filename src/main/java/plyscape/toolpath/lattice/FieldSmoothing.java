package plyscape.toolpath.lattice;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * A field averaged over a square, twice along each axis: inner rings are drawn on it, so that they
 * turn gently where the exact distance has a crease. The average of distances is itself nowhere
 * steeper than the distance.
 */
public final class FieldSmoothing {

  /** Columns that are worked on together, so that memory is read in order. */
  private static final int BLOCK = 64;

  private final float[] a;
  private final int columns;
  private final int left;
  private final int right;
  private final int bottom;
  private final int top;
  private final int half;

  private FieldSmoothing(float[] a, int columns, int[] box, int half) {
    this.a = a;
    this.columns = columns;
    left = box[0];
    right = box[1];
    bottom = box[2];
    top = box[3];
    this.half = half;
  }

  /**
   * The field averaged over (2 half + 1) nodes in each direction, twice; the array handed in is
   * left as it is.
   *
   * @param box first and last column, first and last row; beyond, the field is left as it is
   */
  public static float[] smooth(float[] field, int columns, int[] box, int half) {
    float[] a = field.clone();
    if (half < 1) {
      return a;
    }
    var smoothing = new FieldSmoothing(a, columns, box, half);
    for (int time = 0; time < 2; time++) {
      smoothing.alongRows();
      smoothing.alongColumns();
    }
    return a;
  }

  private void alongRows() {
    IntStream.rangeClosed(bottom, top)
        .parallel()
        .forEach(j -> row(j * columns + left, right - left + 1));
  }

  /** In place: the old values that the window still holds are kept in a ring. */
  private void row(int start, int count) {
    float[] kept = new float[half + 1];
    double share = 1.0 / (2 * half + 1);
    double sum = 0;
    for (int i = -half; i <= half; i++) {
      sum += a[start + Math.max(0, Math.min(count - 1, i))];
    }
    float edge = a[start];
    int end = start + count - 1;
    int slot = 0;
    for (int at = start; at <= end; at++) {
      kept[slot] = a[at];
      slot = slot == half ? 0 : slot + 1;
      a[at] = (float) (sum * share);
      int in = at + half + 1;
      sum += a[in < end ? in : end] - (at - start >= half ? kept[slot] : edge);
    }
  }

  /** In blocks of columns, row by row; block borders don't touch the result. */
  private void alongColumns() {
    IntStream.rangeClosed(0, (right - left) / BLOCK)
        .parallel()
        .forEach(b -> columns(left + b * BLOCK, Math.min(BLOCK, right - left + 1 - b * BLOCK)));
  }

  private void columns(int from, int width) {
    int rows = top - bottom + 1;
    int start = bottom * columns + from;
    float[] kept = new float[(half + 1) * width];
    float[] edge = Arrays.copyOfRange(a, start, start + width);
    double[] sum = new double[width];
    for (int j = -half; j <= half; j++) {
      int r = start + Math.max(0, Math.min(rows - 1, j)) * columns;
      for (int i = 0; i < width; i++) {
        sum[i] += a[r + i];
      }
    }
    double share = 1.0 / (2 * half + 1);
    int slot = 0;
    for (int j = 0; j < rows; j++) {
      int at = start + j * columns;
      System.arraycopy(a, at, kept, slot * width, width);
      slot = slot == half ? 0 : slot + 1;
      int in = start + Math.min(rows - 1, j + half + 1) * columns;
      float[] leaving = j >= half ? kept : edge;
      int out = j >= half ? slot * width : 0;
      for (int i = 0; i < width; i++) {
        a[at + i] = (float) (sum[i] * share);
        sum[i] += a[in + i] - leaving[out + i];
      }
    }
  }
}
