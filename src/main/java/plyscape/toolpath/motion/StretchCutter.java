package plyscape.toolpath.motion;

import java.util.ArrayList;
import java.util.List;
import plyscape.toolpath.lattice.Stock;
import plyscape.toolpath.ring.Piece;

/**
 * Cuts a piece under which more than a stepdown stands from what stands to its floor in one visit:
 * an open one to and fro, a closed one round and round, a stepdown deeper each time at most, or to
 * and fro over no more of it than stands above each level. The last way goes all along the piece:
 * between the nodes of a lattice wood may stand that isn't seen.
 */
final class StretchCutter {

  /** Going over ground that is gone for longer than this isn't worth it, s. */
  private static final double VISIT_S = 1.2;

  /** Turning and coming down to the next level, s. */
  private static final double TURN_S = 0.48;

  /** Depths are written in thousandths of a mm. */
  private static final double WRITTEN = 1000;

  /**
   * Depths on two rounds differ by this much more at most when they are thinned and written, mm.
   */
  private static final double ROUNDED_MM = 0.003;

  /** Less than this is no difference, mm. */
  private static final double SAME_MM = 1e-6;

  private final CutterHead head;
  private final PieceEntry entry;
  private final Stock stock;
  private final WidthFeed feeds;

  /**
   * @param feeds of the cutter
   */
  StretchCutter(CutterHead head, PieceEntry entry, Stock stock, WidthFeed feeds) {
    this.head = head;
    this.entry = entry;
    this.stock = stock;
    this.feeds = feeds;
  }

  /**
   * Cuts a piece of the step that is being cut, unless it ends in wood or much of it is gone;
   * whether it did.
   */
  boolean cut(Piece piece) {
    PieceWood wood = PieceWood.under(piece, head, stock, feeds);
    boolean room = piece.lengthMm() >= RampEntry.LEAST_ROOM_MM;
    List<double[]> points = room ? runs(wood, piece.closed()) : toAndFro(wood);
    if (points.isEmpty()) {
      if (!piece.closed() && !wood.openAtBothEnds() || idleMm(wood) > visitMm()) {
        return false;
      }
      points =
          !piece.closed()
              ? toAndFro(wood)
              : wood.openAhead() > 0 ? rounds(wood, end(piece, wood)) : wound(wood);
    }
    double[] start = points.get(0);
    entry.down(start[0], start[1], start[2]);
    List<double[]> spread = OpenTurns.spread(points, fallMm(), this::gone);
    head.along(LineThinning.ends(spread, head.tool()));
    return true;
  }

  /** Way over which the cutter drops by 1 mm at its plunge feed, mm. */
  private double fallMm() {
    return head.tool().feedMmPerMin() / head.tool().plungeMmPerMin();
  }

  private boolean gone(double[] point, double depth) {
    return head.maySink(point[0], point[1], depth + head.tool().stepdownMm());
  }

  /** To and fro over what stands above each level alone; none if that isn't shorter. */
  private List<double[]> runs(PieceWood wood, boolean closed) {
    double[] levels = new double[times(wood)];
    for (int time = 1; time <= levels.length; time++) {
      levels[time - 1] = depth(wood, time);
    }
    LevelRuns runs = wood.runs(levels, turnMm());
    List<LevelRuns.Place> places = runs.from(wood.nearerEnd());
    return runs.lengthMm() > otherwiseMm(wood, closed)
        ? List.of()
        : places.stream()
            .map(place -> wood.cut(place.section(), place.depthMm(), place.goneMm()))
            .toList();
  }

  /** Length of all ways along all of it, or of those that visits by themselves spare, mm. */
  private double otherwiseMm(PieceWood wood, boolean closed) {
    double once = wood.way(0, wood.size() - 1) + (closed ? 0 : turnMm());
    int times = times(wood);
    double spared = idleMm(wood) - visitMm();
    // Visits to what stands above a long piece are also ordered better than runs along it.
    return times * once - (spared > 0 ? (times - 1) * spared + turnMm() : 0);
  }

  private double turnMm() {
    return TURN_S * head.tool().feedMmPerMin() / 60;
  }

  /** Cutting so far takes as long as going over ground that is gone is worth, mm. */
  private double visitMm() {
    return VISIT_S * head.tool().feedMmPerMin() / 60;
  }

  private int times(PieceWood wood) {
    long most = (long) (head.tool().stepdownMm() * WRITTEN + SAME_MM);
    return Math.max(1, Math.toIntExact(-Math.floorDiv(-down(wood), Math.max(1, most))));
  }

  /** How far down from the highest wood to the floor, in thousandths of a mm as written. */
  private long down(PieceWood wood) {
    return Math.round(head.floor() * WRITTEN) - Math.round(wood.highest() * WRITTEN);
  }

  /** In whole thousandths, so that no step grows over the stepdown when it is written. */
  private double depth(PieceWood wood, int time) {
    int times = times(wood);
    return time >= times
        ? head.floor()
        : wood.highest() + Math.floorDiv(down(wood) * time, (long) times) / WRITTEN;
  }

  /** How far each way before the last goes over what is gone by then, mm. */
  private double idleMm(PieceWood wood) {
    int times = times(wood);
    double idle = 0;
    for (int time = 1; time < times; time++) {
      idle += wood.goneMm(depth(wood, time));
    }
    return times == 1 ? 0 : idle / (times - 1);
  }

  /** To and fro: X, Y, depth and share of the feed of each place, as in all ways. */
  private List<double[]> toAndFro(PieceWood wood) {
    List<double[]> points = new ArrayList<>();
    int n = wood.size();
    points.add(wood.point(0, wood.openAtBothEnds() ? depth(wood, 1) : wood.highest(), 1));
    for (int time = 1; time <= times(wood); time++) {
      double depth = depth(wood, time);
      for (int s = 0; s < n; s++) {
        int i = time % 2 == 1 ? s : n - 1 - s;
        points.add(wood.cut(i, depth, depth(wood, time - 1)));
      }
    }
    return points;
  }

  /** The section at which the last way round a piece may end: nothing needed follows. */
  private static int end(Piece piece, PieceWood wood) {
    int last = wood.size() - 1;
    if (piece.needed() == null) {
      return last;
    }
    Piece needed = piece.needed();
    int from = wood.nearest(needed.x()[0], needed.y()[0]);
    int to = wood.nearest(needed.x()[needed.size() - 1], needed.y()[needed.size() - 1]);
    return from < to ? Math.min(last, Math.max(to + 1, last - wood.openAhead())) : last;
  }

  /**
   * Round and round; over the open ground with which the piece ends it comes down each time, the
   * first time before that where nothing is sure to stand there.
   *
   * @param end section at which the last round ends
   */
  private List<double[]> rounds(PieceWood wood, int end) {
    List<double[]> points = new ArrayList<>();
    int n = wood.size() - 1;
    int open = n - wood.openAhead();
    int start = wood.surelyGone(open, depth(wood, 1)) ? n : open;
    for (int time = 0; time <= times(wood); time++) {
      double depth = depth(wood, time);
      double fall = depth(wood, time + 1) - depth;
      for (int i = time == 0 ? start : 1; i <= (time == times(wood) ? end : n); i++) {
        double so = i <= open ? 0 : wood.way(open, i) / wood.way(open, n);
        // Rounded the same way on every round, so that none bites more than the next is deeper.
        double there = Math.floor((depth + so * fall) * WRITTEN + SAME_MM) / WRITTEN;
        points.add(wood.cut(i, there, depth(wood, time - 1) + so * fall));
      }
    }
    return points;
  }

  /** Round and round on a ramp in the wood, and once at the floor. */
  private List<double[]> wound(PieceWood wood) {
    int n = wood.size() - 1;
    double length = wood.way(0, n);
    double ramp = Math.tan(Math.toRadians(head.options().rampDegrees()));
    double slope = Math.min(ramp, (head.tool().stepdownMm() - ROUNDED_MM) / length);
    double top = wood.highest();
    double depth = top;
    List<double[]> points = new ArrayList<>();
    points.add(wood.point(0, top, 1));
    double flat = 0;
    for (int i = 0; flat < length - SAME_MM; i = i + 1 == n ? 0 : i + 1) {
      double step = wood.way(i, i + 1);
      flat += depth >= head.floor() - SAME_MM ? step : 0;
      depth = Math.min(head.floor(), depth + slope * step);
      points.add(wood.cut(i + 1, depth, Math.max(top, depth - slope * length)));
    }
    return points;
  }
}
