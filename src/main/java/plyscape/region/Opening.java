package plyscape.region;

import plyscape.planar.DiskOpening;
import plyscape.planar.Linework;
import plyscape.planar.PolygonAssembler;
import plyscape.planar.PolygonAssembler.Ring;
import plyscape.planar.PolygonAssembler.RingPart;
import plyscape.planar.Sets;

/**
 * What a round tool reaches of a pocket: the pocket's opening by the tool's disk, as outlines to be
 * noded with the map.
 */
final class Opening {

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
    DiskOpening disk = new DiskOpening(radiusUnits);
    for (RingPart part : pocket.ringParts(r -> map.ply(r) >= ply)) {
      if (!fresh[part.name()]) {
        // Of deeper plies only: it was a part of the pocket below and has been looked at there.
        part.rings().forEach(ring -> lines.add(ring.x(), ring.y(), component, 1, false));
        some = true;
      } else if (holdsDisk(part, radiusUnits)) {
        disk.add(part.rings());
      }
    }
    return disk.addTo(lines, component) || some;
  }

  private static boolean holdsDisk(RingPart part, double radiusUnits) {
    long area2 = 0;
    for (Ring ring : part.rings()) {
      area2 += ring.area2();
    }
    return area2 > 2 * Math.PI * radiusUnits * radiusUnits;
  }
}
