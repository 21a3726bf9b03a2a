package plyscape.bench;

import java.util.Random;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/** Made ground for benchmarks: smooth noise in several octaves, the same for the same seed. */
public final class Relief {

  private Relief() {}

  /**
   * Ground with about as many walls on a panel as a real one of its kind: nine plies over 240 mm
   * give 8.2 mm of wall per 100 mm2, the Eildon Hills 8.0. Elevations as {@link #make}.
   */
  public static double[] downs(int columns, int rows, long seed) {
    return make(columns, rows, seed, 3, 48);
  }

  /**
   * Rough ground: five octaves, 14.8 mm of wall per 100 mm2. Elevations, metres, about 0 to 1000,
   * row by row.
   */
  public static double[] make(int columns, int rows, long seed) {
    return make(columns, rows, seed, 6, 96);
  }

  /** Rolling hills: the three widest octaves of the same, 13.4 mm of wall. */
  public static double[] hills(int columns, int rows, long seed) {
    return make(columns, rows, seed, 6, 24);
  }

  /**
   * Ground that is alike all over: two octaves, the wider one of 24 knots a side, so that a window
   * of an eighth of a side shows as many hills for its area as the whole. About -700 to 700 m.
   */
  public static double[] rolling(int columns, int rows, long seed) {
    return make(columns, rows, seed, 24, 48);
  }

  private static double[] make(int columns, int rows, long seed, int widest, int finest) {
    double[] z = new double[columns * rows];
    double height = 500;
    for (int nodes = widest; nodes <= finest; nodes *= 2) {
      double[] knots =
          new Random(seed + nodes).doubles((long) (nodes + 2) * (nodes + 2), -1, 1).toArray();
      add(z, columns, rows, knots, nodes, height);
      height *= 0.42;
    }
    return z;
  }

  private static void add(
      double[] z, int columns, int rows, double[] knots, int nodes, double height) {
    IntStream.range(0, rows)
        .parallel()
        .forEach(
            r -> {
              double v = (double) r / rows * nodes;
              int j = (int) v;
              double fv = smooth(v - j);
              for (int c = 0; c < columns; c++) {
                double u = (double) c / columns * nodes;
                int i = (int) u;
                double fu = smooth(u - i);
                int k = j * (nodes + 2) + i;
                double south = knots[k] + fu * (knots[k + 1] - knots[k]);
                double north =
                    knots[k + nodes + 2] + fu * (knots[k + nodes + 3] - knots[k + nodes + 2]);
                z[r * columns + c] += height * (south + fv * (north - south));
              }
            });
  }

  private static double smooth(double t) {
    return t * t * t * (t * (6 * t - 15) + 10);
  }

  /** Cells where the ground is lower than the middle. */
  public static boolean[] low(double[] z) {
    boolean[] low = new boolean[z.length];
    for (int i = 0; i < z.length; i++) {
      low[i] = z[i] < 0;
    }
    return low;
  }

  /** Breaks for a number of classes of equal height, falling. */
  public static double[] breaks(double[] z, int classes) {
    double min = Double.POSITIVE_INFINITY;
    double max = Double.NEGATIVE_INFINITY;
    for (double v : z) {
      min = Math.min(min, v);
      max = Math.max(max, v);
    }
    double[] breaks = new double[classes - 1];
    for (int i = 0; i < breaks.length; i++) {
      breaks[i] = max + (min - max) * (i + 1) / classes;
    }
    return breaks;
  }

  /** A path of short lines over a panel, smooth, for parsers and fitters: x, y of each point. */
  public static double[][] walk(int points, double sideMm, long seed) {
    var random = new SplittableRandom(seed);
    double[][] path = new double[points][];
    double x = sideMm / 2;
    double y = sideMm / 2;
    double heading = 0;
    double curvature = 0;
    for (int i = 0; i < points; i++) {
      if (i % 60 == 0) {
        curvature = (random.nextDouble() - 0.5) * 0.6;
      }
      heading += curvature * 0.1;
      x += 0.1 * Math.cos(heading);
      y += 0.1 * Math.sin(heading);
      if (x < 1 || y < 1 || x > sideMm - 1 || y > sideMm - 1) {
        heading = Math.atan2(sideMm / 2 - y, sideMm / 2 - x);
      }
      path[i] = new double[] {x, y};
    }
    return path;
  }
}
