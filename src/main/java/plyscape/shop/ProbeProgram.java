package plyscape.shop;

import java.util.List;
import plyscape.gcode.ProgramFrame;
import plyscape.layup.PanelPoint;
import plyscape.text.Numbers;

/**
 * A program that touches all places by itself, in words of RS274/NGC (straight probe G38.2, section
 * 3.5.9 of the standard: the point that is programmed lies 0.254 mm or more away, no trip is an
 * error, and probing is modal, so that G0 is said again after each touch). One touch fast to find
 * the wood, one slow to measure it; it stops after each for the value to be written down, as plain
 * words can't store it.
 */
public final class ProbeProgram {

  /** Speeds of the two touches, mm/min (common practice, no source). */
  private static final int FAST = 150;

  private static final int SLOW = 30;

  /** The slow touch begins this high over the flat face; higher wood was found by the fast one. */
  private static final double NEAR_MM = 4;

  /** How far below the flat top face the wood is looked for. */
  private static final double BELOW_MM = 4;

  private ProbeProgram() {}

  /**
   * The text, ASCII, LF.
   *
   * @param frame where the programs' zero is
   * @param clearMm height over the flat top face between places
   */
  public static String text(
      String title, ProgramFrame frame, double clearMm, List<PanelPoint> places) {
    StringBuilder out = new StringBuilder();
    double clear = Math.max(clearMm, NEAR_MM + 1);
    for (String line :
        List.of(
            title,
            "probing of the top face: " + places.size() + " places",
            "needs a wired touch probe in the spindle, its wire plugged in and tested:",
            "touch it by hand first, the controller must see it",
            "without one nothing stops Z, and the tip is driven into the wood",
            "spindle off: never start it with a probe in it",
            "set Z0 with the same probe as for the programs, and leave it so",
            "it stops after each slow touch: write down Z, parameter 5063, and go on",
            "caution: check zero, clamps and travel; stay at the stop button",
            "the maker of machine and probe, and local rules, have the last word")) {
      out.append('(').append(ascii(line)).append(")\n");
    }
    out.append("G17 G21 G90 G94 G54\nM5\n");
    out.append("G0 Z").append(mm(frame.programZ(-clear))).append('\n');
    int number = 1;
    for (PanelPoint p : places) {
      String down = mm(frame.programZ(BELOW_MM));
      out.append("(place ").append(number++).append(")\n");
      out.append("G0 X").append(mm(frame.programX(p.xMm())));
      out.append(" Y").append(mm(frame.programY(p.yMm()))).append('\n');
      out.append("G38.2 Z").append(down).append(" F").append(FAST).append('\n');
      out.append("G0 Z").append(mm(frame.programZ(-NEAR_MM))).append('\n');
      out.append("G38.2 Z").append(down).append(" F").append(SLOW).append("\nM0\n");
      out.append("G0 Z").append(mm(frame.programZ(-clear))).append('\n');
    }
    return out.append("M30\n").toString();
  }

  private static String ascii(String line) {
    String plain = line.replaceAll("[^\\x20-\\x7e]", "?").replaceAll("[()]", " ");
    return plain.length() > 76 ? plain.substring(0, 76) : plain;
  }

  private static String mm(double value) {
    return Numbers.trimmed(value, 3);
  }
}
