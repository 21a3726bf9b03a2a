package plyscape.planner.cut;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.overlayng.CoverageUnion;
import plyscape.layup.Depths;
import plyscape.region.FaceField;
import plyscape.toolpath.task.PocketLevel;

/**
 * The pockets that flat cutters make before sculpted faces are finished: one for every depth of
 * roughing, the union of all regions that are to be at least so deep. Regions share their vertices,
 * so the union is exact and the pockets nest.
 */
final class RoughLevels {

  private static final GeometryFactory MM = new GeometryFactory();

  private RoughLevels() {}

  /**
   * Levels with a depth over 0, from the top down.
   *
   * @param depths of all plies, the top one first
   * @param rimMm how far a flat cutter's rim may dig below the depth at its axis; roughing stays so
   *     far above faces that follow the terrain
   */
  static List<PocketLevel> of(FaceField faces, Depths depths, double rimMm) {
    double[] rough = faces.roughMm();
    for (int i = 0; i < rough.length; i++) {
      double rim = faces.faces().get(i).flat() ? 0 : rimMm;
      rough[i] = PocketLevel.asWritten(rough[i] - rim);
    }
    TreeMap<Double, List<Polygon>> regions = new TreeMap<>();
    TreeMap<Double, Integer> ply = new TreeMap<>();
    for (int i = 0; i < rough.length; i++) {
      if (rough[i] > 0) {
        regions.computeIfAbsent(rough[i], depth -> new ArrayList<>()).add(faces.polygons().get(i));
        ply.put(rough[i], faces.faces().get(i).plyNumber());
      }
    }
    List<PocketLevel> levels = new ArrayList<>();
    List<Polygon> within = new ArrayList<>();
    for (double depth : regions.descendingKeySet()) {
      within.addAll(regions.get(depth));
      levels.add(
          0,
          new PocketLevel(
              ply.get(depth),
              depth,
              union(within),
              MM.createMultiPolygon(regions.get(depth).toArray(Polygon[]::new)),
              depths.of(ply.get(depth)).ply().grainDeg()));
    }
    return levels;
  }

  private static MultiPolygon union(List<Polygon> polygons) {
    Geometry union = CoverageUnion.union(MM.createMultiPolygon(polygons.toArray(Polygon[]::new)));
    return union instanceof Polygon one
        ? MM.createMultiPolygon(new Polygon[] {one})
        : (MultiPolygon) union;
  }
}
