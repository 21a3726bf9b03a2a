package plyscape.toolpath;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.polygonize.Polygonizer;
import plyscape.grid.Box;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.Ring;
import plyscape.toolpath.ring.RingTracer;
import plyscape.toolpath.task.PocketLevel;

/** Nested pockets from seeded hills and valleys, for tests and trials. */
public final class RandomPockets {

  private static final GeometryFactory FACTORY = new GeometryFactory();

  private RandomPockets() {}

  /**
   * Levels 2.. of a panel of a size, with equal parts of the height range; hills about as wide as
   * asked.
   */
  public static List<PocketLevel> make(
      long seed, Box carved, int plies, double pitchMm, double hillMm) {
    Random random = new Random(seed);
    int hills = (int) Math.max(4, 2 * carved.area() / (hillMm * hillMm));
    double[][] hill = new double[hills][];
    for (int i = 0; i < hills; i++) {
      hill[i] =
          new double[] {
            carved.minX() + random.nextDouble() * carved.width(),
            carved.minY() + random.nextDouble() * carved.height(),
            hillMm * (0.4 + random.nextDouble()),
            random.nextDouble() * 2 - 1
          };
    }
    double h = 0.25;
    Lattice lattice =
        new Lattice(
            carved.minX(),
            carved.minY(),
            h,
            (int) Math.round(carved.width() / h) + 1,
            (int) Math.round(carved.height() / h) + 1);
    float[] z = new float[lattice.size()];
    float low = Float.POSITIVE_INFINITY;
    float high = Float.NEGATIVE_INFINITY;
    for (int j = 0; j < lattice.rows(); j++) {
      for (int i = 0; i < lattice.columns(); i++) {
        double sum = 0;
        for (double[] one : hill) {
          double dx = (lattice.x(i) - one[0]) / one[2];
          double dy = (lattice.y(j) - one[1]) / one[2];
          double q = dx * dx + dy * dy;
          if (q < 12) {
            sum += one[3] * Math.exp(-q);
          }
        }
        z[j * lattice.columns() + i] = (float) sum;
        low = Math.min(low, (float) sum);
        high = Math.max(high, (float) sum);
      }
    }
    List<MultiPolygon> pockets = new ArrayList<>();
    for (int k = 1; k < plies; k++) {
      double level = high - (high - low) * k / plies;
      pockets.add(below(z, lattice, carved, level));
    }
    List<PocketLevel> levels = new ArrayList<>();
    for (int k = 0; k < pockets.size(); k++) {
      Geometry exposed =
          k + 1 < pockets.size() ? pockets.get(k).difference(pockets.get(k + 1)) : pockets.get(k);
      levels.add(
          new PocketLevel(
              k + 2, pitchMm * (k + 1) + pitchMm / 2 - 0.1, pockets.get(k), multi(exposed)));
    }
    return levels;
  }

  public static MultiPolygon multi(Geometry geometry) {
    List<Polygon> polygons = new ArrayList<>();
    for (int i = 0; i < geometry.getNumGeometries(); i++) {
      if (geometry.getGeometryN(i) instanceof Polygon polygon && !polygon.isEmpty()) {
        polygons.add(polygon);
      }
    }
    return FACTORY.createMultiPolygon(polygons.toArray(new Polygon[0]));
  }

  private static MultiPolygon below(float[] z, Lattice lattice, Box carved, double level) {
    float[] depth = new float[z.length];
    for (int i = 0; i < z.length; i++) {
      depth[i] = (float) (level - z[i]);
    }
    List<Geometry> lines = new ArrayList<>();
    lines.add(
        FACTORY
            .toGeometry(
                new org.locationtech.jts.geom.Envelope(
                    carved.minX(), carved.maxX(), carved.minY(), carved.maxY()))
            .getBoundary());
    for (Ring ring : new RingTracer(lattice).trace(depth, 0, 1e6, 0, 0, null)) {
      Coordinate[] points = new Coordinate[ring.size() + (ring.closed() ? 1 : 0)];
      for (int i = 0; i < points.length; i++) {
        points[i] = new Coordinate(ring.x()[i % ring.size()], ring.y()[i % ring.size()]);
      }
      if (points.length > 3) {
        LineString line = FACTORY.createLineString(points);
        lines.add(org.locationtech.jts.simplify.DouglasPeuckerSimplifier.simplify(line, 0.01));
      }
    }
    Geometry noded = FACTORY.buildGeometry(lines).union();
    Polygonizer polygonizer = new Polygonizer();
    polygonizer.add(noded);
    List<Geometry> inside = new ArrayList<>();
    for (Object face : polygonizer.getPolygons()) {
      Coordinate point = ((Polygon) face).getInteriorPoint().getCoordinate();
      if (lattice.bilinear(depth, point.x, point.y) >= 0) {
        inside.add((Polygon) face);
      }
    }
    return multi(FACTORY.buildGeometry(inside).union());
  }
}
