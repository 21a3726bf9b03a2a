package plyscape.region;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import plyscape.planar.Chain;
import plyscape.planar.LongIds;

/** Drops chains that separate nothing and joins the rest where only two meet. */
final class ChainJoiner {

  private final List<Chain> chains;
  private final int[] startNode;
  private final int[] first;
  private final int[] ends;
  private final boolean[] used;
  private final List<Chain> out = new ArrayList<>();

  private ChainJoiner(List<Chain> chains) {
    this.chains = chains;
    LongIds ids = new LongIds(2 * chains.size());
    startNode = new int[2 * chains.size()];
    for (int c = 0; c < chains.size(); c++) {
      Chain chain = chains.get(c);
      startNode[2 * c] = ids.id(LongIds.pair(chain.x[0], chain.y[0]));
      startNode[2 * c + 1] = ids.id(LongIds.pair(chain.x[chain.last()], chain.y[chain.last()]));
    }
    first = new int[ids.size() + 1];
    for (int node : startNode) {
      first[node + 1]++;
    }
    for (int n = 0; n < ids.size(); n++) {
      first[n + 1] += first[n];
    }
    ends = new int[startNode.length];
    int[] fill = Arrays.copyOf(first, first.length);
    for (int h = 0; h < startNode.length; h++) {
      ends[fill[startNode[h]]++] = h;
    }
    used = new boolean[chains.size()];
  }

  /**
   * The chains whose sides differ, as long as they can be. Terrain lines and mapped lines aren't
   * joined to each other.
   */
  static List<Chain> join(List<Chain> chains) {
    List<Chain> kept = chains.stream().filter(c -> c.left() != c.right()).toList();
    ChainJoiner joiner = new ChainJoiner(kept);
    // From nodes first; what is left are closed lines through no node.
    for (int h = 0; h < 2 * kept.size(); h++) {
      if (!joiner.used[h >> 1] && joiner.through(h) < 0) {
        joiner.run(h);
      }
    }
    for (int h = 0; h < 2 * kept.size(); h += 2) {
      if (!joiner.used[h >> 1]) {
        joiner.run(h);
      }
    }
    return joiner.out;
  }

  /**
   * The half-edge that goes on from behind the start of this one, or -1 when its start is a node to
   * keep.
   */
  private int through(int half) {
    int node = startNode[half];
    if (first[node + 1] - first[node] != 2) {
      return -1;
    }
    int other = ends[first[node]] == half ? ends[first[node] + 1] : ends[first[node]];
    return chains.get(other >> 1).terrain == chains.get(half >> 1).terrain ? other : -1;
  }

  private void run(int half) {
    Chain begin = chains.get(half >> 1);
    int[] x = new int[begin.x.length];
    int[] y = new int[begin.x.length];
    int points = 0;
    int at = half;
    while (true) {
      used[at >> 1] = true;
      Chain chain = chains.get(at >> 1);
      int n = chain.x.length;
      if (points + n > x.length) {
        x = Arrays.copyOf(x, Math.max(points + n, 2 * points));
        y = Arrays.copyOf(y, x.length);
      }
      for (int i = points == 0 ? 0 : 1; i < n; i++) {
        int from = (at & 1) == 0 ? i : n - 1 - i;
        x[points] = chain.x[from];
        y[points++] = chain.y[from];
      }
      int next = through(at ^ 1);
      if (next < 0 || used[next >> 1]) {
        break;
      }
      at = next;
    }
    boolean along = (half & 1) == 0;
    out.add(
        new Chain(
            Arrays.copyOf(x, points),
            Arrays.copyOf(y, points),
            begin.terrain,
            along ? begin.left() : begin.right(),
            along ? begin.right() : begin.left()));
  }
}
