package plyscape.terrain.format;

import java.nio.file.Path;
import java.util.Arrays;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.text.Template;

/**
 * One axis of a grid of points: places in even steps. Immutable.
 *
 * @param first the least coordinate
 * @param step from place to place; 0 when there is only one
 * @param count of places
 */
record XyzAxis(double first, double step, int count) {

  /**
   * Coordinates may be off their place by this share of a step: they are rounded to some decimals,
   * which at an arc-second of six decimals comes to two thousandths.
   */
  private static final double OFF = 0.01;

  /** Coordinates nearer than this share of the whole are the same. */
  private static final double SAME = 1e-9;

  /**
   * The axis that some coordinates lie on.
   *
   * @throws InputFault if they don't lie in even steps
   */
  static XyzAxis of(double[] coordinates, String name, Path file) {
    double[] rising = coordinates.clone();
    Arrays.sort(rising);
    double first = rising[0];
    double whole = rising[rising.length - 1] - first;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 1; i < rising.length; i++) {
      double gap = rising[i] - rising[i - 1];
      if (gap > SAME * whole && gap < least) {
        least = gap;
      }
    }
    if (least == Double.POSITIVE_INFINITY) {
      return new XyzAxis(first, 0, 1);
    }
    double places = Math.rint(whole / least) + 1;
    double step = whole / (places - 1);
    for (double coordinate : rising) {
      double at = (coordinate - first) / step;
      if (places > Integer.MAX_VALUE - 8 || Math.abs(at - Math.rint(at)) > OFF) {
        throw new InputFault(
            Place.file(file.toString()),
            Template.fill(
                "points that don't lie on a grid: %s = %s isn't a whole number of steps of %s from"
                    + " %s",
                name, coordinate, (float) step, first),
            "wanted a regular grid, its axes east and north; grid the points first, or give the"
                + " cloud as LAS");
      }
    }
    return new XyzAxis(first, step, (int) places);
  }

  /** The number of the place, from 0, that a coordinate lies on. */
  int at(double coordinate) {
    return step == 0 ? 0 : (int) Math.rint((coordinate - first) / step);
  }
}
