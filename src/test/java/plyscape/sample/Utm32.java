package plyscape.sample;

/**
 * Longitude and latitude of a point in WGS 84 / UTM zone 32 north, by the inverse Krüger series to
 * n^4 (IOGP method 9807). Written apart from the reprojection that the program uses, so that the
 * sample's map also checks it.
 */
final class Utm32 {

  private static final double A = 6378137;
  private static final double F = 1 / 298.257223563;
  private static final double N = F / (2 - F);
  private static final double RECTIFYING = A / (1 + N) * (1 + N * N / 4 + N * N * N * N / 64);
  private static final double[] BETA = {
    N / 2 - 2 * N * N / 3 + 37 * Math.pow(N, 3) / 96 - Math.pow(N, 4) / 360,
    N * N / 48 + Math.pow(N, 3) / 15 - 437 * Math.pow(N, 4) / 1440,
    17 * Math.pow(N, 3) / 480 - 37 * Math.pow(N, 4) / 840,
    4397 * Math.pow(N, 4) / 161280
  };

  private Utm32() {}

  /** {longitude, latitude} in degrees. */
  static double[] lonLat(double east, double north) {
    double xi = north / (0.9996 * RECTIFYING);
    double eta = (east - 500000) / (0.9996 * RECTIFYING);
    double xi0 = xi;
    double eta0 = eta;
    for (int j = 1; j <= BETA.length; j++) {
      xi0 -= BETA[j - 1] * Math.sin(2 * j * xi) * Math.cosh(2 * j * eta);
      eta0 -= BETA[j - 1] * Math.cos(2 * j * xi) * Math.sinh(2 * j * eta);
    }
    double conformal = Math.asin(Math.sin(xi0) / Math.cosh(eta0));
    double e = Math.sqrt(F * (2 - F));
    double isometric = Math.log(Math.tan(Math.PI / 4 + conformal / 2));
    double latitude = conformal;
    for (int i = 0; i < 12; i++) {
      double es = e * Math.sin(latitude);
      latitude =
          2 * Math.atan(Math.exp(isometric + e / 2 * Math.log((1 + es) / (1 - es)))) - Math.PI / 2;
    }
    double longitude = Math.atan2(Math.sinh(eta0), Math.cos(xi0));
    return new double[] {9 + Math.toDegrees(longitude), Math.toDegrees(latitude)};
  }
}
