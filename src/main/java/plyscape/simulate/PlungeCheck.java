package plyscape.simulate;

import java.util.ArrayList;
import java.util.List;
import plyscape.gcode.Program;
import plyscape.simulate.stroke.Stroke;

/**
 * Finds where a program goes down into the panel faster than the cutter's plunge: the Z share of
 * its feed, on ramps too.
 *
 * <p>Z is rounded to 0.001 mm at both ends of a move, which makes short pieces of a ramp steeper or
 * flatter than meant. So moves that go down one after the other are judged together, until they
 * have come down by {@link #LEAST_MM}, with that rounding allowed once.
 */
final class PlungeCheck {

  /** Depth over which a rate is judged, mm: rounding is then a fiftieth of it. */
  private static final double LEAST_MM = 0.05;

  /** What rounding at both ends may add, mm. */
  private static final double ROUNDING_MM = 0.001;

  /** Feeds are written with three decimals, lengths too. */
  private static final double SLACK = 1.02;

  /** Too fast: the last move of those judged together, and their rate. */
  record Fast(Stroke stroke, double mmPerMin) {}

  private final double plunge;
  private final double risesMm;
  private final List<Fast> found = new ArrayList<>();
  private double downMm;
  private double minutes;
  private Stroke last;

  private PlungeCheck(double plunge, double risesMm) {
    this.risesMm = risesMm;
    this.plunge = plunge;
  }

  /**
   * The places, at most one a line.
   *
   * @param risesMm how far the panel's face stands over that of a flat one; above is air
   */
  static List<Fast> of(Cut cut, List<Stroke> strokes, double risesMm) {
    PlungeCheck check = new PlungeCheck(cut.tool().plungeMmPerMin(), risesMm);
    if (check.plunge <= 0) {
      return List.of();
    }
    List<Program.Block> blocks = cut.program().blocks();
    int index = 0;
    for (Stroke stroke : strokes) {
      while (blocks.get(index).line() < stroke.line()) {
        index++;
      }
      check.take(stroke, blocks.get(index).move().feedMmPerMin());
    }
    check.judge();
    return check.found;
  }

  private void take(Stroke stroke, double feed) {
    double down = stroke.ends().z1() - stroke.ends().z0();
    if (feed <= 0 || down <= 0 || stroke.ends().z1() <= -risesMm) {
      judge(); // going up or level, or down to the face through air
      return;
    }
    downMm += down;
    minutes += Math.hypot(stroke.length(), down) / feed;
    last = stroke;
    if (downMm >= LEAST_MM) {
      judge();
    }
  }

  private void judge() {
    double certain = minutes > 0 ? (downMm - ROUNDING_MM) / minutes : 0;
    boolean told =
        !found.isEmpty()
            && last != null
            && found.get(found.size() - 1).stroke().line() == last.line();
    if (certain > plunge * SLACK && !told) {
      found.add(new Fast(last, downMm / minutes));
    }
    downMm = 0;
    minutes = 0;
  }
}
