package plyscape.toolpath.ring;

import java.util.Arrays;
import plyscape.toolpath.lattice.Ring;

/** A ring divided into short chunks of about equal length, each of one or more straight lines. */
public final class Chunks {

  private double[] x = new double[64];
  private double[] y = new double[64];
  private boolean[] own = new boolean[64];
  private int points;
  private int[] starts = new int[64];
  private int chunks;

  private Chunks() {}

  /** Divides a ring; lines longer than a chunk are split. */
  public static Chunks of(Ring ring, double chunkMm) {
    Chunks result = new Chunks();
    int n = ring.size();
    result.point(ring.x()[0], ring.y()[0], true);
    result.begin(0);
    double length = 0;
    for (int s = 1; s < n + (ring.closed() ? 1 : 0); s++) {
      int i = s % n;
      double ax = ring.x()[s - 1];
      double ay = ring.y()[s - 1];
      double dx = ring.x()[i] - ax;
      double dy = ring.y()[i] - ay;
      double d = Math.sqrt(dx * dx + dy * dy);
      int parts = d <= chunkMm ? 1 : (int) Math.ceil(d / chunkMm);
      for (int p = 1; p <= parts; p++) {
        double t = p == parts ? 1 : (double) p / parts;
        result.point(ax + t * (ring.x()[i] - ax), ay + t * (ring.y()[i] - ay), p == parts);
        length += d / parts;
        if (length >= chunkMm * 0.8) {
          result.begin(result.points - 1);
          length = 0;
        }
      }
    }
    if (result.starts[result.chunks - 1] != result.points - 1) {
      result.begin(result.points - 1);
    }
    result.chunks--;
    return result;
  }

  private void point(double px, double py, boolean original) {
    if (points == x.length) {
      x = Arrays.copyOf(x, 2 * points);
      y = Arrays.copyOf(y, 2 * points);
      own = Arrays.copyOf(own, 2 * points);
    }
    x[points] = px;
    y[points] = py;
    own[points++] = original;
  }

  private void begin(int at) {
    if (chunks == starts.length) {
      starts = Arrays.copyOf(starts, 2 * chunks);
    }
    starts[chunks++] = at;
  }

  /** Chunks in all. */
  public int count() {
    return chunks;
  }

  /** First point of a chunk; that of chunk {@link #count()} is the last point of all. */
  public int start(int chunk) {
    return starts[chunk];
  }

  public double x(int point) {
    return x[point];
  }

  public double y(int point) {
    return y[point];
  }

  /** Whether a point is one of the ring's own, not one that only divides a line. */
  public boolean own(int point) {
    return own[point];
  }

  /** Length of a chunk, mm. */
  public double lengthMm(int chunk) {
    double sum = 0;
    for (int i = starts[chunk]; i < starts[chunk + 1]; i++) {
      double dx = x[i + 1] - x[i];
      double dy = y[i + 1] - y[i];
      sum += Math.sqrt(dx * dx + dy * dy);
    }
    return sum;
  }

  /** Neighbouring chunks, over the seam of a closed ring where need be, as an open piece. */
  public Piece piece(int index, int first, int many) {
    double[] px = new double[points + 2];
    double[] py = new double[points + 2];
    int n = 0;
    for (int s = 0; s < many; s++) {
      int c = (first + s) % chunks;
      for (int i = starts[c]; i < starts[c + 1]; i++) {
        if (own[i] || s == 0 && i == starts[c]) {
          px[n] = x[i];
          py[n++] = y[i];
        }
      }
    }
    int end = starts[(first + many - 1) % chunks + 1];
    px[n] = x[end];
    py[n++] = y[end];
    return new Piece(index, false, Arrays.copyOf(px, n), Arrays.copyOf(py, n));
  }
}
