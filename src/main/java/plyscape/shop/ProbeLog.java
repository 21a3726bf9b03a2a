package plyscape.shop;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import plyscape.gcode.ProgramFrame;
import plyscape.text.Numbers;

/**
 * Probed places out of any text: a line counts when it names X, Y and Z with a number each, or
 * holds one row of exactly three numbers. Of several touches of a place in a row the last counts.
 * Immutable.
 *
 * @param points panel x, y and height as probed, mm
 * @param taken numbers of the lines they are from
 * @param passed numbers of lines with text that hold no place
 */
public record ProbeLog(List<double[]> points, List<Integer> taken, List<Integer> passed) {

  private static final String NUMBER = "[+-]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d+)?";
  private static final Pattern ROW =
      Pattern.compile(NUMBER + "(?:(?:\\s*[,;]\\s*|\\s+)" + NUMBER + ")+");
  private static final Pattern ONE = Pattern.compile(NUMBER);

  /** Touches nearer than this are of one place, mm. */
  private static final double SAME_MM = 0.02;

  /**
   * Reads a text.
   *
   * @param frame where the zero of the work coordinates is on the panel
   */
  public static ProbeLog of(String text, ProgramFrame frame) {
    List<double[]> points = new ArrayList<>();
    List<Integer> taken = new ArrayList<>();
    List<Integer> passed = new ArrayList<>();
    String[] lines = text.split("\r\n|\n|\r", -1);
    for (int i = 0; i < lines.length; i++) {
      double[] work = point(lines[i]);
      if (work == null) {
        if (!lines[i].isBlank()) {
          passed.add(i + 1);
        }
        continue;
      }
      double[] p = {frame.panelX(work[0]), frame.panelY(work[1]), work[2]};
      double[] last = points.isEmpty() ? null : points.get(points.size() - 1);
      if (last != null && Math.hypot(p[0] - last[0], p[1] - last[1]) <= SAME_MM) {
        points.set(points.size() - 1, p);
      } else {
        points.add(p);
      }
      taken.add(i + 1);
    }
    return new ProbeLog(List.copyOf(points), List.copyOf(taken), List.copyOf(passed));
  }

  /** The points as a file of readings. */
  public String csv() {
    StringBuilder out = new StringBuilder("x,y,z\n");
    for (double[] p : points) {
      out.append(Numbers.trimmed(p[0], 4)).append(',').append(Numbers.trimmed(p[1], 4));
      out.append(',').append(Numbers.trimmed(p[2], 4)).append('\n');
    }
    return out.toString();
  }

  /** X, Y and Z of a line, or null. */
  private static double[] point(String line) {
    double[] named = new double[3];
    int found = 0;
    for (int axis = 0; axis < 3; axis++) {
      Matcher m =
          Pattern.compile("(?i)(?<![a-z])" + "xyz".charAt(axis) + "\\s*[:=]?\\s*(" + NUMBER + ")")
              .matcher(line);
      if (m.find()) {
        named[axis] = Double.parseDouble(m.group(1));
        found++;
      }
    }
    if (found == 3) {
      return named;
    }
    double[] row = null;
    Matcher rows = ROW.matcher(line);
    while (rows.find()) {
      double[] numbers =
          ONE.matcher(rows.group())
              .results()
              .mapToDouble(r -> Double.parseDouble(r.group()))
              .toArray();
      if (numbers.length == 3 && row != null) {
        return null; // two rows of three: nobody knows which
      }
      row = numbers.length == 3 ? numbers : row;
    }
    return row;
  }
}
