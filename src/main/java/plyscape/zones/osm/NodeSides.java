package plyscape.zones.osm;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Envelope;

/**
 * On which sides of a box each node of a file lies, four bits a node (the outcodes of Cohen and
 * Sutherland): what all nodes of a way have in common tells whether the way can touch the box, even
 * one that surrounds it. Takes four bytes a node where ids rise, as in all extracts; others are put
 * in order, at about a microsecond a node.
 */
final class NodeSides {

  /** The code of a node that isn't in the file. */
  static final int UNKNOWN = -1;

  private static final int WEST = 1;
  private static final int EAST = 2;
  private static final int SOUTH = 4;
  private static final int NORTH = 8;

  /** All sides: what the nodes of no way at all have in common. */
  static final int ALL = WEST | EAST | SOUTH | NORTH;

  /** Ids beyond this, either sign, don't occur; they are kept shifted by four bits. */
  static final long MOST_ID = 1L << 58;

  /** A part of a run takes this many nodes, and ids this far apart. */
  private static final int PART = 4096;

  private static final long PART_SPAN = 1L << 27;

  /** Nodes that wait to be put in order. */
  private static final int WAITING = 1 << 16;

  /** More runs than this are made into one. */
  private static final int MOST_RUNS = 24;

  private final Envelope box;
  private final double middle;
  private final long[] waiting = new long[WAITING];
  private int waitingCount;
  private final List<Run> runs = new ArrayList<>();

  /** For a box in degrees. */
  NodeSides(Envelope box) {
    this.box = box;
    this.middle = (box.getMinX() + box.getMaxX()) / 2;
  }

  /** The longitude counted on from the box's, over the date line if that is nearer. */
  double near(double lon) {
    return lon - 360 * Math.rint((lon - middle) / 360);
  }

  /** On which sides of the box a place lies; 0 within it. */
  int code(double lon, double lat) {
    double x = near(lon);
    return (x < box.getMinX() ? WEST : x > box.getMaxX() ? EAST : 0)
        | (lat < box.getMinY() ? SOUTH : lat > box.getMaxY() ? NORTH : 0);
  }

  /** Notes a node with its code. */
  void put(long id, int code) {
    if (waitingCount == WAITING) {
      settle();
    }
    waiting[waitingCount++] = id << 4 | code;
  }

  /** Puts in order what has come; to be called before asking. */
  void settle() {
    if (waitingCount == 0) {
      return;
    }
    Arrays.sort(waiting, 0, waitingCount);
    Run last = runs.isEmpty() ? null : runs.get(runs.size() - 1);
    if (last == null || last.last > waiting[0] >> 4) {
      last = new Run();
      runs.add(last);
    }
    for (int i = 0; i < waitingCount; i++) {
      last.add(waiting[i]);
    }
    waitingCount = 0;
    if (runs.size() > MOST_RUNS) {
      merge();
    }
  }

  private void merge() {
    long[] all = new long[Math.toIntExact(runs.stream().mapToLong(run -> run.count).sum())];
    int n = 0;
    for (Run run : runs) {
      n = run.copy(all, n);
    }
    Arrays.parallelSort(all);
    runs.clear();
    Run one = new Run();
    for (long entry : all) {
      one.add(entry);
    }
    runs.add(one);
  }

  /** The code of a node, or {@link #UNKNOWN}. */
  int of(long id) {
    if (Math.abs(id) > MOST_ID) {
      return UNKNOWN;
    }
    for (int i = runs.size() - 1; i >= 0; i--) {
      int code = runs.get(i).of(id);
      if (code != UNKNOWN) {
        return code;
      }
    }
    return UNKNOWN;
  }

  /** The sides that all known nodes are on; {@link #ALL} when none is known. */
  int common(long[] nodes) {
    int common = ALL;
    for (int i = 0; i < nodes.length && common != 0; i++) {
      int code = of(nodes[i]);
      common &= code == UNKNOWN ? ALL : code;
    }
    return common;
  }

  /** Nodes with rising ids, in parts of a first id and small steps from it. */
  private static final class Run {

    private long[] firsts = new long[16];
    private final List<int[]> parts = new ArrayList<>();
    private int[] open = new int[PART];
    private int openCount;
    private long last = Long.MIN_VALUE;
    private long count;

    void add(long entry) {
      long id = entry >> 4;
      if (openCount == 0 || openCount == PART || id - firsts[parts.size()] >= PART_SPAN) {
        begin(id);
      }
      open[openCount++] = (int) (id - firsts[parts.size()]) << 4 | (int) (entry & ALL);
      last = id;
      count++;
    }

    private void begin(long id) {
      if (openCount > 0) {
        parts.add(openCount == PART ? open : Arrays.copyOf(open, openCount));
        open = new int[PART];
        openCount = 0;
      }
      if (parts.size() == firsts.length) {
        firsts = Arrays.copyOf(firsts, 2 * firsts.length);
      }
      firsts[parts.size()] = id;
    }

    int of(long id) {
      int at = Arrays.binarySearch(firsts, 0, parts.size() + (openCount > 0 ? 1 : 0), id);
      int part = at < 0 ? -at - 2 : at;
      if (part < 0 || id - firsts[part] >= PART_SPAN) {
        return UNKNOWN;
      }
      int[] nodes = part == parts.size() ? open : parts.get(part);
      int size = part == parts.size() ? openCount : nodes.length;
      int step = (int) (id - firsts[part]) << 4;
      int found = Arrays.binarySearch(nodes, 0, size, step);
      int near = found < 0 ? -found - 1 : found;
      return near < size && (nodes[near] & ~ALL) == step ? nodes[near] & ALL : UNKNOWN;
    }

    int copy(long[] to, int start) {
      int n = start;
      for (int part = 0; part <= parts.size(); part++) {
        int[] nodes = part == parts.size() ? open : parts.get(part);
        int size = part == parts.size() ? openCount : nodes.length;
        for (int i = 0; i < size; i++) {
          to[n++] = (firsts[part] + (nodes[i] >>> 4)) << 4 | nodes[i] & ALL;
        }
      }
      return n;
    }
  }
}
