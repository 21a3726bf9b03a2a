package plyscape.bands;

import java.util.ArrayList;
import java.util.List;

/**
 * Breaks of {@code bands: natural}: the classes with the least sum of squared deviations from their
 * means (W. D. Fisher, "On grouping for maximum homogeneity", JASA 53, 1958), by dynamic
 * programming over the distinct values. Up to {@value #MOST_BINS} distinct values the result is
 * exact. More are first gathered in that many bins of equal height, whose means and counts keep
 * every sum of squares, so that it is the best of all classings with breaks between bins; moving an
 * optimal break to the next bin adds at most two bin heights to a deviation, so the root mean
 * square deviation is within 2/{@value #MOST_BINS} of the relief of the least there is. Of several
 * optimal classings the one whose breaks are highest wins.
 */
final class FisherBreaks {

  static final int MOST_BINS = 4096;

  private FisherBreaks() {}

  /**
   * Falling breaks, metres, halfway between the values that they part; fewer than asked when there
   * are fewer values.
   *
   * @param rising sorted values, at least one
   */
  static List<Double> breaks(double[] rising, int classes) {
    return breaks(rising, classes, MOST_BINS);
  }

  /** The same with another number of bins. */
  static List<Double> breaks(double[] rising, int classes, int mostBins) {
    Weighted w = Weighted.of(rising, mostBins);
    int k = Math.min(classes, w.size());
    int[][] from = new int[k][w.size()];
    double[] cost = new double[w.size()];
    for (int i = 0; i < w.size(); i++) {
      cost[i] = w.deviation(0, i);
    }
    for (int c = 1; c < k; c++) {
      double[] next = new double[w.size()];
      new Row(w, cost, next, from[c]).fill(c, w.size() - 1, c, w.size() - 1);
      cost = next;
    }
    List<Double> out = new ArrayList<>();
    int end = w.size() - 1;
    for (int c = k - 1; c > 0; c--) {
      int start = from[c][end];
      out.add(w.high[start - 1] + (w.low[start] - w.high[start - 1]) / 2);
      end = start - 1;
    }
    return out;
  }

  /**
   * One class more: its cost and where it begins, for every end.
   *
   * @param before cost of all classes before, by their end
   * @param cost to be filled
   * @param from to be filled
   */
  private record Row(Weighted w, double[] before, double[] cost, int[] from) {

    /**
     * Fills ends lo..hi by halving: the best start never falls as the end rises, since the squared
     * deviation obeys the quadrangle inequality.
     */
    void fill(int lo, int hi, int optLo, int optHi) {
      if (lo > hi) {
        return;
      }
      int mid = (lo + hi) >>> 1;
      double best = Double.POSITIVE_INFINITY;
      int at = -1;
      for (int start = Math.min(mid, optHi); start >= Math.max(1, optLo); start--) {
        double sum = before[start - 1] + w.deviation(start, mid);
        if (sum < best) {
          best = sum;
          at = start;
        }
      }
      cost[mid] = best;
      from[mid] = at;
      fill(lo, mid - 1, optLo, at);
      fill(mid + 1, hi, at, optHi);
    }
  }

  /**
   * Distinct values or bins, rising, with running sums about the middle (so that squares keep their
   * digits).
   */
  private static final class Weighted {

    final double[] low;
    final double[] high;
    private final double[] count;
    private final double[] sum;
    private final double[] squares;

    private Weighted(double[] low, double[] high, double[] means, double[] counts) {
      this.low = low;
      this.high = high;
      this.count = new double[low.length + 1];
      this.sum = new double[low.length + 1];
      this.squares = new double[low.length + 1];
      double middle = (means[0] + means[means.length - 1]) / 2;
      for (int i = 0; i < low.length; i++) {
        double x = means[i] - middle;
        count[i + 1] = count[i] + counts[i];
        sum[i + 1] = sum[i] + counts[i] * x;
        squares[i + 1] = squares[i] + counts[i] * x * x;
      }
    }

    int size() {
      return low.length;
    }

    double deviation(int first, int last) {
      double n = count[last + 1] - count[first];
      double s = sum[last + 1] - sum[first];
      return first == last ? 0 : Math.max(0, squares[last + 1] - squares[first] - s * s / n);
    }

    static Weighted of(double[] rising, int mostBins) {
      double base = rising[0];
      double height = (rising[rising.length - 1] - base) / mostBins;
      boolean binned = distinct(rising) > mostBins;
      double[][] bins = new double[4][Math.min(rising.length, binned ? mostBins : rising.length)];
      int n = 0;
      double key = Double.NaN;
      for (double value : rising) {
        double own = binned ? Math.min(Math.floor((value - base) / height), mostBins - 1) : value;
        if (own != key) {
          key = own;
          bins[0][n] = value;
          n++;
        }
        bins[1][n - 1] = value;
        bins[2][n - 1] += value;
        bins[3][n - 1]++;
      }
      for (int i = 0; i < n; i++) {
        bins[2][i] /= bins[3][i];
      }
      for (int i = 0; i < 4; i++) {
        bins[i] = java.util.Arrays.copyOf(bins[i], n);
      }
      return new Weighted(bins[0], bins[1], bins[2], bins[3]);
    }

    private static int distinct(double[] rising) {
      int n = 1;
      for (int i = 1; i < rising.length; i++) {
        n += rising[i] == rising[i - 1] ? 0 : 1;
      }
      return n;
    }
  }
}
