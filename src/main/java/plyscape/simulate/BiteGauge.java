package plyscape.simulate;

import java.util.List;
import plyscape.grid.CellFrame;
import plyscape.simulate.stroke.Stroke;
import plyscape.simulate.stroke.ToolForm;

/**
 * Keeps the deepest bite that the strokes of one program took, in the rows of one thread.
 *
 * <p>A cell's bite is what a stroke lowers it by. Two kinds of cells are aside (src/contract.md,
 * section 9): those within 0.05 mm of a wall, where an earlier cutter may have left wood of any
 * height, and those that lie within 0.05 mm of the edge of all that the cutter sweeps as it goes
 * on, slivers between two ways. What the next moves sweep further inside, and as deep, counts, so
 * that cutting into solid wood in tiny moves is a bite like any other.
 */
final class BiteGauge {

  /** Wood this near to the edge of the sweep is a sliver, mm. */
  private static final double RIM_MM = 0.05;

  /** Z is rounded to 0.001 mm. */
  private static final double SAME_MM = 0.001;

  private final CellFrame frame;
  private final Rim walls;
  private final Stroke[] strokes;
  private final ToolForm form;
  private float deepest;
  private int stroke = -1;
  private int first = Integer.MAX_VALUE;
  private int cell;
  private float floor;

  /**
   * @param walls where walls stand
   * @param strokes of the program
   * @param form of its cutter
   */
  BiteGauge(CellFrame frame, Rim walls, Stroke[] strokes, ToolForm form) {
    this.frame = frame;
    this.walls = walls;
    this.strokes = strokes;
    this.form = form;
  }

  /** Bites up to this say nothing new, mm. */
  float deepestMm() {
    return deepest;
  }

  /** Takes a bite that is deeper than {@link #deepestMm}. */
  void deeper(int ofStroke, int atCell, float before, float after) {
    first = Math.min(first, ofStroke);
    double x = frame.centreX(atCell % frame.columns());
    double y = frame.centreY(atCell / frame.columns());
    if (inside(ofStroke, x, y, after) && !walls.isAt(x, y, after)) {
      deepest = after - before;
      stroke = ofStroke;
      cell = atCell;
      floor = after;
    }
  }

  /**
   * Whether the stroke, or one of those with which it goes on for a diameter's length, comes nearer
   * to a place than the rim is wide, no less deep there.
   */
  private boolean inside(int first, double x, double y, float after) {
    double radius = form.radius();
    double reach = Math.max(radius - RIM_MM, radius / 2);
    double gone = 0;
    for (int i = first; i < strokes.length && gone <= 2 * radius; i++) {
      Stroke s = strokes[i];
      if (i > first && s.mustNotCut()) {
        return false;
      }
      double[] p = s.point(s.nearest(x, y));
      if (Math.hypot(p[0] - x, p[1] - y) <= reach
          && (i == first || s.deepest(form, x, y) >= after - SAME_MM)) {
        return true;
      }
      gone += i > first ? s.length() : 0;
    }
    return false;
  }

  /** Both: the deeper bite, of the same depth that of the earlier stroke. */
  BiteGauge with(BiteGauge other) {
    boolean mine = deepest > other.deepest || deepest == other.deepest && stroke <= other.stroke;
    BiteGauge both = mine ? this : other;
    both.first = Math.min(first, other.first);
    return both;
  }

  /** Index of the first stroke that cut anything, -1 when none did. */
  int firstContact() {
    return first == Integer.MAX_VALUE ? -1 : first;
  }

  /** The bite, or null when nothing was cut. */
  Bite of(Cut cut, List<Stroke> all) {
    return stroke < 0
        ? null
        : new Bite(
            cut.program().file(),
            all.get(stroke).line(),
            frame.centreX(cell % frame.columns()),
            frame.centreY(cell / frame.columns()),
            rounded(floor),
            rounded(deepest),
            cut.tool().stepdownMm());
  }

  /** Without the noise of floats. */
  private static double rounded(float mm) {
    return Math.rint(mm * 1e5) / 1e5;
  }
}
