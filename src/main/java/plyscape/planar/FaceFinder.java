package plyscape.planar;

import java.util.Arrays;
import java.util.List;

/**
 * Finds the faces between chains and sets them at both sides of each chain. Every half-edge belongs
 * to one cycle with its face to the left; a counter-clockwise cycle is a face's outer boundary; the
 * clockwise one of each connected part of the map bounds it from outside and lies in the face to
 * the left of its westernmost point. Takes a step a point, and a {@link WestwardRay} a part.
 */
final class FaceFinder {

  private final List<Chain> chains;
  private final NodeTable nodes;
  private final int[] cycleOf;
  private int cycles;

  FaceFinder(List<Chain> chains) {
    this.chains = chains;
    nodes = new NodeTable(chains);
    cycleOf = new int[2 * chains.size()];
  }

  /**
   * Sets {@code left} and {@code right} of all chains; returns how many faces there are, the
   * outside (0) included.
   */
  int assign() {
    long[] area2 = traceCycles();
    int[] part = parts();
    int parts = Arrays.stream(part).max().orElse(-1) + 1;
    int[] faceOf = new int[cycles];
    int[] holeCycle = new int[parts];
    Arrays.fill(holeCycle, -1);
    int faces = 1;
    for (int h = 0; h < cycleOf.length; h++) {
      int cycle = cycleOf[h];
      if (faceOf[cycle] == 0) {
        if (area2[cycle] > 0) {
          faceOf[cycle] = faces++;
        } else {
          faceOf[cycle] = -1;
          holeCycle[part[nodes.start(h)]] = cycle;
        }
      }
    }
    placeParts(part, holeCycle, faceOf);
    for (int c = 0; c < chains.size(); c++) {
      chains.get(c).left = faceOf[cycleOf[2 * c]];
      chains.get(c).right = faceOf[cycleOf[2 * c + 1]];
    }
    return faces;
  }

  private long[] traceCycles() {
    Arrays.fill(cycleOf, -1);
    long[] area2 = new long[cycleOf.length];
    for (int h = 0; h < cycleOf.length; h++) {
      if (cycleOf[h] < 0) {
        int at = h;
        do {
          cycleOf[at] = cycles;
          long cross = chains.get(at >> 1).cross2();
          area2[cycles] += (at & 1) == 0 ? cross : -cross;
          at = nodes.clockwise(at ^ 1);
        } while (at != h);
        cycles++;
      }
    }
    return area2;
  }

  /** Number of the connected part of each node. */
  private int[] parts() {
    Sets sets = new Sets(nodes.count());
    for (int c = 0; c < chains.size(); c++) {
      sets.join(nodes.start(2 * c), nodes.start(2 * c + 1));
    }
    return sets.numbers();
  }

  private void placeParts(int[] part, int[] holeCycle, int[] faceOf) {
    int parts = holeCycle.length;
    if (parts == 0) {
      return;
    }
    int[] partOfChain = new int[chains.size()];
    int[] bestX = new int[parts];
    int[] bestY = new int[parts];
    Arrays.fill(bestX, Integer.MAX_VALUE);
    Arrays.fill(bestY, Integer.MAX_VALUE);
    for (int c = 0; c < chains.size(); c++) {
      Chain chain = chains.get(c);
      int p = part[nodes.start(2 * c)];
      partOfChain[c] = p;
      for (int i = 0; i < chain.x.length; i++) {
        if (chain.x[i] < bestX[p] || chain.x[i] == bestX[p] && chain.y[i] < bestY[p]) {
          bestX[p] = chain.x[i];
          bestY[p] = chain.y[i];
        }
      }
    }
    Integer[] order = new Integer[parts];
    Arrays.setAll(order, i -> i);
    // From west to east: what lies to the west of a part has been placed before it.
    Arrays.sort(
        order,
        (a, b) ->
            bestX[a] != bestX[b] ? Integer.compare(bestX[a], bestX[b]) : Integer.compare(a, b));
    WestwardRay ray = parts > 1 ? new WestwardRay(chains) : null;
    for (int p : order) {
      int half = ray == null ? -1 : ray.hit(bestX[p], bestY[p], partOfChain, p);
      int cycle = half < 0 ? -1 : cycleOf[half];
      faceOf[holeCycle[p]] = cycle < 0 ? 0 : faceOf[cycle];
    }
  }
}
