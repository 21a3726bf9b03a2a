package plyscape.gcode;

import java.util.Locale;

/**
 * The comment with which a pass begins in a program: for the person at the machine, and the mark by
 * which a pass is found again in the text.
 */
public final class PassComment {

  private static final String FLAT = "ply ";
  private static final String SCULPTED = "sculpted faces: ";

  private PassComment() {}

  /** Of a pass at one depth; depths in mm. */
  public static String flat(int plyNumber, String plyName, double depthMm, double fromMm) {
    return String.format(
        Locale.ROOT, FLAT + "%d %s: to depth %.3f from %.3f", plyNumber, plyName, depthMm, fromMm);
  }

  /** Of a pass that finishes sculpted faces; depths in mm. */
  public static String sculpted(double shallowMm, double deepMm, double ridgesMm) {
    return String.format(
        Locale.ROOT,
        SCULPTED + "depths %.3f to %.3f, ridges up to %.3f",
        shallowMm,
        deepMm,
        ridgesMm);
  }

  /** The last line of the number-th pass of a program's text, from 1; the last of all if none. */
  public static int lastLine(String text, long number) {
    int line = 0;
    long seen = 0;
    for (String words : (Iterable<String>) text.lines()::iterator) {
      if (begins(words) && ++seen > number) {
        return line;
      }
      line++;
    }
    return line;
  }

  private static boolean begins(String line) {
    return line.startsWith("(" + FLAT) || line.startsWith("(" + SCULPTED);
  }
}
