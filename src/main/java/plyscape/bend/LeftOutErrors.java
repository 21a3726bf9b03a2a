package plyscape.bend;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * How well readings of a top face are predicted by the others: what each is off the linear map
 * through the rest. Only the neighbours of a reading in the Delaunay triangulation of all are
 * asked: they alone are corners of the triangle that would hold it.
 */
final class LeftOutErrors {

  private LeftOutErrors() {}

  /** Root mean square over readings inside the hull of the others, mm; empty when none is. */
  static OptionalDouble rmsMm(List<TopReading> readings) {
    List<SortedSet<Integer>> neighbours = neighbours(readings);
    double squares = 0;
    int count = 0;
    for (int i = 0; i < readings.size(); i++) {
      TopReading reading = readings.get(i);
      List<TopReading> others = neighbours.get(i).stream().map(readings::get).toList();
      if (TopMap.inLine(others)) {
        continue;
      }
      TriangleTop rest = new TriangleTop(others);
      if (rest.holds(reading.x(), reading.y())) {
        double off = reading.z() - rest.heightMm(reading.x(), reading.y());
        squares += off * off;
        count++;
      }
    }
    return count == 0 ? OptionalDouble.empty() : OptionalDouble.of(Math.sqrt(squares / count));
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
