package plyscape.toolpath.motion;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import plyscape.toolpath.lattice.Stock;
import plyscape.toolpath.ring.Piece;

/**
 * What stands under a piece, section by section. A closed piece ends where it begins: with its
 * longest stretch of open ground at the end.
 */
final class PieceWood {

  /** Lines are divided so that what stands is seen this closely, mm. */
  private static final double SECTION_MM = 0.25;

  /** Widths are means over about this, mm. */
  private static final double WINDOW_MM = 1;

  /** Beyond the wood the cutter comes down this far out, mm. */
  private static final double OUT_MM = 0.3;

  private final CutterHead head;
  private final WidthFeed feeds;
  private final double[] x;
  private final double[] y;

  /** Way so far. */
  private final double[] way;

  private final double[] standing;
  private final double[] width;
  private final double highest;

  private PieceWood(List<double[]> points, CutterHead head, Stock stock, WidthFeed feeds) {
    this.head = head;
    this.feeds = feeds;
    x = points.stream().mapToDouble(point -> point[0]).toArray();
    y = points.stream().mapToDouble(point -> point[1]).toArray();
    int n = x.length;
    way = new double[n];
    standing = new double[n];
    Arrays.fill(standing, head.floor());
    double[] fresh = new double[n];
    for (int i = 0; i + 1 < n; i++) {
      way[i + 1] = way[i] + Math.hypot(x[i + 1] - x[i], y[i + 1] - y[i]);
      double stands = stock.bitten(x[i], y[i], x[i + 1], y[i + 1], head.tool().radiusMm());
      if (stands < head.floor() - Stock.SAME_MM) {
        standing[i] = Math.min(standing[i], stands);
        standing[i + 1] = Math.min(standing[i + 1], stands);
        fresh[i] = fresh(stock, i);
      }
    }
    width = widths(fresh);
    highest = Arrays.stream(standing).min().orElse(head.floor());
  }

  /** That under a piece, for a cutter at the depth of the step that it is of. */
  static PieceWood under(Piece piece, CutterHead head, Stock stock, WidthFeed feeds) {
    if (!piece.closed()) {
      return new PieceWood(sections(piece), head, stock, feeds);
    }
    PieceWood from = new PieceWood(sections(piece), head, stock, feeds);
    return new PieceWood(sections(piece.startingAfter(0, from.longestEnd())), head, stock, feeds);
  }

  /**
   * Nodes above the floor that the cutter meets from a section to the next, whichever way it goes.
   */
  private int fresh(Stock stock, int i) {
    double radius = head.tool().radiusMm();
    return Math.max(
        stock.standing(x[i], y[i], x[i + 1], y[i + 1], radius, head.floor()),
        stock.standing(x[i + 1], y[i + 1], x[i], y[i], radius, head.floor()));
  }

  private static List<double[]> sections(Piece piece) {
    List<double[]> points = new ArrayList<>();
    points.add(new double[] {piece.x()[0], piece.y()[0]});
    int n = piece.size();
    for (int s = 1; s < n + (piece.closed() ? 1 : 0); s++) {
      int i = s % n;
      double dx = piece.x()[i] - piece.x()[s - 1];
      double dy = piece.y()[i] - piece.y()[s - 1];
      int parts = Math.max(1, (int) Math.ceil(Math.hypot(dx, dy) / SECTION_MM));
      for (int p = 1; p <= parts; p++) {
        double t = (double) p / parts;
        points.add(new double[] {piece.x()[s - 1] + t * dx, piece.y()[s - 1] + t * dy});
      }
    }
    return points;
  }

  private double[] widths(double[] fresh) {
    int n = x.length;
    double[] widths = new double[n];
    int from = 0;
    int to = 0;
    double nodes = 0;
    for (int i = 0; i < n; i++) {
      while (to + 1 < n && (to <= i || way[to] - way[i] < WINDOW_MM / 2)) {
        nodes += fresh[to++];
      }
      while (from < i && way[i] - way[from] > WINDOW_MM / 2) {
        nodes -= fresh[from++];
      }
      widths[i] = feeds.widthMm((int) nodes, way[to] - way[from]);
    }
    return widths;
  }

  /** Way along a closed piece to where its longest stretch of open ground ends, mm. */
  private double longestEnd() {
    int n = x.length - 1;
    int first = 0;
    while (first < n && open(first)) {
      first++;
    }
    double longest = -1;
    int end = 0;
    double since = 0;
    double so = 0;
    for (int s = 0; s <= n && first < n; s++) {
      int i = (first + s) % n;
      if (!open(i)) {
        if (so - since > longest) {
          longest = so - since;
          end = i;
        }
        since = so;
      }
      so += way[i + 1] - way[i];
    }
    double at = way[end] - Math.min(OUT_MM, longest / 2);
    return at < 0 ? at + way[n] : at;
  }

  int size() {
    return x.length;
  }

  /** The section nearest to a place. */
  int nearest(double toX, double toY) {
    return new Piece(0, false, x, y).nearest(toX, toY);
  }

  /** Way from one section to a later one, mm. */
  double way(int from, int to) {
    return way[to] - way[from];
  }

  private boolean open(int i) {
    return standing[i] >= head.floor() - Stock.SAME_MM;
  }

  boolean openAtBothEnds() {
    return open(0) && open(x.length - 1);
  }

  /** The first or the last section, whichever the cutter is nearer to. */
  int nearerEnd() {
    int last = x.length - 1;
    double first = Math.hypot(x[0] - head.x(), y[0] - head.y());
    return first <= Math.hypot(x[last] - head.x(), y[last] - head.y()) ? 0 : last;
  }

  /** The runs that take it down through some depths, the floor last. */
  LevelRuns runs(double[] levels, double turnMm) {
    return new LevelRuns(way, standing, levels, turnMm);
  }

  /** Depth of the highest wood, mm. */
  double highest() {
    return highest;
  }

  /** How many sections at the end lie on open ground, less what the cutter needs to get out. */
  int openAhead() {
    int last = x.length - 1;
    while (last >= 0 && open(last)) {
      last--;
    }
    if (last < 0) {
      return 0;
    }
    int out = last;
    while (out < x.length - 1 && way[out] - way[last] < OUT_MM) {
      out++;
    }
    return x.length - 1 - out;
  }

  /** Whether nothing stands over a depth from a section to the end, between nodes neither. */
  boolean surelyGone(int from, double depth) {
    double under = depth + head.tool().stepdownMm();
    for (int i = from; i < x.length; i++) {
      if (!head.maySink(x[i], y[i], under)) {
        return false;
      }
    }
    return true;
  }

  /** Length of what is gone down to a depth, mm. */
  double goneMm(double depth) {
    double sum = 0;
    for (int i = 1; i < x.length; i++) {
      sum += Math.min(standing[i - 1], standing[i]) >= depth - Stock.SAME_MM ? way(i - 1, i) : 0;
    }
    return sum;
  }

  /** A place with a share of the feed: X, Y, depth, share. */
  double[] point(int i, double depth, double share) {
    return new double[] {x[i], y[i], depth, share};
  }

  /**
   * A place with the share of the feed that what is cut there allows.
   *
   * @param before depth at which the cutter has been there
   */
  double[] cut(int i, double depth, double before) {
    double bite = depth - Math.max(standing[i], before);
    return point(i, depth, bite <= 0 ? 1 : feeds.share(width[i], bite));
  }
}
