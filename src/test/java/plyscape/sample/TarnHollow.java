package plyscape.sample;

/**
 * The invented valley: a tarn under a ring of fells, a river that leaves it to the south-west, a
 * beck from the east, flat meadows below. Metres, UTM zone 32 north; 3 km by 3 km. No real place.
 */
final class TarnHollow {

  static final double MIN_X = 412000;
  static final double MIN_Y = 5601000;
  static final double SIZE_M = 3000;
  static final double CELL_M = 5;
  static final int CELLS = 600;
  static final long SEED = 1897;

  /** From the tarn down to the southern edge and past it. */
  static final Course RIVER =
      new Course(
          p(1860, 2080),
          p(1700, 1830),
          p(1780, 1570),
          p(1560, 1330),
          p(1330, 1180),
          p(1400, 930),
          p(1190, 700),
          p(1010, 520),
          p(1080, 250),
          p(960, -60));

  /** From the eastern edge down to the river. */
  static final Course BECK =
      new Course(
          p(3060, 1310),
          p(2740, 1200),
          p(2480, 1260),
          p(2200, 1110),
          p(1900, 1080),
          p(1640, 950),
          p(1400, 930));

  static final double[] TARN_CENTRE = p(1950, 2270);

  private TarnHollow() {}

  /** A point given in metres from the south-west corner. */
  static double[] p(double east, double north) {
    return new double[] {MIN_X + east, MIN_Y + north};
  }

  /** Radius of the tarn's shore in a direction (radians from east). */
  static double tarnRadius(double angle) {
    return 235 + 42 * Math.sin(2 * angle + 0.7) + 18 * Math.sin(3 * angle + 2.1);
  }

  /** Ground height of a place in metres. */
  static double elevation(double x, double y) {
    double river = RIVER.softDistance(x, y);
    double beck = BECK.softDistance(x, y);
    double e = (x - MIN_X) / 1000;
    double n = (y - MIN_Y) / 1000;
    double downstream = Math.log1p(Math.exp(5 * (2.08 - n))) / 10.4;
    double floor = 318 - 96 * downstream;

    double dx = x - TARN_CENTRE[0];
    double dy = y - TARN_CENTRE[1];
    double fromShore = Math.hypot(dx, dy) - tarnRadius(Math.atan2(dy, dx));
    // The valley widens downstream; the ring of fells around the tarn is steep.
    double width = 560 + 520 * downstream;
    double tarn = Math.max(fromShore + 60, 1);
    double away = Math.pow(Math.pow(river, -5) + Math.pow(tarn, -5), -0.2);
    double flank =
        270 * Smooth.step(90, width, away) + 200 * Smooth.step(width * 0.45, 1750, river);
    double ravine = 150 * Math.exp(-Math.pow(beck / 210, 2)) * Smooth.step(120, 700, river);
    double roughness = 0.08 + 0.92 * Smooth.step(150, 800, away);
    double swell = 210 * Smooth.fractal(SEED, e * 1.25, n * 1.25, 2) * roughness;
    double detail = 46 * Smooth.fractal(SEED + 50, e * 4.1, n * 4.1, 3) * roughness;
    double ground = floor + flank - ravine + swell + detail;
    // Summits are rounded off, so that the top ply has some area.
    ground = ground < 600 ? ground : 600 + 300 * Math.tanh((ground - 600) / 330);
    double tarnLevel = 318;
    double basin = Smooth.step(0, 90, fromShore);
    return tarnLevel + (ground - tarnLevel) * basin;
  }

  /**
   * Heights of the raster, row by row from the north, rounded to 1/4 m so that the file packs well.
   */
  static float[] raster() {
    float[] heights = new float[CELLS * CELLS];
    for (int row = 0; row < CELLS; row++) {
      double y = MIN_Y + SIZE_M - (row + 0.5) * CELL_M;
      for (int column = 0; column < CELLS; column++) {
        double x = MIN_X + (column + 0.5) * CELL_M;
        heights[row * CELLS + column] = (float) (Math.rint(elevation(x, y) * 4) / 4);
      }
    }
    return heights;
  }
}
