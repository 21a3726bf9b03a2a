package plyscape.simulate;

import java.util.ArrayList;
import java.util.List;
import plyscape.gcode.ProgramFrame;
import plyscape.simulate.stroke.Stroke;
import plyscape.text.Template;

/**
 * What can be seen in the motions alone, without stock: travel, plunge rate, flute length, the
 * panel's bottom. One finding of a kind a line.
 */
final class MotionChecks {

  private static final double LENGTH_SLACK_MM = 0.0015;

  private final Setup setup;
  private final List<Verification.Collision> found = new ArrayList<>();

  private MotionChecks(Setup setup) {
    this.setup = setup;
  }

  /** Findings of one program, by line. */
  static List<Verification.Collision> of(Setup setup, Cut cut, List<Stroke> strokes) {
    MotionChecks checks = new MotionChecks(setup);
    checks.travel(cut, strokes);
    checks.plunges(cut, strokes);
    int lastDeep = 0;
    int lastThrough = 0;
    for (Stroke stroke : strokes) {
      if (stroke.line() != lastDeep && checks.flutes(cut, stroke)) {
        lastDeep = stroke.line();
      }
      if (stroke.line() != lastThrough
          && checks.pastBottom(stroke) > setup.throughMm() + LENGTH_SLACK_MM) {
        checks.add(
            cut,
            stroke,
            "cuts through the panel, which is "
                + mm(setup.bottomMm(stroke.ends().x1(), stroke.ends().y1()))
                + " mm thick");
        lastThrough = stroke.line();
      }
    }
    return checks.found;
  }

  private void plunges(Cut cut, List<Stroke> strokes) {
    for (PlungeCheck.Fast fast : PlungeCheck.of(cut, strokes, setup.risesMm())) {
      add(
          cut,
          fast.stroke(),
          "plunges at "
              + Math.round(fast.mmPerMin())
              + " mm/min, the tool's plunge is "
              + Math.round(cut.tool().plungeMmPerMin()));
    }
  }

  /** How far a stroke's tip goes below the top face where it begins or ends, mm. */
  private double below(Stroke stroke) {
    return Math.max(
        stroke.ends().z0() - setup.faceMm(stroke.ends().x0(), stroke.ends().y0()),
        stroke.ends().z1() - setup.faceMm(stroke.ends().x1(), stroke.ends().y1()));
  }

  /** The same below the panel's bottom. */
  private double pastBottom(Stroke stroke) {
    return Math.max(
        stroke.ends().z0()
            - setup.faceMm(stroke.ends().x0(), stroke.ends().y0())
            - setup.bottomMm(stroke.ends().x0(), stroke.ends().y0()),
        stroke.ends().z1()
            - setup.faceMm(stroke.ends().x1(), stroke.ends().y1())
            - setup.bottomMm(stroke.ends().x1(), stroke.ends().y1()));
  }

  private boolean flutes(Cut cut, Stroke stroke) {
    double flute = cut.tool().fluteLengthMm();
    if (flute <= 0
        || cut.tool().shankDiameterMm() > 0
        || below(stroke) <= flute + LENGTH_SLACK_MM) {
      return false; // with a shank's diameter the field itself tells whether it touches
    }
    add(cut, stroke, "is deeper than the flutes are long, " + mm(flute) + " mm");
    return true;
  }

  private void travel(Cut cut, List<Stroke> strokes) {
    ProgramFrame frame =
        ProgramFrame.of(
            setup.machine(), setup.panel().maxX(), setup.panel().maxY(), setup.thicknessMm());
    double[] low = {frame.zeroX(), frame.zeroY(), frame.zeroDepth()};
    double[] high = low.clone();
    double[] limit = {
      setup.machine().travelXMm(), setup.machine().travelYMm(), setup.machine().travelZMm()
    };
    boolean[] told = new boolean[3];
    for (Stroke s : strokes) {
      double[] from = {s.minX(), s.minY(), Math.min(s.ends().z0(), s.ends().z1())};
      double[] to = {s.maxX(), s.maxY(), s.deepestTip()};
      for (int axis = 0; axis < 3; axis++) {
        low[axis] = Math.min(low[axis], from[axis]);
        high[axis] = Math.max(high[axis], to[axis]);
        if (!told[axis] && high[axis] - low[axis] > limit[axis] + LENGTH_SLACK_MM) {
          told[axis] = true;
          add(
              cut,
              s,
              Template.fill(
                  "needs more than the %s mm that the %s axis may use",
                  mm(limit[axis]), "XYZ".charAt(axis)));
        }
      }
    }
  }

  private void add(Cut cut, Stroke stroke, String what) {
    found.add(
        new Verification.Collision(
            cut.program().file(),
            stroke.line(),
            stroke.ends().x1(),
            stroke.ends().y1(),
            stroke.deepestTip(),
            what));
  }

  private static String mm(double value) {
    return Template.fill("%.3f", value).replaceAll("\\.?0+$", "");
  }
}
