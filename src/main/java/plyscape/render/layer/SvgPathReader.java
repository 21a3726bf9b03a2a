package plyscape.render.layer;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import plyscape.fault.InputFault;
import plyscape.fault.Place;

/** Takes path data of absolute M L H V Z apart into closed rings, and turns Y up. */
final class SvgPathReader {

  /**
   * Coordinates are on a grid of 0.001 mm: turning Y over must give the very numbers that the plan
   * was made with, or ties of distances fall otherwise than they did in its proof.
   */
  private static final double PER_MM = 1000;

  private final Place place;
  private final String data;

  private final double heightMm;
  private final List<double[]> rings = new ArrayList<>();
  private int at;

  /** Of the ring that is being read: x, y, x, y ...; none before its M and after its Z. */
  private double[] points = new double[64];

  private int count;
  private double x;
  private double y;

  SvgPathReader(Place place, String data, double heightMm) {
    this.place = place;
    this.data = data;
    this.heightMm = heightMm;
  }

  /** Rings as x, y, x, y ... in panel mm, Y up. To be asked once. */
  List<double[]> rings() {
    char command = 0;
    for (skip(); at < data.length(); skip()) {
      char c = data.charAt(at);
      if (Character.isLetter(c)) {
        command = c;
        at++;
      } else if (command == 'M') {
        command = 'L'; // more pairs after M are lines (SVG 1.1, 8.3.2)
      } else if (command == 'Z' || command == 0) {
        throw fault("a number without a command");
      }
      if (command == 'Z') {
        close();
      } else {
        point(command);
      }
    }
    if (count > 0) {
      throw fault("a ring that isn't closed");
    }
    return rings;
  }

  private void close() {
    if (count < 6) {
      throw fault("Z without a ring of three points");
    }
    rings.add(Arrays.copyOf(points, count));
    count = 0;
  }

  /** The next point of a ring, or its first. */
  private void point(char command) {
    if (command != 'M' && count == 0) {
      throw fault("\"" + command + "\" outside a ring");
    }
    switch (command) {
      case 'M' -> {
        if (count > 0) {
          throw fault("a ring that isn't closed");
        }
        x = number();
        y = number();
      }
      case 'L' -> {
        x = number();
        y = number();
      }
      case 'H' -> x = number();
      case 'V' -> y = number();
      default -> throw fault("command \"" + command + "\"");
    }
    if (count + 2 > points.length) {
      points = Arrays.copyOf(points, 2 * count);
    }
    points[count++] = x;
    points[count++] = Math.rint((heightMm - y) * PER_MM) / PER_MM;
  }

  private void skip() {
    while (at < data.length()
        && (Character.isWhitespace(data.charAt(at)) || data.charAt(at) == ',')) {
      at++;
    }
  }

  private double number() {
    skip();
    int from = at;
    while (at < data.length()
        && "+-.0123456789".indexOf(data.charAt(at)) >= 0
        && (at == from || data.charAt(at) != '-')) {
      at++;
    }
    try {
      return Double.parseDouble(data.substring(from, at));
    } catch (NumberFormatException e) {
      throw new InputFault(
          place,
          "no number at character " + (from + 1) + " of the path data",
          "write the plan again",
          e);
    }
  }

  private InputFault fault(String what) {
    return new InputFault(
        place,
        what + " at character " + at + " of the path data",
        "only M L H V Z in closed rings");
  }
}
