package plyscape.toolpath.slot;

/**
 * The ways to and fro by which a slot is taken down to its floor without leaving it. Each way goes
 * as deep as the bite allows everywhere, falls no faster than the ramp and rises over what stands
 * higher; the next comes back deeper, along the other wall where there is room. The last ones are
 * flat: the whole slot is left at its floor. Depths in mm, positive down.
 */
public final class SlotLevels {

  /** Ways along both walls nearer to each other than this are one, mm. */
  public static final double ONE_WAY_MM = 0.04;

  /** Wood beside a wall no wider than this may be taken at any depth, mm. */
  private static final double RIM_MM = 0.05;

  /** Depths this near are the same, mm. */
  private static final double SAME_MM = 1e-4;

  /** Depths are written in thousandths of a mm. */
  private static final double WRITTEN = 1000;

  /** So far out of the wood the cutter is clear of it, mm. */
  static final double OUT_MM = 0.1;

  /** There is no use in turning sooner than this, mm. */
  private static final double LEAST_RUN_MM = 1;

  /** Sections done between two that aren't are gone over if they are shorter than this, mm. */
  private static final double GAP_MM = 3;

  /** Takes the ways, place by place. */
  public interface Path {
    /**
     * The cutter goes on to a place.
     *
     * @param section which
     * @param side -1 in the middle, 0 at the left wall, 1 at the right
     * @param depthMm how deep
     * @param goneMm how deep all that the cutter meets there was gone before
     * @param biteMm how much wood it takes over its whole width
     * @param rimMm how much it takes beside the wall
     */
    void to(int section, int side, double depthMm, double goneMm, double biteMm, double rimMm);
  }

  private final double[] way;
  private final double[] room;
  private final boolean sides;
  private final double floor;
  private final SlotLimits limits;

  /** How deep the wood is gone at each section as seen from the left way and from the right. */
  private final double[][] gone;

  private final double[] limit;
  private final double[] least;
  private final double[] besideWall;

  /** Sections in which the stretch being cut ends in wood, or -1. */
  private int deadLow = -1;

  private int deadHigh = -1;
  private int at;
  private double depth;

  /**
   * @param slot sections, open
   * @param standing depth at which wood stands at each, mm
   * @param floorMm depth to be reached
   */
  public SlotLevels(SlotWay slot, double[] standing, double floorMm, SlotLimits limits) {
    int n = slot.size();
    this.limits = limits;
    floor = floorMm;
    way = new double[n];
    room = new double[n];
    boolean wide = false;
    for (int i = 0; i < n; i++) {
      way[i] = i == 0 ? 0 : way[i - 1] + slot.wayMm(i - 1, i);
      room[i] = slot.roomMm(i);
      wide |= room[i] > ONE_WAY_MM;
    }
    sides = wide;
    gone = new double[][] {standing.clone(), standing.clone()};
    limit = new double[n];
    least = new double[n];
    besideWall = new double[n];
  }

  /** Depth at which the way begins, mm: on top of what stands at the first section. */
  public double topMm() {
    look(0);
    double use = 0;
    for (int i = 0; i < way.length; i++) {
      use = open(i) ? use : Math.max(use, limit[i]);
    }
    return Math.min(use, least[0]);
  }

  /**
   * All ways, from the first section at {@link #topMm} to where the last ends.
   *
   * @return the section in which it ends
   */
  public int run(Path path) {
    at = 0;
    depth = topMm();
    int side = 0;
    int idle = 0;
    // Each pair of ways takes a bite or what the ramp allows: the count is only a guard.
    for (int guard = 0; guard < 20_000 && idle < 2; guard++) {
      int[] hull = hull(side);
      if (hull == null) {
        idle++;
      } else {
        idle = 0;
        pass(side, hull, path);
      }
      side = sides ? 1 - side : 0;
      idle += hull == null && !sides ? 1 : 0;
    }
    return at;
  }

  /** One way over the sections that need it, from wherever the cutter is. */
  private void pass(int side, int[] hull, Path path) {
    int low = hull[0];
    int high = hull[1];
    boolean up = Math.abs(way[at] - way[low]) <= Math.abs(way[at] - way[high]);
    int near = up ? low : high;
    int far = up ? high : low;
    if (at != near) {
      go(side, near, path);
    }
    if (!sides && !open(near) && lastWay(near, far)) {
      // Down at the near end and back once, so that the way there leaves no ramp behind.
      double fall = (floor - depth) / limits.slope();
      int turn = along(near, far, Math.max(fall, LEAST_RUN_MM));
      if (fall > 1e-6 && Math.abs(way[far] - way[near]) > 2.2 * fall && turn != near) {
        go(side, turn, path);
        go(side, near, path);
      }
    }
    go(side, far, path);
  }

  /** Whether one way reaches the floor everywhere but where it ramps down. */
  private boolean lastWay(int near, int far) {
    look(0);
    for (int i = Math.min(near, far); i <= Math.max(near, far); i++) {
      if (limit[i] < floor - SAME_MM) {
        return false;
      }
    }
    return true;
  }

  /** The section about so far from one towards another. */
  private int along(int from, int to, double mm) {
    int step = to > from ? 1 : -1;
    int i = from;
    while (i != to && Math.abs(way[i] - way[from]) < mm) {
      i += step;
    }
    return i;
  }

  /** Goes to a section, as deep as it may, but over open ground no deeper than is of use. */
  private void go(int side, int to, Path path) {
    look(side);
    double use = 0;
    for (int i = Math.min(at, to); i <= Math.max(at, to); i++) {
      use = gone[side][i] < floor - SAME_MM ? Math.max(use, limit[i]) : use;
    }
    use = use == 0 ? depth : use;
    intoDeadEnds(use);
    double[] wanted = wanted(side, to);
    int step = to > at ? 1 : -1;
    int i = at;
    while (true) {
      double fall = i == at ? 0 : limits.slope() * Math.abs(way[i] - way[i - step]);
      // Where nothing stands within reach it comes down freely.
      double free = Math.min(wanted[i], least[i]);
      depth = Math.min(Math.min(limit[i], wanted[i]), Math.max(depth + fall, free));
      double there = written(depth);
      double bite = Math.max(0, there - least[i]);
      double rim = room[i] > RIM_MM ? Math.max(0, there - gone[side][i]) : 0;
      path.to(i, sides ? side : -1, there, goneMm(i), bite, rim);
      gone[side][i] = Math.max(gone[side][i], there);
      if (!sides || room[i] <= ONE_WAY_MM) {
        gone[1 - side][i] = gone[side][i];
      }
      if (i == to) {
        break;
      }
      i += step;
    }
    at = to;
  }

  /**
   * How deep each section on the way from here is wanted, mm: as deep as it may be where something
   * stands, evenly from the one to the next over what is gone.
   */
  private double[] wanted(int side, int to) {
    double[] wanted = new double[way.length];
    int step = to > at ? 1 : -1;
    int last = -1;
    for (int i = at; i != to + step; i += step) {
      if (gone[side][i] < Math.min(floor, limit[i]) - SAME_MM) {
        wanted[i] = limit[i];
        int from = last < 0 ? at : last;
        double begin = last < 0 ? wanted[i] : wanted[last];
        for (int k = last < 0 ? at : last + step; k != i; k += step) {
          double so = Math.abs(way[k] - way[from]) / Math.max(1e-9, Math.abs(way[i] - way[from]));
          wanted[k] = begin + so * (wanted[i] - begin);
        }
        last = i;
      }
    }
    for (int k = last < 0 ? at : last + step; k != to + step; k += step) {
      wanted[k] = last < 0 ? depth : wanted[last];
    }
    return wanted;
  }

  /**
   * Depth taken at once, mm: by turns along both walls, or out of a dead end and back, half a
   * stepdown each.
   */
  private double bite() {
    boolean halves = sides || deadLow >= 0 || deadHigh >= 0;
    return halves ? Math.min(limits.biteMm(), limits.stepdownMm() / 2) : limits.biteMm();
  }

  /**
   * Lets a way that comes into a dead end take what the way out of it left on its ramp, down to the
   * depth of the rest and a stepdown at most.
   */
  private void intoDeadEnds(double use) {
    double near = bite() / limits.slope() + limits.reachMm();
    for (int i = 0; i < way.length; i++) {
      boolean ramp =
          deadLow >= 0 && Math.abs(way[i] - way[deadLow]) < near
              || deadHigh >= 0 && Math.abs(way[i] - way[deadHigh]) < near;
      if (ramp) {
        double most = Math.min(least[i] + limits.stepdownMm(), besideWall[i]);
        limit[i] = Math.max(limit[i], written(Math.min(Math.min(use, floor), most)));
      }
    }
  }

  /**
   * The depth that is written: no deeper, so that no bite grows by rounding; the floor as it is.
   */
  private double written(double depthMm) {
    return depthMm >= floor - SAME_MM ? depthMm : Math.floor(depthMm * WRITTEN + SAME_MM) / WRITTEN;
  }

  /** How deep all is gone that the cutter met at a section when it last looked, mm. */
  private double goneMm(int i) {
    return Math.min(least[i], besideWall[i] - limits.stepdownMm());
  }

  /** How deep the cutter may go at each section, by what stands under it. */
  private void look(int side) {
    int n = way.length;
    int from = 0;
    int to = 0;
    double reach = limits.reachMm();
    double bite = bite();
    for (int i = 0; i < n; i++) {
      while (way[i] - way[from] > reach) {
        from++;
      }
      while (to + 1 < n && way[to + 1] - way[i] <= reach) {
        to++;
      }
      double core = Double.POSITIVE_INFINITY;
      double rim = Double.POSITIVE_INFINITY;
      for (int k = from; k <= to; k++) {
        core = Math.min(core, Math.max(gone[0][k], gone[1][k]));
        rim = room[k] > RIM_MM ? Math.min(rim, gone[side][k]) : rim;
      }
      least[i] = core;
      besideWall[i] = rim + limits.stepdownMm();
      limit[i] = written(Math.min(floor, Math.min(core + bite, rim + limits.stepdownMm())));
    }
  }

  /**
   * First and last section that a side still needs, of the nearest stretch that isn't done, widened
   * so that there is room to turn; null where nothing is left.
   */
  private int[] hull(int side) {
    int[] stretch = stretch();
    if (stretch == null) {
      return null;
    }
    int low = stretch[0];
    int high = stretch[1];
    while (low <= high && gone[side][low] >= floor - SAME_MM) {
      low++;
    }
    if (low > high) {
      return null;
    }
    while (gone[side][high] >= floor - SAME_MM) {
      high--;
    }
    int endLow = open(low, -1);
    int endHigh = open(high, 1);
    deadLow = endLow == low ? low : -1;
    deadHigh = endHigh == high ? high : -1;
    low = endLow;
    high = endHigh;
    while (way[high] - way[low] < LEAST_RUN_MM && (low > 0 || high < way.length - 1)) {
      low = Math.max(0, low - 1);
      high = Math.min(way.length - 1, high + 1);
    }
    return new int[] {low, high};
  }

  /** The stretch of sections that aren't done, short gaps apart, that is nearest to the cutter. */
  private int[] stretch() {
    int[] nearest = null;
    double least = Double.POSITIVE_INFINITY;
    int from = -1;
    int last = -1;
    for (int i = 0; i <= way.length; i++) {
      boolean needs = i < way.length && !open(i);
      if (from >= 0 && (i == way.length || needs && way[i] - way[last] > GAP_MM)) {
        double d = Math.max(0, Math.max(way[from] - way[at], way[at] - way[last]));
        if (d < least) {
          least = d;
          nearest = new int[] {from, last};
        }
        from = -1;
      }
      if (needs) {
        from = from < 0 ? i : from;
        last = i;
      }
    }
    return nearest;
  }

  /** Whether a section needs nothing any more. */
  private boolean open(int i) {
    return Math.min(gone[0][i], gone[1][i]) >= floor - SAME_MM;
  }

  /** Beyond an end: where the cutter is out of the wood, if that is open ground; else the end. */
  private int open(int end, int step) {
    int i = end;
    while (i + step >= 0 && i + step < way.length && open(i + step)) {
      i += step;
      if (Math.abs(way[i] - way[end]) > limits.reachMm() + OUT_MM) {
        return i;
      }
    }
    return end;
  }
}
