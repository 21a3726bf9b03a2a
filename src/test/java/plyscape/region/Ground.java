package plyscape.region;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.DoubleBinaryOperator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import plyscape.bands.Bands;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.grid.Grid;
import plyscape.grid.GroundFrame;
import plyscape.job.LineWidth;
import plyscape.job.ZoneSpec;
import plyscape.job.ZoneSpecs;
import plyscape.terrain.RasterSource;
import plyscape.terrain.Terrain;
import plyscape.terrain.VoidCells;
import plyscape.zones.Zone;

/** Terrains, bands and zones for tests, by formula or seed. */
final class Ground {

  static final GeometryFactory FACTORY = new GeometryFactory();

  private Ground() {}

  /** A terrain whose cells cover the box exactly, with elevations by a formula of panel mm. */
  static Terrain of(Box carved, int columns, int rows, DoubleBinaryOperator elevation) {
    CellFrame frame =
        new CellFrame(
            carved.minX(),
            carved.minY(),
            carved.width() / columns,
            carved.height() / rows,
            columns,
            rows);
    double[] z = new double[columns * rows];
    double min = Double.POSITIVE_INFINITY;
    double max = Double.NEGATIVE_INFINITY;
    for (int r = 0; r < rows; r++) {
      for (int c = 0; c < columns; c++) {
        double v = elevation.applyAsDouble(frame.centreX(c), frame.centreY(r));
        z[r * columns + c] = v;
        min = Math.min(min, v);
        max = Math.max(max, v);
      }
    }
    Box ground = new Box(0, 0, carved.width() * 10, carved.height() * 10);
    GroundFrame map = new GroundFrame("", ground, carved, 1);
    return new Terrain(
        new RasterSource("test", "", frame.cellX() * 10),
        map,
        new Grid(frame, z),
        new Terrain.Range(min, max),
        VoidCells.NONE,
        null);
  }

  /** Smooth hills of several sizes, from a seed. */
  static DoubleBinaryOperator hills(long seed, double sizeMm) {
    Random random = new Random(seed);
    double[][] waves = new double[8][];
    for (int i = 0; i < waves.length; i++) {
      double k = 2 * Math.PI / sizeMm * (0.6 + random.nextDouble() * (1 + i));
      double turn = random.nextDouble() * Math.PI;
      waves[i] =
          new double[] {
            k * Math.cos(turn), k * Math.sin(turn), random.nextDouble() * 7, 40.0 / (1 + i)
          };
    }
    return (x, y) -> {
      double sum = 200;
      for (double[] w : waves) {
        sum += w[3] * Math.sin(w[0] * x + w[1] * y + w[2]);
      }
      return sum;
    };
  }

  /** Breaks at equal steps between the terrain's extremes. */
  static Bands equal(Terrain terrain, int plies) {
    List<Integer> numbers = new ArrayList<>();
    List<Double> breaks = new ArrayList<>();
    for (int i = 1; i <= plies; i++) {
      numbers.add(i);
      if (i > 1) {
        breaks.add(terrain.zmaxM() - (terrain.zmaxM() - terrain.zminM()) * (i - 1) / plies);
      }
    }
    return new Bands(numbers, breaks);
  }

  static Zone zone(String name, Integer ply, Integer sink, Geometry area) {
    ZoneSpec spec =
        ZoneSpecs.of(name, Path.of("zones.geojson"), new TreeMap<>(), ply, sink, LineWidth.NONE);
    return new Zone(spec, area, area.getNumGeometries(), List.of());
  }

  /** Crossing strips and rectangles within the box. */
  static Geometry clutter(Random random, Box box, int count) {
    List<Geometry> parts = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      Coordinate a = point(random, box);
      Coordinate b = point(random, box);
      Geometry line = FACTORY.createLineString(new Coordinate[] {a, b, point(random, box)});
      parts.add(
          random.nextBoolean() ? line.buffer(0.2 + 2 * random.nextDouble()) : line.convexHull());
    }
    Geometry clip =
        FACTORY.toGeometry(
            new org.locationtech.jts.geom.Envelope(box.minX(), box.maxX(), box.minY(), box.maxY()));
    return org.locationtech.jts.operation.union.UnaryUnionOp.union(parts, FACTORY)
        .intersection(clip);
  }

  private static Coordinate point(Random random, Box box) {
    return new Coordinate(
        box.minX() + random.nextDouble() * box.width(),
        box.minY() + random.nextDouble() * box.height());
  }
}
