package plyscape.toolpath.ring;

import java.util.ArrayList;
import java.util.List;
import plyscape.toolpath.lattice.CoarseMap;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.EdgeBuckets;
import plyscape.toolpath.lattice.Ring;
import plyscape.toolpath.task.PocketLevel;

/**
 * One depth level as the planner sees it: how far each node is from the walls of its pocket, and
 * the rings for a cutter.
 *
 * @param level what was asked
 * @param field distances in the pocket
 */
public record LevelField(PocketLevel level, DistanceField field) {

  /**
   * Wall rings may be thinned by this; with the chord height of the contour it stays under the
   * 0.005 mm of arcs.
   */
  private static final double WALL_TOLERANCE_MM = 0.002;

  /** Inner rings have room. */
  private static final double INNER_TOLERANCE_MM = 0.003;

  /**
   * The exact path of a cutter's centre along the walls, thinned.
   *
   * @param roundMm radius to which inner corners may be rounded, 0 to keep them
   */
  public List<Ring> wallRings(RingTracer tracer, double radiusMm, double roundMm) {
    WallRing wall = new WallRing(field, radiusMm);
    double reach = 0.8 * field.lattice.stepMm() + OffsetCorners.FIT_MM;
    CoarseMap about = field.range.between(radiusMm - reach, radiusMm + reach);
    List<Ring> rings = new ArrayList<>();
    for (Ring ring : tracer.trace(field.distance, radiusMm, 1e6, 0, 0, about)) {
      if (ring.size() > 1) {
        rings.add(wall.exact(ring));
      }
    }
    if (roundMm > 0) {
      rings.replaceAll(
          ring -> CornerRounding.round(Polyline.thin(ring, WALL_TOLERANCE_MM), roundMm));
      rings.addAll(new TightPlaces(field, radiusMm).rings(about));
      return rings;
    }
    rings.addAll(new TightPlaces(field, radiusMm).rings(about));
    EdgeBuckets walls = new EdgeBuckets(field.edges, field.lattice, radiusMm);
    List<double[]> corners = new OffsetCorners(field, walls, radiusMm).find(about);
    rings = new CornerWays(field, walls, radiusMm).with(rings, corners);
    rings.replaceAll(ring -> ring.closed() ? Polyline.thin(ring, WALL_TOLERANCE_MM) : ring);
    return rings;
  }

  /**
   * Smooth rings inside the wall ring. Their index counts half spacings from the wall: the ordinary
   * ones are even, odd ones lie between and are for what the ordinary ones leave.
   *
   * @param smooth the smoothed field
   * @param allowanceMm what the innermost of them that runs along the wall leaves for the wall ring
   * @param mask where they are wanted, or null for everywhere
   * @param between whether the odd ones are wanted
   */
  public List<Ring> innerRings(
      RingTracer tracer,
      float[] smooth,
      double radiusMm,
      double spacingMm,
      double allowanceMm,
      CoarseMap mask,
      boolean between) {
    List<Ring> rings = new ArrayList<>();
    double first = radiusMm + allowanceMm;
    double base = between ? first - spacingMm / 2 : first - spacingMm;
    int lowest = between && base > radiusMm ? 0 : 1;
    for (Ring ring : tracer.trace(smooth, base, spacingMm, lowest, Integer.MAX_VALUE, mask)) {
      if (ring.size() > 2) {
        int index = between ? 2 * ring.index() + 1 : 2 * ring.index();
        rings.add(
            Polyline.thin(new Ring(index, ring.closed(), ring.x(), ring.y()), INNER_TOLERANCE_MM));
      }
    }
    return rings;
  }
}
