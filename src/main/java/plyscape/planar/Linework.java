package plyscape.planar;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/**
 * Directed outlines on the grid, each adding a weight to one component of the winding vector of
 * what lies to its left. All lines of one component and weight together form closed curves: then
 * the winding vector of a place doesn't depend on the way it is counted, however the lines cross,
 * and stays so when they are snapped together.
 */
public final class Linework {

  /**
   * One polyline, grid units.
   *
   * @param x at least two
   * @param component which entry of the winding vector
   * @param weight what crossing from its right to its left adds
   * @param terrain whether it was traced from the terrain, or is the carved box's edge
   */
  record Line(int[] x, int[] y, int component, int weight, boolean terrain) {}

  private final List<Line> lines = new ArrayList<>();
  private final int components;

  /** Begins without lines; winding vectors will have so many components. */
  public Linework(int components) {
    this.components = components;
  }

  int components() {
    return components;
  }

  List<Line> lines() {
    return lines;
  }

  /** Adds a line as {@link Line} has it. */
  public void add(int[] x, int[] y, int component, int weight, boolean terrain) {
    lines.add(new Line(x, y, component, weight, terrain));
  }

  /** Adds the outlines of a polygonal geometry given in mm. */
  public void addMm(Geometry polygonal, int component) {
    addMm(polygonal, component, 1);
  }

  /** The same with a weight. */
  public void addMm(Geometry polygonal, int component, int weight) {
    for (int i = 0; i < polygonal.getNumGeometries(); i++) {
      if (polygonal.getGeometryN(i) instanceof Polygon polygon && !polygon.isEmpty()) {
        addRing(polygon.getExteriorRing(), true, component, weight);
        for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
          addRing(polygon.getInteriorRingN(h), false, component, weight);
        }
      }
    }
  }

  private void addRing(LinearRing ring, boolean shell, int component, int weight) {
    CoordinateSequence points = ring.getCoordinateSequence();
    boolean reverse = Orientation.isCCW(points) != shell;
    int n = points.size();
    int[] x = new int[n];
    int[] y = new int[n];
    int used = 0;
    for (int i = 0; i < n; i++) {
      int from = reverse ? n - 1 - i : i;
      int px = (int) Math.round(points.getX(from) * GridUnits.PER_MM);
      int py = (int) Math.round(points.getY(from) * GridUnits.PER_MM);
      if (used == 0 || px != x[used - 1] || py != y[used - 1]) {
        x[used] = px;
        y[used++] = py;
      }
    }
    if (used >= 4) {
      add(
          java.util.Arrays.copyOf(x, used),
          java.util.Arrays.copyOf(y, used),
          component,
          weight,
          false);
    }
  }
}
