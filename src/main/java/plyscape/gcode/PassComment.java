package plyscape.gcode;

import java.util.Locale;
import java.util.stream.Stream;

/**
 * The comment with which a pass begins in a program: for the person at the machine, and the mark by
 * which a pass is found again in the text.
 */
public final class PassComment {

  private static final String FLAT = "ply ";
  private static final String SCULPTED = "sculpted faces: ";
  private static final String PINS = "pins: ";
  private static final String OUTLINE = "outline: ";

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

  /** Of holes for pins; mm. */
  public static String pins(double diameterMm, double depthMm) {
    return String.format(Locale.ROOT, PINS + "holes of %.3f to depth %.3f", diameterMm, depthMm);
  }

  /** Of a round along the outline; depths in mm. */
  public static String outline(double depthMm, double fromMm) {
    return String.format(Locale.ROOT, OUTLINE + "to depth %.3f from %.3f", depthMm, fromMm);
  }

  /** Whether a program's text bores holes for pins. */
  public static boolean boresPins(String text) {
    return text.contains("\n(" + PINS);
  }

  /** Whether a program's text cuts the outline. */
  public static boolean cutsOutline(String text) {
    return text.contains("\n(" + OUTLINE);
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
    return Stream.of(FLAT, SCULPTED, PINS, OUTLINE).anyMatch(mark -> line.startsWith("(" + mark));
  }
}
