package plyscape.layup.statistics;

/**
 * Standard normal values from a seed, the same on every machine and Java version: SplitMix64
 * (Steele, Lea, Flood, OOPSLA 2014) made normal by Marsaglia's polar method. Not safe for use by
 * several threads.
 */
public final class SeededNormals {

  private long state;
  private double spare = Double.NaN;

  /** Starts a sequence. */
  public SeededNormals(long seed) {
    state = seed;
  }

  /** The next standard normal value. */
  public double next() {
    if (!Double.isNaN(spare)) {
      double value = spare;
      spare = Double.NaN;
      return value;
    }
    while (true) {
      double u = 2 * uniform() - 1;
      double v = 2 * uniform() - 1;
      double s = u * u + v * v;
      if (s > 0 && s < 1) {
        double scale = Math.sqrt(-2 * StrictMath.log(s) / s);
        spare = v * scale;
        return u * scale;
      }
    }
  }

  /** The next value spread evenly over 0 (included) to 1 (not included). */
  public double uniform() {
    state += 0x9e3779b97f4a7c15L;
    long z = state;
    z = (z ^ (z >>> 30)) * 0xbf58476d1ce4e5b9L;
    z = (z ^ (z >>> 27)) * 0x94d049bb133111ebL;
    return ((z ^ (z >>> 31)) >>> 11) * 0x1p-53;
  }
}
