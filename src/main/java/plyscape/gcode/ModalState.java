package plyscape.gcode;

import plyscape.machine.Move;

/**
 * What a controller remembers from line to line: position, units, distance mode, motion mode, feed,
 * spindle.
 */
final class ModalState {

  /**
   * Most that the radii at an arc's two ends may differ: mm, and in inch mode inches (NISTIR 6556,
   * 3.5.3.2).
   */
  private static final double RADIUS_MM = 0.002;

  private static final double RADIUS_INCH = 0.0002;

  private static final double MM_PER_INCH = 25.4;

  private final ProgramFrame frame;
  // Position in program coordinates, mm.
  private double x;
  private double y;
  private double z;
  private double unit = 1;
  private boolean relative;
  private int motion = -1;
  private double feed;
  private double speed;
  private boolean turning;

  ModalState(ProgramFrame frame, double startDepth) {
    this.frame = frame;
    this.z = frame.programZ(startDepth);
  }

  boolean spindleOn() {
    return turning && speed > 0;
  }

  /**
   * Takes a line's settings, in the standard's order; feeds are read in the units that hold after
   * the line.
   */
  void settings(LineWords w, WordLine words) {
    if (w.g(LineWords.UNITS) >= 0) {
      unit = w.g(LineWords.UNITS) == 200 ? MM_PER_INCH : 1;
    }
    if (w.has('F')) {
      feed = w.value('F') * unit;
      if (feed < 0) {
        throw words.fault(w.index('F'), "a negative feed", "mm or inches a minute");
      }
    }
    if (w.has('S')) {
      speed = w.value('S');
      if (speed < 0) {
        throw words.fault(w.index('S'), "a negative spindle speed", "turns a minute");
      }
    }
    switch (w.m(LineWords.SPINDLE)) {
      case 3, 4 -> turning = true;
      case 5 -> turning = false;
      default -> {}
    }
    if (w.g(LineWords.DWELL) >= 0 && !(w.has('P') && w.value('P') >= 0)) {
      throw words.fault(
          w.gIndex(LineWords.DWELL), "G4 without its seconds", "G4 P and a number from 0");
    }
    if (w.has('P') && w.g(LineWords.DWELL) < 0) {
      throw words.fault(w.index('P'), "P without G4", "P is the time of a dwell");
    }
    if (w.g(LineWords.DISTANCE) >= 0) {
      relative = w.g(LineWords.DISTANCE) == 910;
    }
  }

  /** The line's motion in panel coordinates, or null when there is none. */
  Move motion(LineWords w, WordLine words) {
    int code = w.g(LineWords.MOTION);
    if (code >= 0) {
      motion = code == 800 ? -1 : code / 10;
    }
    if (!w.hasAxis()) {
      if (code >= 0 && code != 800) {
        throw words.fault(
            w.gIndex(LineWords.MOTION),
            "G" + code / 10 + " without X, Y or Z",
            "say where it goes");
      }
      stray(w, words, "IJR", "a motion");
      return null;
    }
    double ex = w.has('X') ? w.value('X') * unit + (relative ? x : 0) : x;
    double ey = w.has('Y') ? w.value('Y') * unit + (relative ? y : 0) : y;
    double ez = w.has('Z') ? w.value('Z') * unit + (relative ? z : 0) : z;
    requireMotion(w, words);
    if (!(Math.abs(ex) < 1e6 && Math.abs(ey) < 1e6 && Math.abs(ez) < 1e6)) {
      throw words.fault(0, "a place more than a kilometre away", "coordinates are mm or inches");
    }
    if (motion > 0 && !(feed > 0)) {
      throw words.fault(0, "a cutting move without a feed", "F must be set before or on this line");
    }
    Move move = motion < 2 ? straight(w, words, ex, ey, ez) : arc(w, words, ex, ey, ez);
    x = ex;
    y = ey;
    z = ez;
    return move;
  }

  private void requireMotion(LineWords w, WordLine words) {
    if (motion < 0) {
      int axis = w.has('X') ? w.index('X') : w.has('Y') ? w.index('Y') : w.index('Z');
      throw words.fault(
          axis, "a coordinate before any motion word", "G0, G1, G2 or G3 must come first");
    }
  }

  private Move straight(LineWords w, WordLine words, double ex, double ey, double ez) {
    stray(w, words, "IJR", "an arc");
    return motion == 0
        ? Move.rapid(frame.panelX(ex), frame.panelY(ey), frame.depth(ez))
        : Move.line(frame.panelX(ex), frame.panelY(ey), frame.depth(ez), feed);
  }

  private Move arc(LineWords w, WordLine words, double ex, double ey, double ez) {
    double[] centre = w.has('R') ? byRadius(w, words, ex, ey) : byOffset(w, words, ex, ey);
    return Move.arc(
        motion == 2,
        frame.panelX(ex),
        frame.panelY(ey),
        frame.depth(ez),
        frame.panelX(centre[0]),
        frame.panelY(centre[1]),
        feed);
  }

  private static void stray(LineWords w, WordLine words, String letters, String of) {
    for (int i = 0; i < letters.length(); i++) {
      char letter = letters.charAt(i);
      if (w.has(letter)) {
        throw words.fault(
            w.index(letter), letter + " without " + of, letter + " belongs to G2 and G3");
      }
    }
  }

  private double[] byOffset(LineWords w, WordLine words, double ex, double ey) {
    int at = w.gIndex(LineWords.MOTION) >= 0 ? w.gIndex(LineWords.MOTION) : 0;
    if (!w.has('X') && !w.has('Y')) {
      throw words.fault(at, "an arc without X and Y", "say where it ends");
    }
    if (!w.has('I') && !w.has('J')) {
      throw words.fault(
          at, "an arc without I and J, or R", "I J give the centre, relative to the start");
    }
    double cx = x + (w.has('I') ? w.value('I') * unit : 0);
    double cy = y + (w.has('J') ? w.value('J') * unit : 0);
    if (!(Math.abs(cx) < 1e6 && Math.abs(cy) < 1e6)) {
      throw words.fault(
          at,
          "an arc centre more than a kilometre away",
          "I J are relative to the start, mm or inches");
    }
    double startRadius = Math.hypot(cx - x, cy - y);
    double endRadius = Math.hypot(cx - ex, cy - ey);
    if (startRadius < 1e-9) {
      throw words.fault(at, "an arc of radius 0", "I J give the centre, relative to the start");
    }
    double limit = unit == 1 ? RADIUS_MM : RADIUS_INCH * MM_PER_INCH;
    if (Math.abs(startRadius - endRadius) > limit + 1e-9) {
      throw words.fault(
          at,
          "an arc whose radius is "
              + mm(startRadius)
              + " mm at its start and "
              + mm(endRadius)
              + " mm at its end",
          "they may differ by " + mm(limit) + " mm");
    }
    return new double[] {cx, cy};
  }

  /**
   * Centre of an arc by its radius: up to half a turn when it is positive, more when negative
   * (3.5.3.1).
   */
  private double[] byRadius(LineWords w, WordLine words, double ex, double ey) {
    if (w.has('I') || w.has('J')) {
      throw words.fault(w.index('R'), "R beside I or J", "either the radius or the centre");
    }
    double r = w.value('R') * unit;
    if (!(Math.abs(r) < 1e6)) {
      throw words.fault(w.index('R'), "a radius of more than a kilometre", "mm or inches");
    }
    double dx = ex - x;
    double dy = ey - y;
    double chord = Math.hypot(dx, dy);
    if (!w.has('X') && !w.has('Y') || chord < 1e-9) {
      throw words.fault(
          w.index('R'), "an arc by radius that ends where it starts", "full circles need I J");
    }
    double limit = unit == 1 ? RADIUS_MM : RADIUS_INCH * MM_PER_INCH;
    if (chord / 2 > Math.abs(r) + limit) {
      throw words.fault(
          w.index('R'),
          "radius " + mm(Math.abs(r)) + " mm for ends " + mm(chord) + " mm apart",
          "at least half of that");
    }
    double height = Math.sqrt(Math.max(0, r * r - chord * chord / 4));
    // Left of the way from start to end for a counterclockwise arc of less than half a turn.
    double side = (motion == 3) == (r > 0) ? 1 : -1;
    return new double[] {
      x + dx / 2 - side * height * dy / chord, y + dy / 2 + side * height * dx / chord,
    };
  }

  private static String mm(double value) {
    StringBuilder out = new StringBuilder();
    GcodeNumber.append(out, GcodeNumber.scaled(value, 4), 4);
    return out.toString();
  }
}
