package plyscape.toolpath.motion;

import plyscape.machine.Tool;
import plyscape.toolpath.lattice.Stock;
import plyscape.toolpath.ring.Chunks;
import plyscape.toolpath.task.PathOptions;

/**
 * The share of a cutter's feed at which it goes, from the width that it newly cuts: all of it up to
 * the stepover, then less in proportion, down to that of a slot ({@link PathOptions#feedShare}). A
 * bite of less than the stepdown goes faster in proportion, up to the feed: the same wood a minute;
 * and no chip is thinner than the least. Where the cutter allows more in thin bites, the feed grows
 * as chips get thinner than those at half a diameter: by 1 / (2 sqrt(r - r2)) at a width of r
 * diameters (references.md, section 5).
 */
final class WidthFeed {

  /** Feed changes come in steps of this share, so that programs stay small. */
  private static final double FEED_STEP = 0.02;

  /** Widths are read off a lattice; this much over the stepover is its grain. */
  private static final double WIDTH_GRAIN = 1.1;

  private final Stock stock;
  private final Tool tool;
  private final PathOptions options;

  /** Share of the feed at which chips are as thin as they may be. */
  private final double leastShare;

  /**
   * @param leastChipMm thinnest chip a tooth
   */
  WidthFeed(Stock stock, Tool tool, PathOptions options, double leastChipMm) {
    this.stock = stock;
    this.tool = tool;
    this.options = options;
    double least = leastChipMm * tool.flutes() * tool.rpm() / tool.feedMmPerMin();
    leastShare = Math.min(1, Math.ceil(least / FEED_STEP - 1e-9) * FEED_STEP);
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
      double taken = 0;
      for (int i = chunks.start(c); i < chunks.start(c + 1); i++) {
        count +=
            stock.cut(chunks.x(i), chunks.y(i), chunks.x(i + 1), chunks.y(i + 1), radius, depth);
        taken += stock.takenMm();
      }
      own[c] = share(widthMm(count, chunks.lengthMm(c)), count == 0 ? 0 : taken / count);
    }
    return own;
  }

  /** Mean width of what was newly cut on a way, mm. */
  double widthMm(int nodes, double length) {
    return length < 1e-9 ? 0 : nodes * stock.lattice.nodeAreaMm2() / length;
  }

  /** Share of the feed at a width in a bite of a stepdown, mm. */
  double share(double width) {
    return share(width, tool.stepdownMm());
  }

  /** Share of the feed at a width and a mean depth of what is newly cut, mm. */
  double share(double width, double bite) {
    if (width <= WIDTH_GRAIN * tool.stepoverMm()) {
      return thin(width);
    }
    double full = options.feedShare(width, tool.stepoverMm(), tool.diameterMm());
    double exact = full * tool.stepdownMm() / Math.max(bite, 1e-6);
    double share = Math.max(leastShare, Math.floor(exact / FEED_STEP + 1e-9) * FEED_STEP);
    return Math.min(1, Math.max(options.slotFeed(), share));
  }

  /** Share of the feed in a bite no wider than the stepover. */
  private double thin(double width) {
    double most = tool.thinFeedMmPerMin() / tool.feedMmPerMin();
    double r = width / tool.diameterMm();
    if (most <= 1 || r >= 0.5) {
      return 1;
    }
    double grown = 1 / (2 * Math.sqrt(Math.max(1e-9, r - r * r)));
    return Math.floor(Math.min(most, Math.max(1, grown)) / FEED_STEP + 1e-9) * FEED_STEP;
  }
}
