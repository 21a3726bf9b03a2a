package plyscape.toolpath.order;

import java.util.Random;

/**
 * Gets a tour out of where no single move helps any more: neighbouring runs somewhere change
 * places, what that spoils is mended near by, and the outcome stays if it is no longer than before,
 * else all is taken back (iterated local search; H. Lourenco, O. Martin, T. Stutzle 2003). Tries
 * are counted, not timed, and chance comes from a seed: the same everywhere.
 */
final class TourShake {

  /** Longest run that changes places. */
  private static final int LONGEST = 30;

  /** Improvements that a try may take before it counts as lost. */
  private static final int MOST_MOVES = 50;

  private TourShake() {}

  /**
   * Shakes a tour that has been improved.
   *
   * @param improve of the same links
   * @return what it won
   */
  static double run(TourLinks links, TourImprove improve, int tries, long seed) {
    Random random = new Random(seed);
    int n = links.n;
    if (n < 4) {
      return 0;
    }
    double won = 0;
    for (int t = 0; t < tries; t++) {
      int first = random.nextInt(n - 1);
      int second = first + 1 + random.nextInt(Math.min(LONGEST, n - 1 - first));
      int end = Math.min(n - 1, second + random.nextInt(LONGEST));
      if (!links.canExchange(first, second, end)) {
        continue;
      }
      double before = links.link(first) + links.link(second) + links.link(end + 1);
      links.mark();
      links.exchange(first, second, end);
      int middle = first + end - second + 1;
      double after = links.link(first) + links.link(middle) + links.link(end + 1);
      improve.broken(first);
      improve.broken(middle);
      improve.broken(end + 1);
      double gain = before - after + improve.run(MOST_MOVES);
      if (gain < -1e-9) {
        links.back();
      } else {
        won += gain;
      }
    }
    return won;
  }
}
