package plyscape.shop;

import java.util.Arrays;

/**
 * What share of the ground lies above an elevation, from the elevations of cells of equal area.
 * Immutable.
 */
public final class HeightShares {

  private final double[] risingM;

  /** Takes elevations in any order, metres, at least one; NaN is left out. */
  public HeightShares(double[] elevationsM) {
    risingM = Arrays.stream(elevationsM).filter(z -> !Double.isNaN(z)).sorted().toArray();
    if (risingM.length == 0) {
      throw new IllegalArgumentException("no elevations");
    }
  }

  double leastM() {
    return risingM[0];
  }

  double greatestM() {
    return risingM[risingM.length - 1];
  }

  /** Share at or above an elevation: a value on a break goes to the upper ply. */
  double above(double elevationM) {
    int low = 0;
    int high = risingM.length;
    while (low < high) {
      int mid = (low + high) >>> 1;
      if (risingM[mid] < elevationM) {
        low = mid + 1;
      } else {
        high = mid;
      }
    }
    return (double) (risingM.length - low) / risingM.length;
  }

  /**
   * Shares of the ground that plies of given mid-ply depths take when elevation is mapped evenly to
   * depth ({@code bands: scale} of src/contract.md, section 4), and the ply with the nearest
   * mid-ply depth wins.
   *
   * @param midsMm rising, at least one
   */
  double[] byScale(double[] midsMm) {
    int n = midsMm.length;
    double[] shares = new double[n];
    double span = midsMm[n - 1] - midsMm[0];
    double before = 0;
    for (int i = 0; i < n; i++) {
      double down = i + 1 < n ? ((midsMm[i] + midsMm[i + 1]) / 2 - midsMm[0]) / span : 1;
      double above = i + 1 < n ? above(greatestM() - down * (greatestM() - leastM())) : 1;
      shares[i] = above - before;
      before = above;
    }
    return shares;
  }

  /**
   * How evenly shares are spread: 1 when all are alike, near 0 when one has all of many (one less
   * the total variation).
   */
  static double evenness(double[] shares) {
    double off = 0;
    for (double share : shares) {
      off += Math.abs(share - 1.0 / shares.length);
    }
    return 1 - off / 2;
  }
}
