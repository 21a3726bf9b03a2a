package plyscape.toolpath.cover;

import java.util.List;
import plyscape.toolpath.lattice.CoarseMap;
import plyscape.toolpath.lattice.Ring;
import plyscape.toolpath.lattice.Sweep;
import plyscape.toolpath.ring.Chunks;
import plyscape.toolpath.ring.KeptChunks;
import plyscape.toolpath.ring.Piece;

/**
 * The stretches of wall rings that a step needs: all that clears a wanted node, and what the wall
 * itself asks for.
 */
final class WallCover {

  private final StepNodes nodes;
  private final double radius;
  private final double sure;
  private final Sweep sweep;

  /**
   * @param sureMm radius of the disk that is surely cleared up to the middle between nodes
   */
  WallCover(StepNodes nodes, double radiusMm, double sureMm) {
    this.nodes = nodes;
    radius = radiusMm;
    sure = sureMm;
    sweep = new Sweep(nodes.lattice());
  }

  /**
   * Leaves what a short ring would clear standing if that isn't worth coming down for; whether it
   * did.
   *
   * @param leastMm2 what it must clear; less is left to a later cutter
   */
  boolean leave(Ring ring, double leastMm2) {
    if (leastMm2 <= 0 || ring.lengthMm() > radius) {
      return false;
    }
    int[] wanted = {0};
    around(ring, (first, last) -> wanted[0] += nodes.countWanted(first, last));
    if (wanted[0] * nodes.lattice().nodeAreaMm2() >= leastMm2) {
      return false;
    }
    around(ring, nodes::leaveStanding);
    return true;
  }

  /** All nodes under the disk on its way along a ring, each once for a ring within its disk. */
  private void around(Ring ring, Sweep.Run run) {
    double[] x = ring.x();
    double[] y = ring.y();
    sweep.all(x[0], y[0], x[0], y[0], radius, run);
    for (int i = 1; i < ring.size(); i++) {
      sweep.fresh(x[i - 1], y[i - 1], x[i], y[i], radius, run);
    }
  }

  /**
   * Adds what is needed of a ring, one chunk farther at both ends, where what is left thins out to
   * nothing.
   *
   * @param blocks near which something is wanted
   */
  void choose(ChunkCover cover, WallNeed need, CoarseMap blocks, List<Piece> pieces) {
    KeptChunks kept = new KeptChunks(cover.ring, cover.chunks);
    boolean before = false;
    for (int c = 0; c < cover.chunks.count(); c++) {
      boolean here = needed(cover, c, need, blocks);
      if (here) {
        kept.keep(c);
        clear(cover.chunks, c, before);
      }
      before = here;
    }
    if (kept.any()) {
      kept.widen();
      kept.closeGaps();
      kept.addTo(pieces, need != WallNeed.NONE);
    }
  }

  /**
   * Adds what clears anything that was left.
   *
   * @param blocks near which something was
   */
  void chooseForLeft(ChunkCover cover, CoarseMap blocks, List<Piece> pieces) {
    Chunks chunks = cover.chunks;
    KeptChunks kept = new KeptChunks(cover.ring, chunks);
    boolean before = false;
    for (int c = 0; c < chunks.count(); c++) {
      int a = chunks.start(c);
      boolean here =
          blocks.near(chunks.x(a), chunks.y(a)) && count(chunks, c, blocks, nodes::countLeft) > 0;
      if (here) {
        kept.keep(c);
        clear(chunks, c, before);
      }
      before = here;
    }
    if (kept.any()) {
      kept.closeGaps();
      kept.addTo(pieces, false);
    }
  }

  private boolean needed(ChunkCover cover, int c, WallNeed need, CoarseMap blocks) {
    Chunks chunks = cover.chunks;
    // Tight places, which are open, go by the nodes alone: the rings along the walls have been
    // asked already.
    if (cover.ring.closed()) {
      for (int i = chunks.start(c); i < chunks.start(c + 1); i++) {
        double ax = chunks.x(i);
        double ay = chunks.y(i);
        if (need.at(ax, ay) || need.at((ax + chunks.x(i + 1)) / 2, (ay + chunks.y(i + 1)) / 2)) {
          return true;
        }
      }
    }
    return count(chunks, c, blocks, nodes::countWanted) > 0;
  }

  private int count(Chunks chunks, int c, CoarseMap blocks, ChunkCover.Count of) {
    int[] count = {0};
    for (int i = chunks.start(c); i < chunks.start(c + 1); i++) {
      double ax = chunks.x(i);
      double ay = chunks.y(i);
      if (blocks.near(ax, ay)) {
        sweep.all(
            ax,
            ay,
            chunks.x(i + 1),
            chunks.y(i + 1),
            radius,
            (first, last) -> count[0] += of.of(first, last));
      }
    }
    return count[0];
  }

  /** What lies within the disk is cleared, and of its rim what is at the rim of the reach. */
  private void clear(Chunks chunks, int c, boolean goesOn) {
    for (int i = chunks.start(c); i < chunks.start(c + 1); i++) {
      double ax = chunks.x(i);
      double ay = chunks.y(i);
      double bx = chunks.x(i + 1);
      double by = chunks.y(i + 1);
      if (goesOn || i > chunks.start(c)) {
        sweep.fresh(ax, ay, bx, by, sure, nodes::clear);
        sweep.fresh(ax, ay, bx, by, radius, nodes::clearRim);
      } else {
        sweep.all(ax, ay, bx, by, sure, nodes::clear);
        sweep.all(ax, ay, bx, by, radius, nodes::clearRim);
      }
    }
  }
}
