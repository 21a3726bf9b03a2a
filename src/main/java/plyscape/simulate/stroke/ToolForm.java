package plyscape.simulate.stroke;

import plyscape.machine.Tool;

/**
 * The turned outline of a cutter: how high its surface lies over the tip at a distance from the
 * axis, mm. Flat, ball, or a cone (possibly with a ball at the tip that touches it smoothly) up to
 * the cutting diameter; convex, so the deepest cut along a straight way has one optimum, in closed
 * form. Immutable.
 */
public final class ToolForm {

  /**
   * Taper of a tapered cutter that gives none: 10 degrees a side, a common engraving cone (common
   * practice, no source).
   */
  private static final double USUAL_TAPER_DEGREES = 10;

  private final double radius;
  private final double tipRadius;
  private final double tangentRadius;
  private final double tangentHeight;
  private final double coneTangent;

  private ToolForm(
      double radius,
      double tipRadius,
      double tangentRadius,
      double tangentHeight,
      double coneTangent) {
    this.radius = radius;
    this.tipRadius = tipRadius;
    this.tangentRadius = tangentRadius;
    this.tangentHeight = tangentHeight;
    this.coneTangent = coneTangent;
  }

  /** Outline of a tool. */
  public static ToolForm of(Tool tool) {
    double r = tool.radiusMm();
    return switch (tool.shape()) {
      case FLAT -> new ToolForm(r, 0, 0, 0, Double.POSITIVE_INFINITY);
      case BALL -> new ToolForm(r, r, r, r, 0);
      case TAPERED -> {
        double angle =
            Math.toRadians(tool.taperDegrees() > 0 ? tool.taperDegrees() : USUAL_TAPER_DEGREES);
        double tip = Math.min(tool.tipDiameterMm() / 2, r);
        yield new ToolForm(
            r, tip, tip * Math.cos(angle), tip * (1 - Math.sin(angle)), Math.tan(angle));
      }
    };
  }

  /** A cylinder, as of a shank or a holder. */
  public static ToolForm cylinder(double radius) {
    return new ToolForm(radius, 0, 0, 0, Double.POSITIVE_INFINITY);
  }

  /** Greatest distance of its surface from the axis. */
  public double radius() {
    return radius;
  }

  /** Whether its end is flat. */
  public boolean flat() {
    return Double.isInfinite(coneTangent);
  }

  /** Height over the tip at a distance from the axis of at most the radius. */
  public double height(double distance) {
    if (flat()) {
      return 0;
    }
    if (distance <= tangentRadius) {
      return tipRadius - Math.sqrt(Math.max(0, tipRadius * tipRadius - distance * distance));
    }
    return coneTangent == 0 ? tipRadius : tangentHeight + (distance - tangentRadius) / coneTangent;
  }

  /**
   * Deepest cut at a point beside a straight way, or minus infinity where it isn't touched.
   *
   * @param along position of the point's foot on the way, mm from its start
   * @param aside distance of the point from the way's line
   * @param length of the way seen from above
   * @param z0 depth of the tip at the start
   * @param slope change of depth a mm
   */
  public double deepest(double along, double aside, double length, double z0, double slope) {
    double half = radius * radius - aside * aside;
    if (half < 0) {
      return Double.NEGATIVE_INFINITY;
    }
    half = Math.sqrt(half);
    double low = Math.max(0, along - half);
    double high = Math.min(length, along + half);
    if (low > high) {
      return Double.NEGATIVE_INFINITY;
    }
    if (flat()) {
      return z0 + slope * (slope > 0 ? high : low);
    }
    double best = Double.NEGATIVE_INFINITY;
    double ball = tipRadius * tipRadius - aside * aside;
    if (ball > 0) { // d/ds of slope s + sqrt(ball - (s - along)^2) is 0
      best =
          at(
              clamp(along + slope * Math.sqrt(ball / (1 + slope * slope)), low, high),
              along,
              aside,
              z0,
              slope);
    }
    double steep = slope * coneTangent;
    if (Math.abs(steep) < 1) { // d/ds of slope s - sqrt(aside^2 + (s - along)^2) / tangent is 0
      double s = along + aside * steep / Math.sqrt(1 - steep * steep);
      best = Math.max(best, at(clamp(s, low, high), along, aside, z0, slope));
    }
    return Math.max(best, at(slope > 0 ? high : low, along, aside, z0, slope));
  }

  private double at(double s, double along, double aside, double z0, double slope) {
    double d = Math.min(radius, Math.sqrt(aside * aside + (s - along) * (s - along)));
    return z0 + slope * s - height(d);
  }

  private static double clamp(double value, double low, double high) {
    return Math.min(high, Math.max(low, value));
  }
}
