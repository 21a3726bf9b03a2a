package plyscape.region;

import plyscape.planar.Linework;
import plyscape.planar.OffsetOutlines;
import plyscape.planar.OutlineLayer;
import plyscape.planar.OutlineSimplifier;
import plyscape.planar.PlanarMap;
import plyscape.planar.PolygonAssembler;
import plyscape.planar.PolygonAssembler.Ring;
import plyscape.planar.PolygonAssembler.RingPart;
import plyscape.planar.Sets;

/**
 * What a round tool reaches of a pocket: the pocket's opening by the tool's disk, as outlines to be
 * noded with the map. The places where the tool's centre can be are the pocket shrunk by the
 * radius; grown again by the radius they are what it sweeps. Off by 0.005 mm where walls are bent,
 * and by {@link #SLACK_UNITS} on purpose.
 */
final class Opening {

  /** Chords are within the tool's circle by this at most, grid units. */
  private static final double SAGITTA_UNITS = 5;

  /**
   * The opening is widened by this, grid units, so that the chords' error leaves no slivers along
   * every wall.
   */
  private static final double SLACK_UNITS = 12;

  /** Places for the centre narrower than this, grid units, come from rounding. */
  private static final double LEAST_WIDTH_UNITS = 2;

  /** Rounding bends lines that short; left out before they are widened a thousandfold. */
  private static final double CLEANING_UNITS = 2;

  private Opening() {}

  /**
   * Adds outlines that wind at least once around every place which the tool reaches.
   *
   * @param ply of the pocket: all regions of that ply and deeper
   * @return whether there are any
   */
  static boolean add(Linework lines, int component, RegionMap map, int ply, double radiusUnits) {
    PolygonAssembler pocket = new PolygonAssembler(map.chains(), map.count(), 1, null);
    Sets parts = pocket.parts(r -> map.ply(r) >= ply);
    boolean[] fresh = new boolean[map.count()];
    for (int r = 0; r < map.count(); r++) {
      fresh[parts.find(r)] |= map.ply(r) == ply;
    }
    boolean some = false;
    Linework shrunk = new Linework(1);
    OffsetOutlines inwards = new OffsetOutlines(shrunk, 0, SAGITTA_UNITS);
    for (RingPart part : pocket.ringParts(r -> map.ply(r) >= ply)) {
      if (!fresh[part.name()]) {
        // Of deeper plies only: it was a part of the pocket below and has been looked at there.
        part.rings().forEach(ring -> lines.add(ring.x(), ring.y(), component, 1, false));
        some = true;
      } else if (holdsDisk(part, radiusUnits)) {
        part.rings().forEach(ring -> inwards.shrunk(ring.x(), ring.y(), radiusUnits));
      }
    }
    PlanarMap places = PlanarMap.of(shrunk);
    OutlineLayer centres = new OutlineLayer();
    for (Ring ring :
        new PolygonAssembler(places.chains(), places.faces(), 1, null)
            .rings(f -> places.winding(f, 0) > 0)) {
      double width = ring.meanWidth();
      if (width < 0 || width > LEAST_WIDTH_UNITS) {
        centres.add(ring.x(), ring.y(), ring.x().length, false);
      }
    }
    OffsetOutlines outwards = new OffsetOutlines(lines, component, SAGITTA_UNITS);
    for (OutlineLayer.Outline ring :
        OutlineSimplifier.layer(centres, CLEANING_UNITS, false).outlines()) {
      outwards.grown(ring.x(), ring.y(), radiusUnits + SLACK_UNITS);
      some = true;
    }
    return some;
  }

  private static boolean holdsDisk(RingPart part, double radiusUnits) {
    long area2 = 0;
    for (Ring ring : part.rings()) {
      area2 += ring.area2();
    }
    return area2 > 2 * Math.PI * radiusUnits * radiusUnits;
  }
}
