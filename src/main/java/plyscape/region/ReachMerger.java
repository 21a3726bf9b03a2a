package plyscape.region;

import plyscape.planar.Chain;
import plyscape.planar.GridUnits;
import plyscape.planar.Linework;
import plyscape.planar.PlanarMap;
import plyscape.planar.Sets;

/**
 * Gives what the smallest tool can't reach to a shallower neighbour. What a disk reaches of a
 * pocket is the pocket's opening by it; what is left over are the fillets of corners, which stay
 * (the simulation counts them), and necks, arms and whole pockets narrower than the tool, which go:
 * leftovers larger than the least area, and pockets that can't be entered at all. From the deepest
 * pocket up, so that what is given away is looked at again in the pocket above.
 */
final class ReachMerger {

  private static final int REGION = 0;
  private static final int REACHED = 1;

  /** Points that noding has put on contours are this near to them, grid units. */
  private static final double NODING_UNITS = 1;

  private final double radiusUnits;
  private final double leastMm2;

  private ReachMerger(double toolMm, double minimumAreaMm2) {
    radiusUnits = toolMm / 2 * GridUnits.PER_MM;
    leastMm2 = minimumAreaMm2;
  }

  /** The map with everything given away that a tool of this diameter can't reach. */
  static RegionMap merge(RegionMap map, double toolMm, double minimumAreaMm2) {
    if (!(toolMm > 0)) {
      return map;
    }
    ReachMerger merger = new ReachMerger(toolMm, minimumAreaMm2);
    RegionMap out = map;
    for (int ply = map.deepest(); ply >= 2; ply--) {
      if (occurs(out, ply)) {
        RegionMap cut = merger.atPly(out, ply);
        out = cut == out ? out : merger.cleaned(cut);
      }
    }
    return out;
  }

  /**
   * Crumbs that a cut leaves, such as the crossings of lanes that went, would burden every pocket
   * above.
   */
  private RegionMap cleaned(RegionMap cut) {
    return SmallRegionMerger.merge(
        TilingBuilder.simplified(cut, TilingBuilder.CLEANING_MM, NODING_UNITS), leastMm2);
  }

  private static boolean occurs(RegionMap map, int ply) {
    for (int r = 0; r < map.count(); r++) {
      if (map.ply(r) == ply) {
        return true;
      }
    }
    return false;
  }

  private RegionMap atPly(RegionMap map, int ply) {
    Linework linework = new Linework(2);
    for (Chain chain : map.chains()) {
      linework.add(chain.x, chain.y, REGION, chain.left() - chain.right(), chain.terrain);
    }
    Opening.add(linework, REACHED, map, ply, radiusUnits);
    PlanarMap cut = PlanarMap.of(linework);
    int[] plyOf = new int[cut.faces()];
    for (int f = 0; f < plyOf.length; f++) {
      plyOf[f] = map.ply(cut.winding(f, REGION));
    }
    boolean[] moving = moving(cut, plyOf, ply);
    int[] target = moving == null ? null : targets(cut, plyOf, moving, ply);
    boolean some = false;
    for (int f = 0; target != null && f < plyOf.length; f++) {
      if (target[f] > 0) {
        plyOf[f] = target[f];
        some = true;
      }
    }
    return some ? RegionMap.of(cut.chains(), plyOf) : map;
  }

  /** Faces of leftovers larger than the least area; null when there are none. */
  private boolean[] moving(PlanarMap cut, int[] plyOf, int ply) {
    boolean[] left = new boolean[plyOf.length];
    for (int f = 0; f < left.length; f++) {
      left[f] = plyOf[f] >= ply && cut.winding(f, REACHED) <= 0;
    }
    Sets groups = groups(cut, left);
    long[] area2 = RegionMap.areas2(cut.chains(), left.length);
    double[] groupMm2 = new double[left.length];
    for (int f = 0; f < left.length; f++) {
      groupMm2[groups.find(f)] += left[f] ? area2[f] / 2.0 / GridUnits.perMm2() : 0;
    }
    boolean some = false;
    for (int f = 0; f < left.length; f++) {
      left[f] &= groupMm2[groups.find(f)] > leastMm2;
      some |= left[f];
    }
    return some ? left : null;
  }

  private static Sets groups(PlanarMap cut, boolean[] in) {
    Sets groups = new Sets(in.length);
    for (Chain chain : cut.chains()) {
      if (in[chain.left()] && in[chain.right()]) {
        groups.join(chain.left(), chain.right());
      }
    }
    return groups;
  }

  /**
   * For each moving face the ply of the shallower region with which its leftover shares the longest
   * line; 0 for none.
   */
  private static int[] targets(PlanarMap cut, int[] plyOf, boolean[] moving, int ply) {
    Sets groups = groups(cut, moving);
    double[][] shared = new double[plyOf.length][];
    for (Chain chain : cut.chains()) {
      share(shared, groups, moving, plyOf, ply, chain, chain.left(), chain.right());
      share(shared, groups, moving, plyOf, ply, chain, chain.right(), chain.left());
    }
    int[] out = new int[plyOf.length];
    for (int f = 0; f < plyOf.length; f++) {
      double[] lengths = moving[f] ? shared[groups.find(f)] : null;
      for (int p = 1; lengths != null && p < ply; p++) {
        if (lengths[p] > 0 && (out[f] == 0 || lengths[p] > lengths[out[f]])) {
          out[f] = p;
        }
      }
    }
    return out;
  }

  private static void share(
      double[][] shared,
      Sets groups,
      boolean[] moving,
      int[] plyOf,
      int ply,
      Chain chain,
      int inner,
      int outer) {
    if (moving[inner] && !moving[outer] && plyOf[outer] > 0 && plyOf[outer] < ply) {
      int group = groups.find(inner);
      if (shared[group] == null) {
        shared[group] = new double[ply];
      }
      shared[group][plyOf[outer]] += chain.length();
    }
  }
}
