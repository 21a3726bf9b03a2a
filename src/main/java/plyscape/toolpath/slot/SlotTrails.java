package plyscape.toolpath.slot;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Long ways through a net of middle lines: at each junction the two lines that go on most nearly
 * straight are one way, so that a cutter turns back seldom. Every line is in one way. Short lines
 * into corners are left out.
 */
final class SlotTrails {

  /** A line that ends and loses its room faster than this runs into a corner. */
  private static final double CORNER_SLOPE = 0.55;

  /** Lines that turn by more than this at a junction aren't one way. */
  private static final double TURN_COSINE = Math.cos(Math.toRadians(100));

  /** Between these, in radii of the cutter, the direction of a line at a junction is taken. */
  private static final double BEND = 0.8;

  private static final double LOOK = 2.5;

  /** Shorter lines between two junctions, in radii, make one crossing of them. */
  private static final double LINK = 2.5;

  private final CentreGraph graph;
  private final double radius;
  private final SlotCrossings crossings;
  private final List<int[]> lines = new ArrayList<>();

  /** The ends that follow each line at its first place and at its last, or null. */
  private End[] afterFirst;

  private End[] afterLast;

  /** A line's end: which line, whether it is its first place, the place, the way it goes. */
  private record End(int line, boolean first, int at, double dx, double dy) {}

  private SlotTrails(CentreGraph graph, double radiusMm) {
    this.graph = graph;
    radius = radiusMm;
    crossings = new SlotCrossings(graph.size());
  }

  /**
   * The ways, as numbers of places; a closed one ends with its first place.
   *
   * @param graph which loses its lines into corners
   */
  static List<int[]> of(CentreGraph graph, double radiusMm) {
    SlotTrails trails = new SlotTrails(graph, radiusMm);
    trails.dropCorners();
    return trails.joined(graph.chains());
  }

  private void dropCorners() {
    boolean any = true;
    while (any) {
      any = false;
      for (int[] chain : graph.chains()) {
        int first = chain[0];
        int last = chain[chain.length - 1];
        boolean tipFirst = graph.of(first).length == 1;
        boolean tipLast = graph.of(last).length == 1;
        if (tipFirst == tipLast) {
          continue;
        }
        double length = length(chain);
        double fall =
            tipLast
                ? graph.point(first).clearMm() - graph.point(last).clearMm()
                : graph.point(last).clearMm() - graph.point(first).clearMm();
        if (fall > CORNER_SLOPE * length || length < 0.2 * radius) {
          for (int k = tipFirst ? 0 : 1; k < chain.length - (tipLast ? 0 : 1); k++) {
            graph.unlink(chain[k]);
          }
          any = true;
        }
      }
    }
  }

  private double length(int[] chain) {
    double sum = 0;
    for (int k = 1; k < chain.length; k++) {
      sum += way(chain[k - 1], chain[k]);
    }
    return sum;
  }

  private double way(int a, int b) {
    MidPoint p = graph.point(a);
    MidPoint q = graph.point(b);
    return Math.hypot(p.x() - q.x(), p.y() - q.y());
  }

  private List<int[]> joined(List<int[]> chains) {
    for (int[] chain : chains) {
      boolean link =
          chain[0] != chain[chain.length - 1]
              && graph.of(chain[0]).length > 2
              && graph.of(chain[chain.length - 1]).length > 2
              && length(chain) < LINK * radius;
      if (link) {
        crossings.link(chain);
      } else {
        lines.add(chain);
      }
    }
    Map<Integer, List<End>> ends = new TreeMap<>();
    for (int c = 0; c < lines.size(); c++) {
      int[] line = lines.get(c);
      if (line[0] != line[line.length - 1] || graph.of(line[0]).length != 2) {
        for (boolean first : new boolean[] {true, false}) {
          End end = end(line, c, first);
          ends.computeIfAbsent(crossings.of(end.at()), k -> new ArrayList<>()).add(end);
        }
      }
    }
    afterFirst = new End[lines.size()];
    afterLast = new End[lines.size()];
    ends.values().forEach(this::pair);
    List<int[]> trails = new ArrayList<>();
    boolean[] used = new boolean[lines.size()];
    for (int pass = 0; pass < 2; pass++) {
      for (int c = 0; c < lines.size(); c++) {
        // First ways that have an end, then rings.
        if (!used[c] && (pass == 1 || afterFirst[c] == null || afterLast[c] == null)) {
          boolean forward = afterFirst[c] == null || pass == 1;
          trails.add(trail(c, forward, used));
        }
      }
    }
    return trails;
  }

  /** Where a line's end is and where it goes from there, past the bend that a junction makes. */
  private End end(int[] line, int number, boolean first) {
    MidPoint from = graph.point(along(line, first, BEND * radius));
    MidPoint to = graph.point(along(line, first, LOOK * radius));
    int at = first ? line[0] : line[line.length - 1];
    double d = Math.hypot(to.x() - from.x(), to.y() - from.y());
    if (d < 1e-6) {
      from = graph.point(at);
      d = Math.max(1e-9, Math.hypot(to.x() - from.x(), to.y() - from.y()));
    }
    return new End(number, first, at, (to.x() - from.x()) / d, (to.y() - from.y()) / d);
  }

  /** The place of a line about so far from one of its ends. */
  private int along(int[] line, boolean first, double mm) {
    double way = 0;
    int k = 0;
    while (k + 1 < line.length && way < mm) {
      way += way(place(line, first, k), place(line, first, k + 1));
      k++;
    }
    return place(line, first, k);
  }

  private static int place(int[] line, boolean first, int k) {
    return first ? line[k] : line[line.length - 1 - k];
  }

  /** Ends that go on most nearly straight follow each other. */
  private void pair(List<End> meeting) {
    List<End[]> pairs = new ArrayList<>();
    for (int a = 0; a < meeting.size(); a++) {
      for (int b = a + 1; b < meeting.size(); b++) {
        if (-straight(meeting.get(a), meeting.get(b)) > TURN_COSINE) {
          pairs.add(new End[] {meeting.get(a), meeting.get(b)});
        }
      }
    }
    pairs.sort(Comparator.comparingDouble(p -> straight(p[0], p[1])));
    for (End[] p : pairs) {
      End[] ofA = p[0].first() ? afterFirst : afterLast;
      End[] ofB = p[1].first() ? afterFirst : afterLast;
      if (ofA[p[0].line()] == null && ofB[p[1].line()] == null) {
        ofA[p[0].line()] = p[1];
        ofB[p[1].line()] = p[0];
      }
    }
  }

  private static double straight(End a, End b) {
    return a.dx() * b.dx() + a.dy() * b.dy();
  }

  /** The way that goes on from a line's end for as long as lines follow each other. */
  private int[] trail(int start, boolean forward, boolean[] used) {
    int[] trail = new int[0];
    int line = start;
    boolean onward = forward;
    while (!used[line]) {
      used[line] = true;
      int[] part = lines.get(line).clone();
      if (!onward) {
        for (int k = 0; k < part.length; k++) {
          part[k] = place(lines.get(line), false, k);
        }
      }
      trail = with(trail, part);
      End next = onward ? afterLast[line] : afterFirst[line];
      if (next == null) {
        break;
      }
      trail = with(trail, crossings.way(trail[trail.length - 1], next.at()));
      line = next.line();
      onward = next.first();
    }
    return trail;
  }

  /** One more part, whose first place may be the last so far. */
  private static int[] with(int[] trail, int[] part) {
    int n = trail.length;
    int skip = n > 0 && part.length > 0 && trail[n - 1] == part[0] ? 1 : 0;
    int[] longer = Arrays.copyOf(trail, n + part.length - skip);
    System.arraycopy(part, skip, longer, n, part.length - skip);
    return longer;
  }
}
