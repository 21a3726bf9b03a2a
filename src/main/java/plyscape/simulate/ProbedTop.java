package plyscape.simulate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;

/**
 * The top face of a panel through its probed heights (src/contract.md, section 11), by
 * interpolation of the simulation's own: bilinear where the readings are all the nodes of a
 * rectangular grid, else linear over their Delaunay triangles; beyond them the height of the
 * nearest place of their hull. Immutable.
 */
public final class ProbedTop {

  /** Readings nearer than this are one place, and grid lines one line, mm. */
  private static final double SAME_MM = 0.01;

  private final double[] xs;
  private final double[] ys;

  /** Heights at the nodes, row by row; null where the readings are scattered. */
  private final double[] nodes;

  private final Triangles triangles;
  private final double highestMm;

  private ProbedTop(double[] xs, double[] ys, double[] nodes, Triangles triangles, double highest) {
    this.xs = xs;
    this.ys = ys;
    this.nodes = nodes;
    this.triangles = triangles;
    this.highestMm = highest;
  }

  /**
   * A face.
   *
   * @param readings x, y and height each, mm; heights over the face of a flat panel, positive up
   * @throws IllegalArgumentException if fewer than three places are not in line
   */
  public static ProbedTop of(List<double[]> readings) {
    List<double[]> places = places(readings);
    double highest = places.stream().mapToDouble(p -> p[2]).max().orElseThrow();
    double[] xs = lines(places, 0);
    double[] ys = lines(places, 1);
    if (xs.length >= 2 && ys.length >= 2 && xs.length * ys.length == places.size()) {
      double[] nodes = new double[places.size()];
      boolean[] set = new boolean[places.size()];
      for (double[] p : places) {
        int node = nearest(ys, p[1]) * xs.length + nearest(xs, p[0]);
        nodes[node] = p[2];
        set[node] = true;
      }
      boolean all = true;
      for (boolean one : set) {
        all &= one;
      }
      if (all) {
        return new ProbedTop(xs, ys, nodes, null, highest);
      }
    }
    return new ProbedTop(xs, ys, null, Triangles.over(places), highest);
  }

  /** Readings at one place are averaged. */
  private static List<double[]> places(List<double[]> readings) {
    List<double[]> places = new ArrayList<>();
    TreeMap<Double, List<double[]>> byX = new TreeMap<>();
    for (double[] r : readings) {
      double[] same =
          byX.subMap(r[0] - SAME_MM, true, r[0] + SAME_MM, true).values().stream()
              .flatMap(List::stream)
              .filter(p -> Math.hypot(p[0] - r[0], p[1] - r[1]) <= SAME_MM)
              .findFirst()
              .orElse(null);
      if (same == null) {
        double[] place = {r[0], r[1], r[2], 1};
        places.add(place);
        byX.computeIfAbsent(r[0], key -> new ArrayList<>()).add(place);
      } else {
        same[2] = (same[2] * same[3] + r[2]) / (same[3] + 1);
        same[3]++;
      }
    }
    return places;
  }

  private static double[] lines(List<double[]> places, int axis) {
    double[] all = places.stream().mapToDouble(p -> p[axis]).sorted().toArray();
    int count = 0;
    for (double value : all) {
      if (count == 0 || value - all[count - 1] > SAME_MM) {
        all[count++] = value;
      }
    }
    return Arrays.copyOf(all, count);
  }

  private static int nearest(double[] lines, double value) {
    int best = 0;
    for (int i = 1; i < lines.length; i++) {
      if (Math.abs(lines[i] - value) < Math.abs(lines[best] - value)) {
        best = i;
      }
    }
    return best;
  }

  /** Highest place, mm. */
  public double highestMm() {
    return highestMm;
  }

  /** Height at a place, mm. */
  public double heightMm(double x, double y) {
    return nodes == null ? triangles.heightMm(x, y) : bilinear(x, y);
  }

  private double bilinear(double x, double y) {
    int i = cell(xs, x);
    int j = cell(ys, y);
    double u = share(xs[i], xs[i + 1], x);
    double v = share(ys[j], ys[j + 1], y);
    int at = j * xs.length + i;
    double south = nodes[at] + u * (nodes[at + 1] - nodes[at]);
    int up = at + xs.length;
    double north = nodes[up] + u * (nodes[up + 1] - nodes[up]);
    return south + v * (north - south);
  }

  private static int cell(double[] lines, double value) {
    int i = 0;
    while (i < lines.length - 2 && value > lines[i + 1]) {
      i++;
    }
    return i;
  }

  private static double share(double low, double high, double value) {
    return Math.max(0, Math.min(1, (value - low) / (high - low)));
  }
}
