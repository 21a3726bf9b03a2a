package plyscape.toolpath.cover;

import java.util.BitSet;
import java.util.List;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import plyscape.toolpath.lattice.EdgeBuckets;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.PocketEdges;
import plyscape.toolpath.ring.LevelField;

/**
 * Finds the thin parts of one level by going along the outlines of where it shows: a place just
 * inside, in whose square of four nodes none lies in the level, is thin.
 */
final class ThinSearch {

  /**
   * Parts narrower than twice this needn't be cut, mm: so much may stay at a wall (src/contract.md,
   * section 9: 0.05).
   */
  private static final double INSIDE_MM = 0.025;

  /** Stretches of an outline shorter than this many steps are tips of corners. */
  private static final double LEAST_STEPS = 4;

  /** Places asked stand at most this many steps apart. */
  private static final double APART_STEPS = 0.5;

  private final List<LevelField> fields;
  private final int level;
  private final Lattice lattice;
  private final EdgeBuckets walls;
  private final BitSet found = new BitSet();

  /** Nodes of the stretch that the search is on, and how long it is, mm. */
  private final BitSet stretch = new BitSet();

  private double stretchMm;

  ThinSearch(List<LevelField> fields, int level) {
    this.fields = fields;
    this.level = level;
    lattice = fields.get(level).field().lattice;
    walls = new EdgeBuckets(new PocketEdges(fields.get(level).level().exposed()), lattice, 0);
  }

  /** Nodes beside thin parts that lie in deeper levels; null for none. */
  BitSet nodes() {
    MultiPolygon exposed = fields.get(level).level().exposed();
    for (int g = 0; g < exposed.getNumGeometries(); g++) {
      Polygon polygon = (Polygon) exposed.getGeometryN(g);
      along(polygon.getExteriorRing(), false);
      for (int r = 0; r < polygon.getNumInteriorRing(); r++) {
        along(polygon.getInteriorRingN(r), true);
      }
    }
    return found.isEmpty() ? null : found;
  }

  private void along(LinearRing ring, boolean hole) {
    CoordinateSequence points = ring.getCoordinateSequence();
    double inward = Orientation.isCCW(points) == hole ? -INSIDE_MM : INSIDE_MM;
    for (int i = 1; i < points.size(); i++) {
      double x = points.getX(i - 1);
      double y = points.getY(i - 1);
      double dx = points.getX(i) - x;
      double dy = points.getY(i) - y;
      double length = Math.hypot(dx, dy);
      int parts = Math.max(1, (int) Math.ceil(length / (APART_STEPS * lattice.stepMm())));
      for (int p = 0; p < parts && length > 0; p++) {
        double t = (p + 0.5) / parts;
        look(x + t * dx - inward * dy / length, y + t * dy + inward * dx / length, length / parts);
      }
    }
    close();
  }

  /** Looks at a place that stands for a length of the outline. */
  private void look(double x, double y, double lengthMm) {
    int i = (int) Math.floor((x - lattice.minX()) / lattice.stepMm());
    int j = (int) Math.floor((y - lattice.minY()) / lattice.stepMm());
    int node = j * lattice.columns() + i;
    int[] square = {node, node + 1, node + lattice.columns(), node + lattice.columns() + 1};
    boolean deeper = false;
    for (int corner : square) {
      if (inside(corner, level) && !inside(corner, level + 1)) {
        close();
        return;
      }
      deeper |= inside(corner, level + 1);
    }
    if (!deeper || walls.distance(x, y, 2 * INSIDE_MM) < 0.99 * INSIDE_MM) {
      close();
      return;
    }
    stretchMm += lengthMm;
    for (int corner : square) {
      if (inside(corner, level + 1)) {
        stretch.set(corner);
      }
    }
  }

  private boolean inside(int node, int k) {
    return fields.get(k).field().distance[node] > 0;
  }

  /** Ends a stretch: what is long enough counts. */
  private void close() {
    if (stretchMm >= LEAST_STEPS * lattice.stepMm()) {
      found.or(stretch);
    }
    if (stretchMm > 0) {
      stretch.clear();
      stretchMm = 0;
    }
  }
}
