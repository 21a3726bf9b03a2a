package plyscape.sample;

/**
 * Small smooth functions that the invented valley is built from. All are pure, so the same seed
 * gives the same ground.
 */
final class Smooth {

  private Smooth() {}

  /** 0 below {@code a}, 1 above {@code b}, a cubic between. */
  static double step(double a, double b, double x) {
    double t = Math.min(Math.max((x - a) / (b - a), 0), 1);
    return t * t * (3 - 2 * t);
  }

  /**
   * Value noise in -1..1 over the unit lattice, with quintic blending; {@code StrictMath}-free and
   * so the same everywhere.
   */
  static double noise(long seed, double x, double y) {
    long ix = (long) Math.floor(x);
    long iy = (long) Math.floor(y);
    double fx = quintic(x - ix);
    double fy = quintic(y - iy);
    double south = lattice(seed, ix, iy) * (1 - fx) + lattice(seed, ix + 1, iy) * fx;
    double north = lattice(seed, ix, iy + 1) * (1 - fx) + lattice(seed, ix + 1, iy + 1) * fx;
    return south * (1 - fy) + north * fy;
  }

  /**
   * Sum of octaves of noise, each of half the size and half the height of the one before; in -1..1.
   */
  static double fractal(long seed, double x, double y, int octaves) {
    double sum = 0;
    double weight = 0.5;
    double scale = 1;
    for (int i = 0; i < octaves; i++) {
      sum += weight * noise(seed + i, x * scale, y * scale);
      weight /= 2;
      scale *= 2;
    }
    return sum;
  }

  private static double quintic(double t) {
    return t * t * t * (t * (t * 6 - 15) + 10);
  }

  private static double lattice(long seed, long x, long y) {
    long h = seed * 0x9E3779B97F4A7C15L + x * 0xC2B2AE3D27D4EB4FL + y * 0x165667B19E3779F9L;
    h = (h ^ (h >>> 30)) * 0xBF58476D1CE4E5B9L;
    h = (h ^ (h >>> 27)) * 0x94D049BB133111EBL;
    h ^= h >>> 31;
    return (h >>> 11) * 0x1.0p-52 - 1;
  }
}
