package plyscape.grid;

/**
 * The projection of a WGS 84 UTM zone: degrees to metres and back, within a micrometre up to some
 * ten degrees from the middle of the zone. Transverse Mercator by the Krüger series to the fourth
 * order of the third flattening, as in IOGP Guidance Note 7-2, method 9807, and C. F. F. Karney,
 * "Transverse Mercator with an accuracy of a few nanometers", J. Geodesy 85 (2011). It is here so
 * that the commonest conversion of all needs no CRS register, which takes a second to open.
 * Immutable.
 *
 * @param number zone from 1 to 60
 * @param north whether of the northern hemisphere; the southern one adds 10 000 km to the northing
 */
public record UtmZone(int number, boolean north) {

  private static final double SEMI_MAJOR_M = 6378137;
  private static final double FLATTENING = 1 / 298.257223563;
  private static final double ECCENTRICITY = Math.sqrt(FLATTENING * (2 - FLATTENING));
  private static final double N = FLATTENING / (2 - FLATTENING);

  /** Scale on the middle meridian times the rectifying radius. */
  private static final double RADIUS_M =
      0.9996 * SEMI_MAJOR_M / (1 + N) * (1 + N * N / 4 * (1 + N * N / 16));

  private static final double FALSE_EASTING_M = 500000;
  private static final double FALSE_NORTHING_SOUTH_M = 10000000;

  private static final double[] FORWARD = {
    N * (1 / 2.0 + N * (-2 / 3.0 + N * (5 / 16.0 + N * 41 / 180.0))),
    N * N * (13 / 48.0 + N * (-3 / 5.0 + N * 557 / 1440.0)),
    N * N * N * (61 / 240.0 - N * 103 / 140.0),
    N * N * N * N * 49561 / 161280.0
  };

  private static final double[] INVERSE = {
    -N * (1 / 2.0 + N * (-2 / 3.0 + N * (37 / 96.0 - N / 360.0))),
    -N * N * (1 / 48.0 + N * (1 / 15.0 - N * 437 / 1440.0)),
    -N * N * N * (17 / 480.0 - N * 37 / 840.0),
    -N * N * N * N * 4397 / 161280.0
  };

  /** Checks the number. */
  public UtmZone {
    if (number < 1 || number > 60) {
      throw new IllegalArgumentException("UTM zone " + number);
    }
  }

  /**
   * The plain zone of six degrees of a place, without the exceptions for Norway and Svalbard;
   * degrees.
   */
  public static UtmZone at(double longitude, double latitude) {
    double turned = longitude - 360 * Math.floor((longitude + 180) / 360);
    return new UtmZone(Math.min(60, (int) Math.floor((turned + 180) / 6) + 1), latitude >= 0);
  }

  /**
   * The zone of a code {@code EPSG:32601} to {@code EPSG:32660} or {@code EPSG:32701} to {@code
   * EPSG:32760}, else null.
   */
  public static UtmZone of(String code) {
    if (!code.matches("EPSG:32[67]\\d\\d")) {
      return null;
    }
    int number = Integer.parseInt(code.substring(8));
    return number < 1 || number > 60 ? null : new UtmZone(number, code.charAt(7) == '6');
  }

  /** The EPSG code. */
  public String code() {
    return "EPSG:" + ((north ? 32600 : 32700) + number);
  }

  /** Longitude of the zone's middle, degrees. */
  public double middleLongitude() {
    return number * 6 - 183;
  }

  /**
   * Longitude and latitude in degrees to easting and northing in metres, in place.
   *
   * @param xy pairs; NaN for what lies 90 degrees or more off the zone's middle or isn't a place
   */
  public void fromDegrees(double[] xy, int count) {
    for (int i = 0; i < 2 * count; i += 2) {
      double off = xy[i] - middleLongitude();
      double lambda = StrictMath.toRadians(off - 360 * StrictMath.rint(off / 360));
      double latitude = xy[i + 1];
      if (!(StrictMath.abs(lambda) < StrictMath.PI / 2) || !(StrictMath.abs(latitude) <= 90)) {
        xy[i] = xy[i + 1] = Double.NaN;
        continue;
      }
      double tau = conformal(StrictMath.tan(StrictMath.toRadians(latitude)));
      double cos = StrictMath.cos(lambda);
      double xi = StrictMath.atan2(tau, cos);
      double eta = asinh(StrictMath.sin(lambda) / StrictMath.hypot(tau, cos));
      series(FORWARD, xi, eta, xy, i);
      double northing = xy[i + 1] * RADIUS_M;
      xy[i] = FALSE_EASTING_M + xy[i] * RADIUS_M;
      xy[i + 1] = north ? northing : northing + FALSE_NORTHING_SOUTH_M;
    }
  }

  /** Easting and northing in metres to longitude and latitude in degrees, in place. */
  public void toDegrees(double[] xy, int count) {
    for (int i = 0; i < 2 * count; i += 2) {
      double eta = (xy[i] - FALSE_EASTING_M) / RADIUS_M;
      double xi = (north ? xy[i + 1] : xy[i + 1] - FALSE_NORTHING_SOUTH_M) / RADIUS_M;
      series(INVERSE, xi, eta, xy, i);
      double sinh = StrictMath.sinh(xy[i]);
      double cos = StrictMath.cos(xy[i + 1]);
      double tauPrime = StrictMath.sin(xy[i + 1]) / StrictMath.hypot(sinh, cos);
      xy[i] = middleLongitude() + StrictMath.toDegrees(StrictMath.atan2(sinh, cos));
      xy[i + 1] = StrictMath.toDegrees(StrictMath.atan(unconformal(tauPrime)));
    }
  }

  /**
   * Adds {@code sum c_j sin(2 j zeta)} to zeta = xi + i eta; puts eta and then xi of the result at
   * {@code i}.
   */
  private static void series(double[] c, double xi, double eta, double[] out, int i) {
    double sin = StrictMath.sin(2 * xi);
    double cos = StrictMath.cos(2 * xi);
    double grow = StrictMath.exp(2 * eta);
    double sinh = (grow - 1 / grow) / 2;
    double cosh = (grow + 1 / grow) / 2;
    // Multiples by z^j, z = exp(2 i zeta): sin(a + ib) = sin a cosh b + i cos a sinh b.
    double dXi = 0;
    double dEta = 0;
    double s = 0;
    double k = 1;
    double sh = 0;
    double ch = 1;
    for (double factor : c) {
      double sNext = s * cos + k * sin;
      k = k * cos - s * sin;
      s = sNext;
      double shNext = sh * cosh + ch * sinh;
      ch = ch * cosh + sh * sinh;
      sh = shNext;
      dXi += factor * s * ch;
      dEta += factor * k * sh;
    }
    out[i] = eta + dEta;
    out[i + 1] = xi + dXi;
  }

  /** Tangent of the conformal latitude from that of the latitude (Karney, equations 7 to 9). */
  private static double conformal(double tau) {
    double root = StrictMath.sqrt(1 + tau * tau);
    double sigma = StrictMath.sinh(ECCENTRICITY * atanh(ECCENTRICITY * tau / root));
    return tau * StrictMath.sqrt(1 + sigma * sigma) - sigma * root;
  }

  /**
   * The way back, by Newton's method (Karney, equations 19 to 21): two steps reach full precision,
   * three are taken.
   */
  private static double unconformal(double tauPrime) {
    double flat = 1 - ECCENTRICITY * ECCENTRICITY;
    double tau = tauPrime / flat;
    for (int step = 0; step < 3; step++) {
      double guess = conformal(tau);
      tau +=
          (tauPrime - guess)
              / StrictMath.sqrt(1 + guess * guess)
              * (1 + flat * tau * tau)
              / (flat * StrictMath.sqrt(1 + tau * tau));
    }
    return tau;
  }

  private static double atanh(double x) {
    return StrictMath.log1p(2 * x / (1 - x)) / 2;
  }

  private static double asinh(double x) {
    double size = StrictMath.abs(x);
    double value = StrictMath.log1p(size + size * size / (1 + StrictMath.sqrt(1 + size * size)));
    return x < 0 ? -value : value;
  }
}
