package plyscape.toolpath.motion;

import java.util.ArrayList;
import java.util.List;
import plyscape.toolpath.ring.Piece;
import plyscape.toolpath.slot.SlotLevels;
import plyscape.toolpath.slot.SlotLimits;

/**
 * Cuts a piece under which more than a stepdown stands from what stands to its floor in one visit:
 * an open one to and fro, ever deeper ({@link SlotLevels}), a closed one round and round. The last
 * way is flat and all along the piece.
 */
final class StretchCutter {

  /** Beyond the last wood there is nothing to clean up nearer than this, mm. */
  private static final double TAIL_MM = 0.6;

  /** Going round over ground that is gone for longer than this isn't worth it, s. */
  private static final double VISIT_S = 1.2;

  private final CutterHead head;
  private final PieceEntry entry;
  private final WidthFeed feeds;
  private final SlotLimits limits;

  /**
   * @param feeds of the cutter
   */
  StretchCutter(CutterHead head, PieceEntry entry, WidthFeed feeds) {
    this.head = head;
    this.entry = entry;
    this.feeds = feeds;
    limits = SlotLimits.alongRest(head.tool(), head.options());
  }

  /** Cuts a piece of the step that is being cut, unless it ends in wood; whether it did. */
  boolean cut(Piece piece) {
    PieceWood wood = PieceWood.under(piece, head, feeds);
    if (!piece.closed() && !wood.openAtBothEnds() && piece.lengthMm() >= RampEntry.LEAST_ROOM_MM) {
      return false;
    }
    if (idleMm(wood) > VISIT_S * head.tool().feedMmPerMin() / 60) {
      return false;
    }
    List<double[]> points =
        piece.lengthMm() < RampEntry.LEAST_ROOM_MM
            ? bored(wood)
            : piece.closed() ? rounds(wood) : toAndFro(wood);
    double[] start = points.get(0);
    if (wood.openAtStart()) {
      entry.down(start[0], start[1]);
    } else {
      head.over(start[0], start[1], start[2] - CutterHead.TOUCH_MM);
      head.sink(start[0], start[1], start[2]);
    }
    head.along(LineThinning.ends(points, head.tool().feedMmPerMin()));
    return true;
  }

  private int times(PieceWood wood) {
    double down = head.floor() - wood.highest();
    return Math.max(1, (int) Math.ceil(down / limits.stepdownMm() - 1e-6));
  }

  /** How far the rounds before the last go over what is gone by then, for each of them, mm. */
  private double idleMm(PieceWood wood) {
    int times = times(wood);
    double idle = 0;
    for (int time = 1; time < times; time++) {
      idle += wood.goneMm(wood.highest() + (head.floor() - wood.highest()) * time / times);
    }
    return times == 1 ? 0 : idle / (times - 1);
  }

  /**
   * To and fro along an open piece, from its first point: X, Y, depth and share of the feed of each
   * place.
   */
  private List<double[]> toAndFro(PieceWood wood) {
    int n = wood.size();
    int[] ends = wood.ends();
    List<double[]> points = new ArrayList<>();
    for (int i = 0; i < ends[0]; i++) {
      points.add(wood.point(i, head.floor(), 1));
    }
    boolean[] there = {wood.way(ends[1], n - 1) <= TAIL_MM};
    wood.levels(ends[0], ends[1], limits)
        .run(
            (i, side, depth, bite, rim) -> {
              points.add(wood.cut(ends[0] + i, depth, bite));
              if (ends[0] + i == ends[1] && !there[0]) {
                there[0] = true;
                outAndBack(wood, ends[1], points);
              }
            });
    return points;
  }

  /** From a section at the end of the wood at the floor to the end of the piece and back. */
  private void outAndBack(PieceWood wood, int from, List<double[]> points) {
    for (int i = from; i < wood.size(); i++) {
      points.add(wood.point(i, head.floor(), 1));
    }
    for (int i = wood.size() - 2; i >= from; i--) {
      points.add(wood.point(i, head.floor(), 1));
    }
  }

  /**
   * Round and round a closed piece, a stepdown deeper each time: over open ground where there is
   * some, else on a ramp in the wood; and once at the floor.
   */
  private List<double[]> rounds(PieceWood wood) {
    int open = wood.openAhead();
    return open == 0 ? wound(wood) : stepped(wood, open);
  }

  /**
   * @param open sections at the end over which the cutter comes down
   */
  private List<double[]> stepped(PieceWood wood, int open) {
    double top = wood.highest();
    int rounds = times(wood);
    List<double[]> points = new ArrayList<>();
    int n = wood.size() - 1;
    double before = top;
    double fall = wood.way(n - open, n);
    for (int round = 1; round <= rounds; round++) {
      double depth = top + (head.floor() - top) * round / rounds;
      double next = top + (head.floor() - top) * Math.min(rounds, round + 1) / rounds;
      for (int i = round == 1 ? 0 : 1; i <= n; i++) {
        double so = i <= n - open ? 0 : wood.way(n - open, i) / fall;
        points.add(wood.cut(i, depth + so * (next - depth), depth - wood.gone(i, before)));
      }
      before = depth;
    }
    return points;
  }

  /** Straight down a stepdown, and along, as there is no room for a ramp. */
  private List<double[]> bored(PieceWood wood) {
    double top = wood.highest();
    int times = times(wood);
    List<double[]> points = new ArrayList<>();
    points.add(wood.point(0, top, 1));
    int n = wood.size();
    for (int time = 1; time <= times; time++) {
      double depth = top + (head.floor() - top) * time / times;
      for (int s = 0; s < n; s++) {
        points.add(wood.cut(time % 2 == 1 ? s : n - 1 - s, depth, (head.floor() - top) / times));
      }
    }
    return points;
  }

  private List<double[]> wound(PieceWood wood) {
    int n = wood.size() - 1;
    double length = wood.way(0, n);
    double slope = Math.min(limits.slope(), limits.stepdownMm() / length);
    double top = wood.highest();
    double depth = top;
    List<double[]> points = new ArrayList<>();
    points.add(wood.point(0, top, 1));
    double flat = 0;
    for (int i = 0; flat < length - 1e-9; i = i + 1 == n ? 0 : i + 1) {
      double step = wood.way(i, i + 1);
      double bite = Math.min(depth - top, slope * length);
      flat += depth >= head.floor() - 1e-9 ? step : 0;
      depth = Math.min(head.floor(), depth + slope * step);
      points.add(wood.cut(i + 1, depth, bite));
    }
    return points;
  }
}
