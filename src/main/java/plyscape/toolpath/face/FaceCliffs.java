package plyscape.toolpath.face;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Location;
import plyscape.region.RegionRaster;

/**
 * Places between the nodes of a {@link FaceLattice} on faces that are steeper than a cutter's side
 * at its rim. Elsewhere the nodes under a cutter keep it off what lies between them and the next
 * ones; on a cliff the rim would pass between a node that it may touch and a higher one just beyond
 * it. Looked for along the lattice's lines, so near to each other that a rim comes no farther over
 * a cliff than over a wall.
 */
final class FaceCliffs {

  /** Places are this near to each other at most, mm: half of what may come over a wall. */
  private static final double SPACING_MM = 0.01;

  private final FaceLattice lattice;
  private final int[] region;
  private final FaceTask task;
  private final double least;
  private final Map<Integer, IndexedPointInAreaLocator> areas = new HashMap<>();

  private FaceCliffs(FaceLattice lattice, int[] region, FaceTask task, double steep) {
    this.lattice = lattice;
    this.region = region;
    this.task = task;
    least = steep * lattice.stepMm;
  }

  /**
   * The places in order, U, V and depth each.
   *
   * @param region of each node, in the order of a raster of the panel
   * @param steep mm a mm: no cutter's side is less steep on its last node's width
   */
  static double[] of(FaceLattice lattice, int[] region, FaceTask task, double steep) {
    FaceCliffs cliffs = new FaceCliffs(lattice, region, task, steep);
    List<double[]> rows =
        IntStream.range(0, lattice.rows - 1).parallel().mapToObj(cliffs::row).toList();
    return rows.stream().flatMapToDouble(Arrays::stream).toArray();
  }

  private double[] row(int row) {
    FacePoints points = new FacePoints();
    for (int column = 0; column < lattice.columns - 1; column++) {
      int at = regionAt(column, row);
      way(column, row, at, 1, 0, points);
      way(column, row, at, 0, 1, points);
    }
    return points.values();
  }

  private int regionAt(int column, int row) {
    return region[lattice.turned ? column * lattice.rows + row : row * lattice.columns + column];
  }

  /** From a node to the next one. */
  private void way(int column, int row, int at, int right, int up, FacePoints points) {
    int other = regionAt(column + right, row + up);
    if (at == other) {
      int node = row * lattice.columns + column;
      float rise = lattice.target[node] - lattice.target[node + right + up * lattice.columns];
      if (Math.abs(rise) > least) {
        places(column, row, right, up, at, false, points);
      }
    } else {
      beforeWall(column, row, right, up, at, points);
      beforeWall(column, row, right, up, other, points);
    }
  }

  private void beforeWall(int column, int row, int right, int up, int own, FacePoints points) {
    if (own == RegionRaster.NONE || task.faces().faces().get(own).flat()) {
      return;
    }
    double here = depth(own, lattice.u(column), lattice.v(row));
    double there = depth(own, lattice.u(column + right), lattice.v(row + up));
    if (Math.abs(here - there) > least) {
      places(column, row, right, up, own, true, points);
    }
  }

  private double depth(int own, double u, double v) {
    double x = lattice.x(u, v);
    double y = lattice.y(u, v);
    return task.wantedMm(x, y, task.faces().depthMm(own, x, y));
  }

  private void places(
      int column, int row, int right, int up, int own, boolean wall, FacePoints points) {
    int n = (int) Math.ceil(lattice.stepMm / SPACING_MM);
    for (int k = 1; k < n; k++) {
      double u = lattice.u(column) + right * k * lattice.stepMm / n;
      double v = lattice.v(row) + up * k * lattice.stepMm / n;
      if (!wall || within(own, u, v)) {
        points.add(u, v, depth(own, u, v));
      }
    }
  }

  private boolean within(int own, double u, double v) {
    IndexedPointInAreaLocator area;
    synchronized (areas) {
      area =
          areas.computeIfAbsent(
              own, at -> new IndexedPointInAreaLocator(task.faces().polygons().get(at)));
    }
    return area.locate(new Coordinate(lattice.x(u, v), lattice.y(u, v))) != Location.EXTERIOR;
  }
}
