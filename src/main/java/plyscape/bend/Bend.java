package plyscape.bend;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import plyscape.layup.Depths;
import plyscape.layup.PanelPoint;
import plyscape.layup.PlyDepth;

/**
 * Turns a depth of the flat plan, which holds at the panel's centre, into the depth that it means
 * at a place: through the top face, the target depths of all plies and on from the last, linear
 * between them, so that a face in a given share of a ply stays there. And that depth into how far
 * below the flat top face it lies in the panel as it is. Depths in mm, positive down. Immutable.
 */
public final class Bend {

  /** Depths that fall evenly are most unlike at corners; others are looked at in so many steps. */
  private static final int CURVED_STEPS = 12;

  private final TopFace top;
  private final double[] flatMm;
  private final double[] here;
  private final double[] acrossX;
  private final double[] acrossY;
  private final double[] outwards;

  private Bend(TopFace top, List<DepthPlane> planes) {
    this.top = top;
    flatMm = planes.stream().mapToDouble(DepthPlane::flatMm).toArray();
    here = planes.stream().mapToDouble(DepthPlane::here).toArray();
    acrossX = planes.stream().mapToDouble(DepthPlane::acrossX).toArray();
    acrossY = planes.stream().mapToDouble(DepthPlane::acrossY).toArray();
    outwards = planes.stream().mapToDouble(DepthPlane::outwards).toArray();
  }

  /**
   * A bend.
   *
   * @param flat depths that the flat plan goes by
   * @param placed depths of the panel at hand, by place
   * @param top its top face, heights over that of a flat panel
   */
  public static Bend of(Depths flat, Depths placed, TopFace top) {
    List<DepthPlane> planes = new ArrayList<>();
    double last = 0;
    for (PlyDepth at : flat) {
      if (at.targetMm() > last) {
        last = at.targetMm();
        planes.add(plane(at, placed));
      }
    }
    return new Bend(top, planes);
  }

  /**
   * A bend by other depths than the plies' targets.
   *
   * @param top heights over the face of a flat panel
   * @param planes from the top down; none leaves depths as they are
   */
  public static Bend by(TopFace top, List<DepthPlane> planes) {
    return new Bend(top, planes);
  }

  /** Target depth of a ply over the panel; it falls evenly, being a mid-ply depth less sanding. */
  private static DepthPlane plane(PlyDepth at, Depths placed) {
    int ply = at.ply().number();
    double sanding = placed.of(ply).midMm() - placed.of(ply).targetMm();
    return DepthPlane.through(
        at.targetMm(),
        (x, y) -> placed.of(ply, new PanelPoint(x, y)).midMm(),
        placed.bows(),
        sanding);
  }

  /** The top face. */
  public TopFace top() {
    return top;
  }

  /**
   * Depth below the top face at a place that a depth of the flat plan means there; heights above
   * the face stay as they are.
   */
  public double depthMm(double x, double y, double flat) {
    if (flat <= 0 || flatMm.length == 0) {
      return flat;
    }
    double lowFlat = 0;
    double low = 0;
    for (int k = 0; k < flatMm.length; k++) {
      double high =
          Math.max(0, here[k] + acrossX[k] * x + acrossY[k] * y + outwards[k] * (x * x + y * y));
      if (flat <= flatMm[k]) {
        return low + (high - low) * (flat - lowFlat) / (flatMm[k] - lowFlat);
      }
      lowFlat = flatMm[k];
      low = high;
    }
    return low + flat - lowFlat;
  }

  /** Depth below the flat panel's top face that a depth of the flat plan means at a place. */
  public double belowMm(double x, double y, double flat) {
    return depthMm(x, y, flat) - top.heightMm(x, y);
  }

  /**
   * Steepest slope of any ply's target depth below the top face, mm a mm, in a box of the panel.
   */
  public double taper(double widthMm, double heightMm) {
    double steepest = 0;
    for (int k = 0; k < flatMm.length; k++) {
      for (double x : new double[] {0, widthMm}) {
        for (double y : new double[] {0, heightMm}) {
          double alongX = acrossX[k] + 2 * outwards[k] * x;
          double alongY = acrossY[k] + 2 * outwards[k] * y;
          steepest = Math.max(steepest, Math.hypot(alongX, alongY));
        }
      }
    }
    return steepest;
  }

  /**
   * How many times more than in the flat plan wood may be between two depths, at most, anywhere in
   * a box of the panel; at least 1.
   */
  public double stretch(double widthMm, double heightMm) {
    double most = 1;
    boolean curved = Arrays.stream(outwards).anyMatch(o -> o != 0);
    int steps = curved ? CURVED_STEPS : 1;
    for (int i = 0; i <= steps; i++) {
      for (int j = 0; j <= steps; j++) {
        double x = widthMm * i / steps;
        double y = heightMm * j / steps;
        double lowFlat = 0;
        double low = 0;
        for (double flat : flatMm) {
          double high = depthMm(x, y, flat);
          most = Math.max(most, (high - low) / (flat - lowFlat));
          lowFlat = flat;
          low = high;
        }
      }
    }
    return most;
  }
}
