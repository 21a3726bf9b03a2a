package plyscape.planar;

import java.util.List;

/**
 * What a disk reaches inside outlines, as outlines to be noded with others: the places where its
 * centre can be are the outlines shrunk by the radius; grown again by the radius they are what it
 * sweeps. Off by 0.005 mm where edges are bent, and wider by 0.012 mm on purpose. Costs a noding of
 * the outlines, O(n log n) in their points.
 */
public final class DiskOpening {

  /** Chords are within the disk's circle by this at most, grid units. */
  private static final double SAGITTA_UNITS = 5;

  /**
   * The opening is widened by this, grid units, so that the chords' error leaves no slivers along
   * every edge.
   */
  private static final double SLACK_UNITS = 12;

  /** Places for the centre narrower than this, grid units, come from rounding. */
  private static final double LEAST_WIDTH_UNITS = 2;

  /** Rounding bends lines that short; left out before they are widened a thousandfold. */
  private static final double CLEANING_UNITS = 2;

  private final double radiusUnits;
  private final Linework shrunk = new Linework(1);
  private final OffsetOutlines inwards = new OffsetOutlines(shrunk, 0, SAGITTA_UNITS);

  /** A disk without outlines yet. */
  public DiskOpening(double radiusUnits) {
    this.radiusUnits = radiusUnits;
  }

  /** Takes outlines with the inside on their left. */
  public void add(List<PolygonAssembler.Ring> rings) {
    rings.forEach(ring -> inwards.shrunk(ring.x(), ring.y(), radiusUnits));
  }

  /**
   * Adds outlines that wind at least once around every place which the disk reaches.
   *
   * @return whether there are any
   */
  public boolean addTo(Linework lines, int component) {
    PlanarMap places = PlanarMap.of(shrunk);
    OutlineLayer centres = new OutlineLayer();
    for (PolygonAssembler.Ring ring :
        new PolygonAssembler(places.chains(), places.faces(), 1, null)
            .rings(f -> places.winding(f, 0) > 0)) {
      double width = ring.meanWidth();
      if (width < 0 || width > LEAST_WIDTH_UNITS) {
        centres.add(ring.x(), ring.y(), ring.x().length, false);
      }
    }
    OffsetOutlines outwards = new OffsetOutlines(lines, component, SAGITTA_UNITS);
    List<OutlineLayer.Outline> outlines =
        OutlineSimplifier.layer(centres, CLEANING_UNITS, false).outlines();
    outlines.forEach(ring -> outwards.grown(ring.x(), ring.y(), radiusUnits + SLACK_UNITS));
    return !outlines.isEmpty();
  }
}
