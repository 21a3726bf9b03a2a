package plyscape.toolpath.motion;

import java.util.ArrayList;
import java.util.List;
import plyscape.toolpath.lattice.Stock;
import plyscape.toolpath.slot.SlotLevels;
import plyscape.toolpath.slot.SlotLimits;
import plyscape.toolpath.slot.SlotWay;

/**
 * Cuts a slot to its floor in one go: to and fro, ever deeper ({@link SlotLevels}), at a feed that
 * takes the same wood a minute as the cutter does in a slot a stepdown deep, never over its feed
 * nor, on the way down, over its plunge feed.
 */
final class SlotCutter {

  /** Feed changes come in steps of this share, so that programs stay small. */
  private static final double FEED_STEP = 0.05;

  /** Ways to the next slot over its own floor that are no longer than this need no lift, mm. */
  private static final double STEP_MM = 0.3;

  private final CutterHead head;
  private final PieceEntry entry;
  private final Stock stock;
  private final SlotLimits limits;

  /**
   * @param leastChipMm thinnest chip a tooth
   */
  SlotCutter(CutterHead head, PieceEntry entry, Stock stock, double leastChipMm) {
    this.head = head;
    this.entry = entry;
    this.stock = stock;
    limits = SlotLimits.of(head.tool(), head.options(), leastChipMm);
  }

  /** Cuts it from the end that is nearer. */
  void cut(SlotWay way) {
    int end = way.size() - 1;
    boolean back =
        Math.hypot(way.x()[end] - head.x(), way.y()[end] - head.y())
            < Math.hypot(way.x()[0] - head.x(), way.y()[0] - head.y()) - 1e-6;
    SlotWay slot = back ? way.reversed() : way;
    double[] standing = new double[slot.size()];
    for (int i = 0; i < standing.length; i++) {
      standing[i] = standing(slot, i);
    }
    addBeside(slot, standing);
    SlotLevels levels = new SlotLevels(slot, standing, head.floor(), limits);
    List<double[]> points = new ArrayList<>();
    levels.run(
        (i, side, depth, gone, bite, rim) -> {
          double x = side < 0 ? slot.x()[i] : side == 0 ? slot.leftX()[i] : slot.rightX()[i];
          double y = side < 0 ? slot.y()[i] : side == 0 ? slot.leftY()[i] : slot.rightY()[i];
          points.add(new double[] {x, y, depth, share(bite, rim, slot.roomMm(i)), gone});
        });
    if (points.isEmpty()) {
      return;
    }
    enter(points.get(0));
    double fall = head.tool().feedMmPerMin() / head.tool().plungeMmPerMin();
    List<double[]> spread =
        OpenTurns.spread(points, fall, (point, depth) -> point[4] >= depth - Stock.SAME_MM);
    head.along(LineThinning.ends(spread, head.tool()));
  }

  /** Depth of the highest wood across a section that the cutter can take away, mm. */
  private double standing(SlotWay slot, int i) {
    int j = i + 1 < slot.size() ? i + 1 : i - 1;
    double dx = slot.x()[j] - slot.x()[i];
    double dy = slot.y()[j] - slot.y()[i];
    double d = Math.max(1e-9, Math.hypot(dx, dy));
    double step = stock.lattice.stepMm();
    double radius = head.tool().radiusMm();
    double half = radius + slot.roomMm(i) / 2 - Stock.RIM_MM;
    int parts = Math.max(1, (int) Math.ceil(2 * half / step));
    double highest = head.floor();
    for (int p = -parts; p <= parts; p++) {
      double off = half * p / parts;
      double x = slot.x()[i] - off * dy / d;
      double y = slot.y()[i] + off * dx / d;
      // Between nodes wood may stand that only the surely cut ones tell.
      if (half - Math.abs(off) > 1.2 * step) {
        highest = Math.min(highest, stock.sureAt(x, y));
      }
      if (head.way().inside(x, y)) {
        highest = Math.min(highest, stock.at(x, y));
      }
    }
    return highest;
  }

  /**
   * Adds wood that the cutter meets at a section though it stands across none near it, in bends, or
   * though those near it don't take it away, where a slot opens.
   */
  private void addBeside(SlotWay slot, double[] standing) {
    double[] across = standing.clone();
    for (int i = 0; i < across.length; i++) {
      int highest = highestNear(slot, across, i);
      double met = Math.min(across(slot, i), Math.min(beside(slot, i, -1), beside(slot, i, 1)));
      if (met < across[highest] - 0.01
          || met < head.floor() - Stock.SAME_MM
              && across[i] >= head.floor() - Stock.SAME_MM
              && beyond(slot, i, highest)) {
        standing[i] = Math.min(standing[i], met);
      }
    }
  }

  /** The section no farther off than the cutter's radius across which the highest wood stands. */
  private int highestNear(SlotWay slot, double[] across, int i) {
    int highest = i;
    for (int step = -1; step <= 1; step += 2) {
      double way = 0;
      for (int k = i + step; k >= 0 && k < across.length; k += step) {
        way += slot.wayMm(k - step, k);
        if (way > head.tool().radiusMm()) {
          break;
        }
        highest = across[k] < across[highest] ? k : highest;
      }
    }
    return highest;
  }

  /** Whether wood at the sides of a section is out of reach from the sides of another. */
  private boolean beyond(SlotWay slot, int i, int other) {
    return beyond(slot, slot.leftX()[i], slot.leftY()[i], other)
        || beyond(slot, slot.rightX()[i], slot.rightY()[i], other);
  }

  private boolean beyond(SlotWay slot, double x, double y, int other) {
    double radius = head.tool().radiusMm();
    double within = radius - Stock.RIM_MM;
    double step = stock.lattice.stepMm();
    for (double dy = -within; dy <= within; dy += step) {
      for (double dx = -within; dx <= within; dx += step) {
        boolean stands =
            dx * dx + dy * dy <= within * within
                && stock.at(x + dx, y + dy) < head.floor() - Stock.SAME_MM
                && head.way().inside(x + dx, y + dy);
        if (stands
            && Math.hypot(x + dx - slot.leftX()[other], y + dy - slot.leftY()[other]) > radius
            && Math.hypot(x + dx - slot.rightX()[other], y + dy - slot.rightY()[other]) > radius) {
          return true;
        }
      }
    }
    return false;
  }

  /** Depth of the highest wood that the cutter meets at a section, from wall to wall, mm. */
  private double across(SlotWay slot, int i) {
    double radius = head.tool().radiusMm();
    return stock.bitten(
        slot.leftX()[i], slot.leftY()[i], slot.rightX()[i], slot.rightY()[i], radius);
  }

  /**
   * The same on its way from a section halfway to a neighbour, at the middle and along both walls.
   */
  private double beside(SlotWay slot, int i, int step) {
    int k = i + step;
    if (k < 0 || k >= slot.size()) {
      return Double.POSITIVE_INFINITY;
    }
    return Math.min(
        halfway(slot.x(), slot.y(), i, k),
        Math.min(
            halfway(slot.leftX(), slot.leftY(), i, k),
            halfway(slot.rightX(), slot.rightY(), i, k)));
  }

  private double halfway(double[] x, double[] y, int i, int k) {
    double radius = head.tool().radiusMm();
    return stock.bitten(x[i], y[i], (x[i] + x[k]) / 2, (y[i] + y[k]) / 2, radius);
  }

  /** Share of the feed at a depth of cut over the whole width, and beside a wall. */
  private double share(double biteMm, double rimMm, double roomMm) {
    double stepdown = head.tool().stepdownMm();
    double full = head.options().slotFeed() * stepdown / Math.max(1e-9, biteMm);
    double width = Math.min(head.tool().diameterMm(), roomMm);
    double beside =
        head.options().feedShare(width, head.tool().stepoverMm(), head.tool().diameterMm())
            * stepdown
            / Math.max(1e-9, rimMm);
    double share = Math.min(1, Math.min(full, beside));
    return Math.max(FEED_STEP, Math.floor(share / FEED_STEP + 1e-6) * FEED_STEP);
  }

  private void enter(double[] start) {
    double hop = Math.hypot(start[0] - head.x(), start[1] - head.y());
    if (head.level()
        && hop < STEP_MM
        && head.way().free(head.x(), head.y(), start[0], start[1])
        && head.mayCut(head.x(), head.y(), start[0], start[1])) {
      double feed = head.tool().feedMmPerMin();
      head.along(
          List.of(
              new double[] {start[0], start[1], head.floor(), feed},
              new double[] {start[0], start[1], start[2], feed}));
      return;
    }
    entry.land(start[0], start[1], start[2]);
  }
}
