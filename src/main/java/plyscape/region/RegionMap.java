package plyscape.region;

import java.util.ArrayList;
import java.util.List;
import plyscape.planar.Chain;
import plyscape.planar.Sets;

/**
 * The carved area as connected regions of one ply and the chains between them. Region 0 is the
 * outside, ply 0. Two regions that share a chain have different plies. Changing it makes a new one.
 */
final class RegionMap {

  private final List<Chain> chains;
  private final int[] ply;
  private final long[] area2;

  private RegionMap(List<Chain> chains, int[] ply) {
    this.chains = chains;
    this.ply = ply;
    area2 = areas2(chains, ply.length);
  }

  /**
   * Joins faces of one ply that share a line.
   *
   * @param lines chains with faces to their left and right
   * @param plyOfFace ply of each face, 0 for the outside
   */
  static RegionMap of(List<Chain> lines, int[] plyOfFace) {
    Sets sets = new Sets(plyOfFace.length);
    for (Chain chain : lines) {
      if (plyOfFace[chain.left()] == plyOfFace[chain.right()]) {
        sets.join(chain.left(), chain.right());
      }
    }
    int[] number = sets.numbers();
    int count = 0;
    for (int n : number) {
      count = Math.max(count, n + 1);
    }
    int[] ply = new int[count];
    for (int f = 0; f < number.length; f++) {
      ply[number[f]] = plyOfFace[f];
    }
    List<Chain> relabelled = new ArrayList<>(lines.size());
    for (Chain chain : lines) {
      relabelled.add(
          new Chain(chain.x, chain.y, chain.terrain, number[chain.left()], number[chain.right()]));
    }
    return new RegionMap(ChainJoiner.join(relabelled), ply);
  }

  /**
   * The same regions with other outlines; the chains are in the same order and have the same ends.
   */
  RegionMap with(List<Chain> otherChains) {
    return new RegionMap(otherChains, ply);
  }

  /** Twice the area of each face or region, exact. */
  static long[] areas2(List<Chain> chains, int count) {
    long[] out = new long[count];
    for (Chain chain : chains) {
      long cross = chain.cross2();
      out[chain.left()] += cross;
      out[chain.right()] -= cross;
    }
    return out;
  }

  List<Chain> chains() {
    return chains;
  }

  /** Regions, the outside (0) included. */
  int count() {
    return ply.length;
  }

  int ply(int region) {
    return ply[region];
  }

  int deepest() {
    int out = 0;
    for (int p : ply) {
      out = Math.max(out, p);
    }
    return out;
  }

  /** Twice the area, square grid units. */
  long area2(int region) {
    return area2[region];
  }
}
