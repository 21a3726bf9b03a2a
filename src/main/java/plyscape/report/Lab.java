package plyscape.report;

/**
 * Colour distance: CIE 1976 L*a*b* (ISO/CIE 11664-4) of sRGB colours (IEC 61966-2-1), white D65.
 */
final class Lab {

  private Lab() {}

  /** Euclidean distance of two colours 0xRRGGBB, about 2.3 being just noticeable side by side. */
  static double distance(int a, int b) {
    double[] p = lab(a);
    double[] q = lab(b);
    return Math.sqrt(
        Math.pow(p[0] - q[0], 2) + Math.pow(p[1] - q[1], 2) + Math.pow(p[2] - q[2], 2));
  }

  /** {L*, a*, b*}. */
  static double[] lab(int rgb) {
    double r = linear(rgb >> 16 & 255);
    double g = linear(rgb >> 8 & 255);
    double b = linear(rgb & 255);
    double x = f((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.95047);
    double y = f(0.2126 * r + 0.7152 * g + 0.0722 * b);
    double z = f((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.08883);
    return new double[] {116 * y - 16, 500 * (x - y), 200 * (y - z)};
  }

  private static double linear(int channel) {
    double c = channel / 255.0;
    return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
  }

  private static double f(double t) {
    return t > 216.0 / 24389 ? Math.cbrt(t) : (24389.0 / 27 * t + 16) / 116;
  }
}
