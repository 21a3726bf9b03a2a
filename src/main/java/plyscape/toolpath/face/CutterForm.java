package plyscape.toolpath.face;

import plyscape.machine.Tool;

/**
 * The planner's outline of a cutter: how high its surface stands over its tip at a distance from
 * the axis, mm. A ball is a half sphere, a tapered cutter a ball that a cone touches, a flat one a
 * plane. Immutable.
 */
final class CutterForm {

  /** A tapered cutter without an angle: 10 degrees a side (common practice). */
  private static final double USUAL_TAPER_DEGREES = 10;

  private final double radiusMm;
  private final double tipRadiusMm;
  private final boolean flat;
  private final double touchMm;
  private final double touchHeightMm;
  private final double rise;

  private CutterForm(double radiusMm, double tipRadiusMm, boolean flat, double degrees) {
    this.radiusMm = radiusMm;
    this.tipRadiusMm = tipRadiusMm;
    this.flat = flat;
    double angle = Math.toRadians(degrees);
    // The cone touches the ball where its side is as steep: at 90 degrees less the taper.
    touchMm = tipRadiusMm * Math.cos(angle);
    touchHeightMm = tipRadiusMm - tipRadiusMm * Math.sin(angle);
    rise = degrees > 0 ? 1 / Math.tan(angle) : Double.POSITIVE_INFINITY;
  }

  static CutterForm of(Tool tool) {
    double taper = tool.taperDegrees() > 0 ? tool.taperDegrees() : USUAL_TAPER_DEGREES;
    return switch (tool.shape()) {
      case FLAT -> new CutterForm(tool.radiusMm(), 0, true, 0);
      case BALL -> new CutterForm(tool.radiusMm(), tool.radiusMm(), false, 0);
      case TAPERED ->
          new CutterForm(
              tool.radiusMm(), Math.min(tool.tipDiameterMm() / 2, tool.radiusMm()), false, taper);
    };
  }

  /** Cutting radius. */
  double radiusMm() {
    return radiusMm;
  }

  /** Radius of the ball at the tip; 0 for a flat cutter or a sharp point. */
  double tipRadiusMm() {
    return tipRadiusMm;
  }

  boolean flat() {
    return flat;
  }

  /** Height over the tip at a squared distance of at most the squared radius. */
  double height(double squared) {
    if (flat) {
      return 0;
    }
    if (squared <= touchMm * touchMm) {
      return tipRadiusMm - Math.sqrt(tipRadiusMm * tipRadiusMm - squared);
    }
    return Double.isInfinite(rise)
        ? tipRadiusMm
        : touchHeightMm + (Math.sqrt(squared) - touchMm) * rise;
  }

  /**
   * Slope of the side from so far within the rim to the rim, mm a mm; infinite for a flat cutter,
   * whose rim is looked at by itself.
   */
  double rimSlope(double withinMm) {
    if (flat) {
      return Double.POSITIVE_INFINITY;
    }
    double from = Math.max(0, radiusMm - withinMm);
    return (height(radiusMm * radiusMm) - height(from * from)) / (radiusMm - from);
  }

  /**
   * Distance of neighbouring passes on level ground whose ridges are as high as said: h = R -
   * sqrt(R2 - s2/4) solved for s (references.md, section 5).
   */
  double stepoverMm(double cuspMm) {
    double c = Math.min(cuspMm, tipRadiusMm);
    return 2 * Math.sqrt(2 * tipRadiusMm * c - c * c);
  }
}
