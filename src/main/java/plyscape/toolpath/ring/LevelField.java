package plyscape.toolpath.ring;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntUnaryOperator;
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
   * How rings lie beside each other, mm.
   *
   * @param radiusMm of the cutter
   * @param stepMm from one ring to the next
   * @param allowanceMm what the outermost of them leaves for the wall ring
   */
  public record Spacing(double radiusMm, double stepMm, double allowanceMm) {}

  /**
   * The distances, so averaged that inner rings turn wide where they can ({@link RoundedField}).
   */
  public float[] rounded(Spacing spacing) {
    return RoundedField.of(field, spacing);
  }

  /**
   * Smooth rings inside the wall ring. Their index counts half spacings from the wall and is even.
   *
   * @param smooth the smoothed field
   * @param mask where they are wanted, or null for everywhere
   */
  public List<Ring> innerRings(RingTracer tracer, float[] smooth, Spacing spacing, CoarseMap mask) {
    double base = spacing.radiusMm() + spacing.allowanceMm() - spacing.stepMm();
    return inner(
        tracer.trace(smooth, base, spacing.stepMm(), 1, Integer.MAX_VALUE, mask),
        index -> 2 * index);
  }

  /** Rings between those, of odd index, for what they leave. */
  public List<Ring> ringsBetween(
      RingTracer tracer, float[] smooth, Spacing spacing, CoarseMap mask) {
    double base = spacing.radiusMm() + spacing.allowanceMm() - spacing.stepMm() / 2;
    int lowest = base > spacing.radiusMm() ? 0 : 1;
    return inner(
        tracer.trace(smooth, base, spacing.stepMm(), lowest, Integer.MAX_VALUE, mask),
        index -> 2 * index + 1);
  }

  private static List<Ring> inner(List<Ring> traced, IntUnaryOperator index) {
    List<Ring> rings = new ArrayList<>();
    for (Ring ring : traced) {
      if (ring.size() > 2) {
        Ring numbered = new Ring(index.applyAsInt(ring.index()), ring.closed(), ring.x(), ring.y());
        rings.add(Polyline.thin(numbered, INNER_TOLERANCE_MM));
      }
    }
    return rings;
  }
}
