package plyscape.toolpath.cover;

import java.util.List;
import plyscape.toolpath.lattice.CoarseMap;
import plyscape.toolpath.lattice.Sweep;
import plyscape.toolpath.ring.Chunks;
import plyscape.toolpath.ring.KeptChunks;
import plyscape.toolpath.ring.Piece;

/**
 * The stretches of rings inside the wall ring that a step needs: those whose disk newly clears
 * enough, so that each takes a band of at most about one stepover. A mere sliver is left to the
 * next ring out.
 */
final class InnerCover {

  /**
   * A ring's stretch that would take less than this share of the stepover is left to the next ring.
   */
  private static final double SLIVER = 0.3;

  private final StepNodes nodes;
  private final double sure;
  private final double stepover;
  private final Sweep sweep;

  /**
   * @param sureMm radius of the disk that is surely cleared up to the middle between nodes
   */
  InnerCover(StepNodes nodes, double sureMm, double stepoverMm) {
    this.nodes = nodes;
    sure = sureMm;
    stepover = stepoverMm;
    sweep = new Sweep(nodes.lattice());
  }

  /** Adds what a ring clears enough of. */
  void choose(ChunkCover cover, List<Piece> pieces) {
    keep(cover, pieces, c -> enough(cover, c));
  }

  /**
   * Adds what clears anything that was left.
   *
   * @param blocks near which something was
   */
  void chooseForLeft(ChunkCover cover, CoarseMap blocks, List<Piece> pieces) {
    Chunks chunks = cover.chunks;
    keep(
        cover,
        pieces,
        c ->
            blocks.near(chunks.x(chunks.start(c)), chunks.y(chunks.start(c)))
                && cover.count(c, nodes::countLeft) > 0);
  }

  private interface Needed {
    boolean at(int chunk);
  }

  private void keep(ChunkCover cover, List<Piece> pieces, Needed needed) {
    Chunks chunks = cover.chunks;
    KeptChunks kept = new KeptChunks(cover.ring, chunks);
    boolean before = false;
    for (int c = 0; c < chunks.count(); c++) {
      boolean here = needed.at(c);
      if (here) {
        kept.keep(c);
        if (!before) { // where it begins the whole disk comes down
          int a = chunks.start(c);
          sweep.all(chunks.x(a), chunks.y(a), chunks.x(a + 1), chunks.y(a + 1), sure, nodes::clear);
        }
        cover.each(c, nodes::clear);
      }
      before = here;
    }
    if (kept.any()) {
      kept.closeGaps();
      kept.addTo(pieces, false);
    }
  }

  private boolean enough(ChunkCover cover, int c) {
    int wanted = cover.count(c, nodes::countWantedLarge);
    return wanted * nodes.lattice().nodeAreaMm2() > SLIVER * stepover * cover.chunks.lengthMm(c);
  }
}
