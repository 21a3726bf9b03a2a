package plyscape.gcode;

import plyscape.machine.ArcGeometry;
import plyscape.machine.Move;

/**
 * Writes moves as lines of words, only what changes. It keeps the position as written, so that
 * rounding never adds up: arc offsets are taken from the rounded start, and a word is left out only
 * if the position written before is within half a last place of the wanted one.
 */
final class MoveWriter {

  /**
   * Most that the radii at an arc's two ends may differ, mm: the standard allows 0.002
   * (references.md, section 1).
   */
  private static final double RADIUS_LIMIT = 0.0018;

  /** Chord error of the lines that stand in for an arc that can't be written, mm. */
  private static final double CHORD_ERROR = 0.002;

  /**
   * Longest arc in one word, radians: half circles and more are poorly read by some controls, full
   * ones differ in form.
   */
  private static final double LONGEST_SWEEP = Math.toRadians(181);

  /** Half of the third decimal, with a hair for the noise of doubles, mm. */
  private static final double HALF_PLACE = 0.0005 + 1e-10;

  private final StringBuilder out;
  private final LineText line = new LineText();
  private final ProgramFrame frame;
  private double x = Double.NaN;
  private double y = Double.NaN;
  private double z = Double.NaN;
  // The same as planned, panel mm: tells a full circle from a speck, which rounding can make look
  // alike.
  private double fromX = Double.NaN;
  private double fromY = Double.NaN;
  private double fromDepth = Double.NaN;
  private String motion = "";
  private long feed = -1;

  MoveWriter(StringBuilder out, ProgramFrame frame) {
    this.out = out;
    this.frame = frame;
  }

  /** Says every word again on the next line, so that a pass can be read, or begun, on its own. */
  void restate() {
    motion = "";
    feed = -1;
  }

  /** Goes straight up (or down) to a depth as a rapid. */
  void up(double depth) {
    straight("G0", x, y, frame.programZ(depth), 0);
    fromDepth = depth;
  }

  /** Writes a move that starts where the one before ended. */
  void write(Move move) {
    double px = frame.programX(move.x());
    double py = frame.programY(move.y());
    double pz = frame.programZ(move.depth());
    switch (move.kind()) {
      case RAPID -> straight("G0", px, py, pz, 0);
      case LINE -> straight("G1", px, py, pz, move.feedMmPerMin());
      case CLOCKWISE, COUNTERCLOCKWISE -> {
        if (Double.isNaN(fromX)) {
          throw new IllegalArgumentException(
              "a program can't begin with an arc: its start is unknown");
        }
        arc(move, px, py, pz, ArcGeometry.of(fromX, fromY, 0, move));
      }
    }
    fromX = move.x();
    fromY = move.y();
    fromDepth = move.depth();
  }

  private void straight(String word, double px, double py, double pz, double feedMmPerMin) {
    motion(word);
    boolean moved = false;
    if (differs(px, x)) {
      x = word('X', px, 3);
      moved = true;
    }
    if (differs(py, y)) {
      y = word('Y', py, 3);
      moved = true;
    }
    if (differs(pz, z)) {
      z = word('Z', pz, 3);
      moved = true;
    }
    end(moved, word, feedMmPerMin);
  }

  private void arc(Move move, double px, double py, double pz, ArcGeometry planned) {
    double sweep = planned.sweep();
    if (Math.abs(sweep) > LONGEST_SWEEP) {
      double half = planned.startAngle() + sweep / 2;
      double hx = move.centreX() + planned.radius() * Math.cos(half);
      double hy = move.centreY() + planned.radius() * Math.sin(half);
      double depth = (fromDepth + move.depth()) / 2;
      write(
          new Move(
              move.kind(), hx, hy, depth, move.centreX(), move.centreY(), move.feedMmPerMin()));
      write(move);
      return;
    }
    long i = GcodeNumber.scaled(frame.programX(move.centreX()) - x, 4);
    long j = GcodeNumber.scaled(frame.programY(move.centreY()) - y, 4);
    if (!readsBack(move, px, py, i, j, sweep)) {
      chords(planned, move, pz);
      return;
    }
    String word = move.kind() == Move.Kind.CLOCKWISE ? "G2" : "G3";
    motion(word);
    x = word('X', px, 4); // both are always written, as some controls want them
    y = word('Y', py, 4);
    if (differs(pz, z)) {
      z = word('Z', pz, 3);
    }
    word('I', GcodeNumber.unscaled(i, 4), 4);
    word('J', GcodeNumber.unscaled(j, 4), 4);
    end(true, word, move.feedMmPerMin());
  }

  /**
   * Whether the arc read back from the rounded words passes the radius rule and turns by what it
   * should.
   */
  private boolean readsBack(Move move, double px, double py, long i, long j, double sweep) {
    double ex = GcodeNumber.unscaled(GcodeNumber.scaled(px, 4), 4);
    double ey = GcodeNumber.unscaled(GcodeNumber.scaled(py, 4), 4);
    double cx = x + GcodeNumber.unscaled(i, 4);
    double cy = y + GcodeNumber.unscaled(j, 4);
    ArcGeometry read = ArcGeometry.of(x, y, 0, new Move(move.kind(), ex, ey, 0, cx, cy, 0));
    double endRadius = Math.hypot(ex - cx, ey - cy);
    return (i != 0 || j != 0)
        && Math.abs(endRadius - read.radius()) <= RADIUS_LIMIT
        && Math.abs(read.sweep() - sweep) < 0.1;
  }

  private void chords(ArcGeometry planned, Move move, double pz) {
    double radius = planned.radius();
    double endRadius = Math.hypot(move.x() - move.centreX(), move.y() - move.centreY());
    double larger = Math.max(radius, endRadius);
    double step = larger > CHORD_ERROR ? 2 * Math.acos(1 - CHORD_ERROR / larger) : Math.PI;
    int n = Math.max(1, (int) Math.ceil(Math.abs(planned.sweep()) / step));
    double z0 = frame.programZ(fromDepth);
    for (int k = 1; k <= n; k++) {
      double t = (double) k / n;
      double angle = planned.startAngle() + planned.sweep() * t;
      double r = radius + (endRadius - radius) * t;
      double cx = k == n ? move.x() : move.centreX() + r * Math.cos(angle);
      double cy = k == n ? move.y() : move.centreY() + r * Math.sin(angle);
      straight(
          "G1", frame.programX(cx), frame.programY(cy), z0 + (pz - z0) * t, move.feedMmPerMin());
    }
  }

  private static boolean differs(double wanted, double written) {
    if (Double.isNaN(wanted)) {
      return false; // an axis that has not been moved yet and need not be
    }
    return !(Math.abs(wanted - written) <= HALF_PLACE);
  }

  private double word(char letter, double value, int decimals) {
    long scaled = GcodeNumber.scaled(value, decimals);
    line.word(letter, scaled, decimals);
    return GcodeNumber.unscaled(scaled, decimals);
  }

  private void motion(String word) {
    line.clear();
    if (!motion.equals(word)) {
      line.word(word);
    }
  }

  private void end(boolean moved, String word, double feedMmPerMin) {
    if (!moved) {
      return;
    }
    motion = word;
    if (!word.equals("G0")) {
      long f = GcodeNumber.scaled(feedMmPerMin, 3);
      if (f != feed) {
        line.word('F' + GcodeNumber.shortest(feedMmPerMin));
        feed = f;
      }
    }
    line.end(out);
  }
}
