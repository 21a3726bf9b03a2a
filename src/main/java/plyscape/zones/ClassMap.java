package plyscape.zones;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.GeometryTransformer;
import plyscape.fault.Warnings;
import plyscape.grid.CellOutlines;
import plyscape.grid.ClassGrid;
import plyscape.grid.GroundFrame;
import plyscape.zones.map.FeatureSink;
import plyscape.zones.map.MapFeature;
import plyscape.zones.map.MapFile;
import plyscape.zones.map.MapQuery;
import plyscape.zones.map.MapShapes;

/**
 * A raster of classes as a map with one feature: the cells that have one of some values, with exact
 * outlines, or smooth ones where cells are coarse on the panel.
 */
final class ClassMap {

  /** Values listed in a message when none of the wanted ones occurs. */
  private static final int MOST_LISTED = 20;

  /** Cells larger than this on the panel, mm, would show as steps. */
  private static final double STEP_MM = 0.25;

  private ClassMap() {}

  /**
   * The map; a raster that names no CRS is taken as being in the terrain's, aloud.
   *
   * @param borders smooth borders of a raster, made when first needed
   */
  static MapFile of(
      ClassGrid grid,
      List<Double> values,
      GroundFrame frame,
      Function<ClassGrid, ClassBorders> borders,
      Warnings warnings) {
    String crs = grid.crs();
    if (crs.isEmpty() && !frame.crs().isEmpty()) {
      warnings.add(
          "zone-crs-guessed", grid.name() + " names no CRS: taken as the terrain's.", grid.name());
      crs = frame.crs();
    }
    boolean[] marked = new boolean[grid.values().length];
    TreeSet<Double> wanted = new TreeSet<>(values);
    TreeSet<Double> others = new TreeSet<>();
    boolean some = false;
    for (int i = 0; i < marked.length; i++) {
      double value = grid.values()[i] + 0.0; // no minus zero
      marked[i] = wanted.contains(value);
      some |= marked[i];
      if (!marked[i] && !Double.isNaN(value) && others.size() <= MOST_LISTED) {
        others.add(value);
      }
    }
    String trouble = "";
    if (marked.length == 0) {
      trouble = "outside the carved area";
    } else if (!some) {
      trouble =
          "no cell on the carved area has such a value"
              + (others.isEmpty() ? "" : "; it has " + list(others));
    }
    Geometry area =
        MapShapes.FACTORY.createMultiPolygon(
            some && coarse(grid, frame) ? smooth(grid, wanted, borders) : exact(grid, marked));
    MapFeature feature = new MapFeature("values " + list(wanted), Map.of(), area, trouble);
    FeatureSink sink = new FeatureSink(grid.name(), MapQuery.everything());
    sink.add(feature);
    return sink.toMap(crs, true);
  }

  /** Whether steps of cells would show; of a raster that covers the panel, about. */
  private static boolean coarse(ClassGrid grid, GroundFrame frame) {
    return frame.panel().area() > STEP_MM * STEP_MM * grid.columns() * grid.rows();
  }

  private static Polygon[] exact(ClassGrid grid, boolean[] marked) {
    return CellOutlines.of(marked, grid.columns(), grid.rows()).stream()
        .map(patch -> polygon(patch, grid))
        .toArray(Polygon[]::new);
  }

  private static Polygon[] smooth(
      ClassGrid grid, Set<Double> wanted, Function<ClassGrid, ClassBorders> borders) {
    GeometryTransformer toGround =
        new GeometryTransformer() {
          @Override
          protected CoordinateSequence transformCoordinates(
              CoordinateSequence cells, Geometry parent) {
            Coordinate[] out = new Coordinate[cells.size()];
            for (int i = 0; i < out.length; i++) {
              double column = cells.getX(i);
              double row = cells.getY(i);
              out[i] = new Coordinate(grid.x(column, row), grid.y(column, row));
            }
            return MapShapes.FACTORY.getCoordinateSequenceFactory().create(out);
          }
        };
    return borders.apply(grid).polygons(wanted).stream()
        .map(polygon -> (Polygon) toGround.transform(polygon))
        .toArray(Polygon[]::new);
  }

  private static String list(Set<Double> values) {
    List<String> texts =
        values.stream()
            .limit(MOST_LISTED)
            .map(v -> v == Math.rint(v) ? Long.toString(v.longValue()) : v.toString())
            .toList();
    return String.join(", ", texts) + (values.size() > MOST_LISTED ? ", ..." : "");
  }

  private static Polygon polygon(CellOutlines.Patch patch, ClassGrid grid) {
    LinearRing[] holes =
        patch.holes().stream().map(hole -> ring(hole, grid)).toArray(LinearRing[]::new);
    return MapShapes.FACTORY.createPolygon(ring(patch.shell(), grid), holes);
  }

  private static LinearRing ring(int[] xy, ClassGrid grid) {
    Coordinate[] out = new Coordinate[xy.length / 2 + 1];
    for (int i = 0; 2 * i < xy.length; i++) {
      out[i] = new Coordinate(grid.x(xy[2 * i], xy[2 * i + 1]), grid.y(xy[2 * i], xy[2 * i + 1]));
    }
    out[out.length - 1] = out[0].copy();
    return MapShapes.FACTORY.createLinearRing(out);
  }
}
