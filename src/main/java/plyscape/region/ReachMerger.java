package plyscape.region;

import java.util.List;
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

  /**
   * The map with the edges of what the tool reaches.
   *
   * @param chains with faces to their left and right
   * @param plyOf ply of each face
   * @param left faces of the pocket that aren't reached
   */
  private record Cut(List<Chain> chains, int[] plyOf, boolean[] left) {}

  private RegionMap atPly(RegionMap map, int ply) {
    Cut cut = cut(map, ply);
    boolean[] moving = moving(cut);
    int[] target = moving == null ? null : targets(cut, moving, ply);
    int[] plyOf = cut.plyOf();
    boolean some = false;
    for (int f = 0; target != null && f < plyOf.length; f++) {
      if (target[f] > 0) {
        plyOf[f] = target[f];
        some = true;
      }
    }
    return some ? RegionMap.of(cut.chains(), plyOf) : map;
  }

  private Cut cut(RegionMap map, int ply) {
    Linework linework = new Linework(2);
    if (!Opening.add(linework, REACHED, map, ply, radiusUnits)) {
      // Nothing is reached: whole regions are left over, and no line is cut.
      int[] plyOf = new int[map.count()];
      boolean[] left = new boolean[map.count()];
      for (int r = 0; r < plyOf.length; r++) {
        plyOf[r] = map.ply(r);
        left[r] = plyOf[r] >= ply;
      }
      return new Cut(map.chains(), plyOf, left);
    }
    for (Chain chain : map.chains()) {
      linework.add(chain.x, chain.y, REGION, chain.left() - chain.right(), chain.terrain);
    }
    PlanarMap faces = PlanarMap.of(linework);
    int[] plyOf = new int[faces.faces()];
    boolean[] left = new boolean[plyOf.length];
    for (int f = 0; f < plyOf.length; f++) {
      plyOf[f] = map.ply(faces.winding(f, REGION));
      left[f] = plyOf[f] >= ply && faces.winding(f, REACHED) <= 0;
    }
    return new Cut(faces.chains(), plyOf, left);
  }

  /** Faces of leftovers larger than the least area; null when there are none. */
  private boolean[] moving(Cut cut) {
    boolean[] left = cut.left();
    Sets groups = groups(cut, left);
    long[] area2 = RegionMap.areas2(cut.chains(), left.length);
    double[] groupMm2 = new double[left.length];
    for (int f = 0; f < left.length; f++) {
      groupMm2[groups.find(f)] += left[f] ? area2[f] / 2.0 / GridUnits.perMm2() : 0;
    }
    boolean[] moving = new boolean[left.length];
    boolean some = false;
    for (int f = 0; f < left.length; f++) {
      moving[f] = left[f] && groupMm2[groups.find(f)] > leastMm2;
      some |= moving[f];
    }
    return some ? moving : null;
  }

  private static Sets groups(Cut cut, boolean[] in) {
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
  private static int[] targets(Cut cut, boolean[] moving, int ply) {
    int[] plyOf = cut.plyOf();
    Sets groups = groups(cut, moving);
    SharedLines shared = new SharedLines(groups, plyOf.length, ply);
    for (Chain chain : cut.chains()) {
      for (boolean left : new boolean[] {true, false}) {
        int inner = left ? chain.left() : chain.right();
        int outer = left ? chain.right() : chain.left();
        if (moving[inner] && !moving[outer] && plyOf[outer] > 0 && plyOf[outer] < ply) {
          shared.add(inner, plyOf[outer], chain);
        }
      }
    }
    int[] out = new int[plyOf.length];
    for (int f = 0; f < plyOf.length; f++) {
      out[f] = moving[f] ? shared.longest(f) : 0;
    }
    return out;
  }
}
