package plyscape.region;

import java.util.List;
import java.util.SortedMap;
import org.locationtech.jts.geom.MultiPolygon;
import plyscape.grid.Box;

/**
 * The carved area tiled by plies: the exposed parts don't overlap, leave no gap, and share their
 * vertices. Immutable; the geometries are never changed.
 *
 * @param carved the carved area, panel mm
 * @param exposed ply number to where it shows; only plies that show
 * @param pockets ply number k to P_k, the union of all exposed parts of ply k or deeper; for each k
 *     from 1 to the deepest exposed ply, so that P_1 is the carved area
 * @param regions connected regions, in ply order then by position
 * @param merged what was given to a neighbour
 * @param curedMm2 area that shows another ply so that standing wood is less weak
 */
public record Tiling(
    Box carved,
    SortedMap<Integer, MultiPolygon> exposed,
    SortedMap<Integer, MultiPolygon> pockets,
    List<Region> regions,
    List<Merged> merged,
    double curedMm2) {

  /**
   * Why parts of the map don't show, counted.
   *
   * @param why {@code too small}, {@code too narrow} or {@code too weak}
   * @param source zone name, or "terrain"
   * @param fromPly what it would have been
   * @param toPly what it is
   * @param count parts
   * @param areaMm2 their area
   */
  public record Merged(
      String why, String source, int fromPly, int toPly, int count, double areaMm2) {}

  /** The same with what was given away and cured. */
  Tiling with(List<Merged> given, double cured) {
    return new Tiling(carved, exposed, pockets, regions, given, cured);
  }
}
