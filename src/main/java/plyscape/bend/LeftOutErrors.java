package plyscape.bend;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * How well readings of a top face are predicted by the others: what each is off the linear map
 * through the rest. Only the neighbours of a reading in the Delaunay triangulation of all are
 * asked: they alone are corners of the triangle that would hold it.
 */
final class LeftOutErrors {

  private static final double LEAST_OUTLIER_MM = 0.3;
  private static final double OUTLIER = 6;

  /** A reading, and how far it lies over what its neighbours say, mm. */
  record Outlier(TopReading reading, double offMm) {}

  private LeftOutErrors() {}

  /** Root mean square over readings inside the hull of the others, mm; empty when none is. */
  static OptionalDouble rmsMm(List<TopReading> readings) {
    double squares = 0;
    int count = 0;
    for (double off : offMm(readings)) {
      if (!Double.isNaN(off)) {
        squares += off * off;
        count++;
      }
    }
    return count == 0 ? OptionalDouble.empty() : OptionalDouble.of(Math.sqrt(squares / count));
  }

  /**
   * The reading that stands out most from its neighbours, by more than 0.3 mm, and by more than six
   * times what all others are off without it. A panel of wood has no such step; a chip under the
   * tip or a slip of the pencil has.
   */
  static Optional<Outlier> outlier(List<TopReading> readings) {
    double[] off = offMm(readings);
    int worst = -1;
    double most = LEAST_OUTLIER_MM;
    for (int i = 0; i < off.length; i++) {
      if (Math.abs(off[i]) > most) {
        most = Math.abs(off[i]);
        worst = i;
      }
    }
    if (worst < 0) {
      return Optional.empty();
    }
    List<TopReading> others = new ArrayList<>(readings);
    others.remove(worst);
    double usual = rmsMm(others).orElse(Double.POSITIVE_INFINITY);
    return most > OUTLIER * usual
        ? Optional.of(new Outlier(readings.get(worst), off[worst]))
        : Optional.empty();
  }

  /** How far each reading lies over what the others say, mm; NaN outside their hull. */
  private static double[] offMm(List<TopReading> readings) {
    List<SortedSet<Integer>> grid = GridTop.neighbours(readings);
    List<SortedSet<Integer>> neighbours = grid != null ? grid : neighbours(readings);
    double[] off = new double[readings.size()];
    for (int i = 0; i < off.length; i++) {
      TopReading reading = readings.get(i);
      List<TopReading> others = neighbours.get(i).stream().map(readings::get).toList();
      off[i] = Double.NaN;
      if (!TopMap.inLine(others)) {
        TriangleTop rest = new TriangleTop(others);
        if (rest.holds(reading.x(), reading.y())) {
          off[i] = reading.z() - rest.heightMm(reading.x(), reading.y());
        }
      }
    }
    return off;
  }

  private static List<SortedSet<Integer>> neighbours(List<TopReading> readings) {
    List<SortedSet<Integer>> out = new ArrayList<>();
    readings.forEach(r -> out.add(new TreeSet<>()));
    Delaunay all =
        new Delaunay(
            readings.stream().mapToDouble(TopReading::x).toArray(),
            readings.stream().mapToDouble(TopReading::y).toArray());
    for (int[] corners : all.triangles()) {
      for (int i = 0; i < 3; i++) {
        out.get(corners[i]).add(corners[(i + 1) % 3]);
        out.get(corners[i]).add(corners[(i + 2) % 3]);
      }
    }
    return out;
  }
}
