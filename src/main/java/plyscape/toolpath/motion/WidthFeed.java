package plyscape.toolpath.motion;

import plyscape.machine.Tool;
import plyscape.toolpath.lattice.Stock;
import plyscape.toolpath.ring.Chunks;
import plyscape.toolpath.task.PathOptions;

/**
 * The share of a cutter's feed at which it goes, from the width that it newly cuts: all of it up to
 * the stepover, then less in proportion, down to that of a slot ({@link PathOptions#feedShare}).
 */
final class WidthFeed {

  /** Feed changes come in steps of this share, so that programs stay small. */
  private static final double FEED_STEP = 0.02;

  /** Widths are read off a lattice; this much over the stepover is its grain. */
  private static final double WIDTH_GRAIN = 1.1;

  private final Stock stock;
  private final Tool tool;
  private final PathOptions options;

  WidthFeed(Stock stock, Tool tool, PathOptions options) {
    this.stock = stock;
    this.tool = tool;
    this.options = options;
  }

  /**
   * Cuts the chunks in the stock; the share of the feed for each. What a chunk newly clears lies
   * ahead of the cutter's centre, so that no chunk needs to be slowed for the next.
   */
  double[] cut(Chunks chunks, double depth) {
    double radius = tool.radiusMm();
    double[] own = new double[chunks.count()];
    for (int c = 0; c < own.length; c++) {
      int count = 0;
      for (int i = chunks.start(c); i < chunks.start(c + 1); i++) {
        count +=
            stock.cut(chunks.x(i), chunks.y(i), chunks.x(i + 1), chunks.y(i + 1), radius, depth);
      }
      own[c] = share(widthMm(count, chunks.lengthMm(c)));
    }
    return own;
  }

  /** Mean width of what was newly cut on a way, mm. */
  double widthMm(int nodes, double length) {
    return length < 1e-9 ? 0 : nodes * stock.lattice.nodeAreaMm2() / length;
  }

  /** Share of the feed at a width, mm. */
  double share(double width) {
    if (width <= WIDTH_GRAIN * tool.stepoverMm()) {
      return 1;
    }
    double exact = options.feedShare(width, tool.stepoverMm(), tool.diameterMm());
    return Math.max(options.slotFeed(), Math.floor(exact / FEED_STEP + 1e-9) * FEED_STEP);
  }
}
