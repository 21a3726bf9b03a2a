package plyscape.toolpath.motion;

import java.util.ArrayList;
import java.util.List;
import plyscape.machine.Tool;
import plyscape.toolpath.cover.StepWork;
import plyscape.toolpath.depth.DepthStep;
import plyscape.toolpath.lattice.Ring;
import plyscape.toolpath.lattice.Stock;
import plyscape.toolpath.ring.Chunks;
import plyscape.toolpath.ring.KeptChunks;
import plyscape.toolpath.ring.Piece;

/**
 * Holds a cutter to its stepdown in the wood as it stands when the cutter comes, whatever was
 * planned: a larger cutter leaves wood at the rim of a band, small patches are left on purpose, and
 * ribs between the nodes are only seen once they have been cut around.
 */
final class BiteLimit {

  /** Bites that exceed the stepdown by no more than this are as deep as it, mm. */
  private static final double SAME_MM = 2e-4;

  /** Depths are written to this, mm. */
  private static final double PLACE_MM = 1e-3;

  /**
   * A stretch to be cut before another.
   *
   * @param work its step, higher up
   * @param piece the stretch
   */
  record Before(StepWork work, Piece piece) {

    /** The same from its other end. */
    Before reversed() {
      return new Before(work, piece.reversed().against(!piece.against()));
    }
  }

  private final Stock stock;
  private final double radius;
  private final double stepdown;

  BiteLimit(Stock stock, Tool tool) {
    this.stock = stock;
    radius = tool.radiusMm();
    stepdown = tool.stepdownMm();
  }

  /** Whether the cutter may go straight from A to B at a depth. */
  boolean allows(double ax, double ay, double bx, double by, double depthMm) {
    return depthMm <= stepdown + SAME_MM
        || stock.bitten(ax, ay, bx, by, radius) >= depthMm - stepdown - SAME_MM;
  }

  /** Whether it may go along points at a depth. */
  boolean allows(double[][] points, double depthMm) {
    for (int i = 1; i < points.length; i++) {
      if (!allows(points[i - 1][0], points[i - 1][1], points[i][0], points[i][1], depthMm)) {
        return false;
      }
    }
    return true;
  }

  /**
   * The stretches of a piece under which more than a stepdown stands, to be cut once higher up.
   * What stands higher than a stepdown over that is found when they are asked for in turn.
   */
  List<Before> before(StepWork work, Piece piece) {
    double depth = work.step().depthMm();
    if (depth <= stepdown + SAME_MM) {
      return List.of();
    }
    Ring ring = new Ring(piece.index(), piece.closed(), piece.x(), piece.y());
    Chunks chunks = Chunks.of(ring, Math.max(6 * stock.lattice.stepMm(), Math.min(1, radius / 3)));
    KeptChunks kept = new KeptChunks(ring, chunks);
    double highest = depth - stepdown - SAME_MM;
    for (int c = 0; c < chunks.count(); c++) {
      double stands = stands(chunks, c);
      if (stands < depth - stepdown - SAME_MM) {
        kept.keep(c);
        highest = Math.min(highest, stands);
      }
    }
    if (!kept.any()) {
      return List.of();
    }
    kept.closeGaps();
    List<Piece> pieces = new ArrayList<>();
    kept.addTo(pieces, true);
    DepthStep step = new DepthStep(work.step().level(), higher(highest, depth), true, highest);
    StepWork above = new StepWork(step, work.field(), List.of(), work.spacingMm());
    return pieces.stream()
        .map(stretch -> new Before(above, stretch.against(piece.against())))
        .toList();
  }

  /** Depth of the highest wood under the cutter along a chunk, mm. */
  private double stands(Chunks chunks, int c) {
    double highest = Double.POSITIVE_INFINITY;
    for (int i = chunks.start(c); i < chunks.start(c + 1); i++) {
      highest =
          Math.min(
              highest,
              stock.bitten(chunks.x(i), chunks.y(i), chunks.x(i + 1), chunks.y(i + 1), radius));
    }
    return highest;
  }

  /**
   * Depth of the last but one of even cuts from where wood stands down to a depth, as it is
   * written: no cut grows over the stepdown by rounding.
   */
  private double higher(double from, double to) {
    int cuts = (int) Math.ceil((to - from - SAME_MM) / stepdown);
    double depth = written(to - (to - from) / cuts);
    return depth - from <= (cuts - 1) * stepdown + SAME_MM
        ? depth
        : written(to - (to - from) / (cuts + 1));
  }

  /** The next depth that can be written. */
  private static double written(double depth) {
    return Math.ceil(depth / PLACE_MM - SAME_MM) * PLACE_MM;
  }
}
