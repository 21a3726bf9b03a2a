package plyscape.bend;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.locationtech.jts.algorithm.ConvexHull;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import plyscape.grid.Box;
import plyscape.text.Template;

/**
 * The panel's top face as probed: readings and the face through them. Heights in mm, positive up,
 * in the work coordinates in which they were probed. Immutable.
 *
 * @param file where the readings are from
 * @param readings of different places, not all in line
 * @param toleranceMm plus or minus of a reading
 * @param face through the readings: bilinear where they are all the nodes of a rectangular grid,
 *     else linear over their Delaunay triangles
 * @param leftOutRmsMm root mean square of what the map would be off at each reading if that one
 *     were missing, mm; of readings inside the hull of the others only, and empty when none is
 */
public record TopMap(
    String file,
    List<TopReading> readings,
    double toleranceMm,
    TopFace face,
    OptionalDouble leftOutRmsMm) {

  /** Keeps a copy. */
  public TopMap {
    readings = List.copyOf(readings);
  }

  /** The face through some readings. */
  public static TopMap of(String file, List<TopReading> readings, double toleranceMm) {
    TopFace grid = GridTop.of(readings);
    return new TopMap(
        file,
        readings,
        toleranceMm,
        grid != null ? grid : new TriangleTop(readings),
        LeftOutErrors.rmsMm(readings));
  }

  /** Lowest height of the face, which is that of a reading, mm. */
  public double lowMm() {
    return readings.stream().mapToDouble(TopReading::z).min().orElseThrow();
  }

  /** Highest height of the face, which is that of a reading, mm. */
  public double highMm() {
    return readings.stream().mapToDouble(TopReading::z).max().orElseThrow();
  }

  /** What takes the place of the layup's flatness in the depth model, plus or minus mm. */
  public double flatnessMm() {
    return Math.hypot(toleranceMm, leftOutRmsMm.orElse(0));
  }

  /** What stands out of its neighbours so that it is hardly of the panel, in words. */
  public Optional<String> outlier() {
    return LeftOutErrors.outlier(readings)
        .map(
            o ->
                Template.fill(
                    "%.2f mm at (%.2t, %.2t), line %s, is %.2f mm %s what the places around it say;"
                        + " probe it again",
                    o.reading().z(),
                    o.reading().x(),
                    o.reading().y(),
                    o.reading().line(),
                    Math.abs(o.offMm()),
                    o.offMm() > 0 ? "over" : "under"));
  }

  /** The face as heights over another height, mm. */
  public TopFace over(double heightMm) {
    TopFace whole = face;
    return new TopFace() {
      @Override
      public double heightMm(double x, double y) {
        return whole.heightMm(x, y) - heightMm;
      }

      @Override
      public int piece(double x, double y) {
        return whole.piece(x, y);
      }
    };
  }

  /** Share of an area that lies outside the hull of the readings. */
  public double shareBeyond(Box area) {
    GeometryFactory factory = new GeometryFactory();
    Coordinate[] places =
        readings.stream().map(r -> new Coordinate(r.x(), r.y())).toArray(Coordinate[]::new);
    Geometry hull = new ConvexHull(places, factory).getConvexHull();
    Geometry all =
        factory.toGeometry(new Envelope(area.minX(), area.maxX(), area.minY(), area.maxY()));
    return 1 - hull.intersection(all).getArea() / all.getArea();
  }

  /** Whether places lie in a line to within 0.01 mm, or are fewer than three. */
  static boolean inLine(List<TopReading> readings) {
    if (readings.size() < 3) {
      return true;
    }
    TopReading first = readings.get(0);
    TopReading far = first;
    for (TopReading r : readings) {
      far = distance(first, r) > distance(first, far) ? r : far;
    }
    double length = distance(first, far);
    for (TopReading r : readings) {
      double across =
          (far.x() - first.x()) * (r.y() - first.y()) - (far.y() - first.y()) * (r.x() - first.x());
      if (Math.abs(across) > 0.01 * length) {
        return false;
      }
    }
    return true;
  }

  private static double distance(TopReading a, TopReading b) {
    return Math.hypot(a.x() - b.x(), a.y() - b.y());
  }
}
