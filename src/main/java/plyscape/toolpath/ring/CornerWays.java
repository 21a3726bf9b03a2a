package plyscape.toolpath.ring;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.EdgeBuckets;
import plyscape.toolpath.lattice.Ring;

/**
 * Takes the ways along the walls into every corner ({@link OffsetCorners}): a ring that passes near
 * one is led into it and out again along the walls; corners that none passes are joined to short
 * ways of their own. No point is nearer to a wall than the radius less 0.0013 mm.
 */
final class CornerWays {

  /** A ring's point as near as this to a corner stands for it, mm. */
  private static final double THERE_MM = 0.006;

  /** As near as this it may do so, if the way stays free, mm. */
  private static final double NEARLY_MM = 0.05;

  /** Corners farther apart than this aren't joined, mm. */
  private static final double JOIN_MM = 1.2;

  private record Segment(int ring, int from) {}

  /** A ring whose points may be moved. */
  private static final class Way {
    private final Ring ring;

    Way(Ring from) {
      ring = new Ring(from.index(), from.closed(), from.x().clone(), from.y().clone());
    }

    int index() {
      return ring.index();
    }

    boolean closed() {
      return ring.closed();
    }

    int size() {
      return ring.size();
    }

    double x(int i) {
      return ring.x()[i];
    }

    double y(int i) {
      return ring.y()[i];
    }

    void move(int i, double[] to) {
      ring.x()[i] = to[0];
      ring.y()[i] = to[1];
    }

    /** As it is now. */
    Ring ring() {
      return ring;
    }
  }

  private final double step;
  private final Map<Long, List<double[]>> cornersAt = new HashMap<>();
  private final WallWays ways;

  /** For one pocket and one cutter radius, mm. */
  CornerWays(DistanceField field, EdgeBuckets walls, double radiusMm) {
    step = field.lattice.stepMm();
    ways = new WallWays(field, walls, radiusMm - OffsetCorners.FIT_MM);
  }

  /**
   * The rings with the corners in them, and ways to those that no ring passes.
   *
   * @param around rings along the walls
   * @param corners all of them, X and Y
   */
  List<Ring> with(List<Ring> around, List<double[]> corners) {
    List<Way> rings = around.stream().map(Way::new).toList();
    rings.forEach(this::clearOfWalls);
    Map<Long, List<Segment>> places = places(rings);
    Map<Long, List<double[]>> detours = new HashMap<>();
    List<double[]> alone = new ArrayList<>();
    for (double[] corner : corners) {
      cornersAt
          .computeIfAbsent(key(cell(corner[0]), cell(corner[1])), k -> new ArrayList<>(4))
          .add(corner);
    }
    for (double[] corner : corners) {
      Segment near = nearest(places, rings, corner, 2 * step);
      near = near == null ? nearest(places, rings, corner, JOIN_MM) : near;
      if (near == null) {
        alone.add(corner);
      } else if (!moved(rings.get(near.ring()), near.from(), corner)) {
        detours.computeIfAbsent(key(near.ring(), near.from()), s -> new ArrayList<>()).add(corner);
      }
    }
    List<Ring> result = new ArrayList<>();
    for (int r = 0; r < rings.size(); r++) {
      result.add(led(r, rings.get(r), detours, alone));
    }
    result.addAll(joined(alone));
    return result;
  }

  /** Moves points that stand too near to a wall that the lattice didn't show. */
  private void clearOfWalls(Way ring) {
    for (int i = 0; i < ring.size(); i++) {
      if (!ways.fits(ring.x(i), ring.y(i))) {
        double[] off = ways.offWalls(ring.x(i), ring.y(i));
        if (off != null) {
          ring.move(i, off);
        }
      }
    }
  }

  private Map<Long, List<Segment>> places(List<Way> rings) {
    Map<Long, List<Segment>> places = new HashMap<>();
    for (int r = 0; r < rings.size(); r++) {
      Way ring = rings.get(r);
      // Open ones are short ways that a pass may leave out.
      for (int s = 0; ring.closed() && s < ring.size(); s++) {
        int t = (s + 1) % ring.size();
        int lastColumn = cell(Math.max(ring.x(s), ring.x(t)));
        int lastRow = cell(Math.max(ring.y(s), ring.y(t)));
        for (int j = cell(Math.min(ring.y(s), ring.y(t))); j <= lastRow; j++) {
          for (int i = cell(Math.min(ring.x(s), ring.x(t))); i <= lastColumn; i++) {
            places.computeIfAbsent(key(i, j), k -> new ArrayList<>(4)).add(new Segment(r, s));
          }
        }
      }
    }
    return places;
  }

  private int cell(double v) {
    return (int) Math.floor(v / (2 * step));
  }

  private static long key(int i, int j) {
    return ((long) i << 32) ^ (j & 0xffffffffL);
  }

  /** The stretch of a ring nearest to a corner, or null where none is within a reach. */
  private Segment nearest(
      Map<Long, List<Segment>> places, List<Way> rings, double[] corner, double reachMm) {
    Segment best = null;
    double least = reachMm;
    int cells = (int) Math.ceil(reachMm / (2 * step));
    for (int j = cell(corner[1]) - cells; j <= cell(corner[1]) + cells; j++) {
      for (int i = cell(corner[0]) - cells; i <= cell(corner[0]) + cells; i++) {
        for (Segment segment : places.getOrDefault(key(i, j), List.of())) {
          double d = distance(rings.get(segment.ring()), segment.from(), corner);
          if (d < least) {
            least = d;
            best = segment;
          }
        }
      }
    }
    return best;
  }

  /** Moves a ring's point onto a corner that it is meant to be; whether there was one. */
  private boolean moved(Way ring, int from, double[] corner) {
    int n = ring.size();
    boolean firstNearer = along(ring, from, corner) < 0.5;
    for (int end = 0; end < 2; end++) {
      int i = end == 0 == firstNearer ? from : (from + 1) % n;
      double way = Math.hypot(ring.x(i) - corner[0], ring.y(i) - corner[1]);
      if (way < NEARLY_MM
          && !taken(ring.x(i), ring.y(i), way, corner)
          && (way < THERE_MM
              || ways.free(point(ring, (i + n - 1) % n), corner)
                  && ways.free(corner, point(ring, (i + 1) % n)))) {
        ring.move(i, corner);
        return true;
      }
    }
    return false;
  }

  /** Whether a point of a ring belongs to another corner that is nearer to it. */
  private boolean taken(double px, double py, double way, double[] corner) {
    for (int j = cell(py) - 1; j <= cell(py) + 1; j++) {
      for (int i = cell(px) - 1; i <= cell(px) + 1; i++) {
        for (double[] other : cornersAt.getOrDefault(key(i, j), List.of())) {
          if (other != corner && Math.hypot(other[0] - px, other[1] - py) <= way) {
            return true;
          }
        }
      }
    }
    return false;
  }

  private static double[] point(Way ring, int i) {
    return new double[] {ring.x(i), ring.y(i)};
  }

  private static double distance(Way ring, int from, double[] p) {
    double t = along(ring, from, p);
    int to = (from + 1) % ring.size();
    return Math.hypot(
        ring.x(from) + t * (ring.x(to) - ring.x(from)) - p[0],
        ring.y(from) + t * (ring.y(to) - ring.y(from)) - p[1]);
  }

  private static double along(Way ring, int from, double[] p) {
    int to = (from + 1) % ring.size();
    double dx = ring.x(to) - ring.x(from);
    double dy = ring.y(to) - ring.y(from);
    double t =
        ((p[0] - ring.x(from)) * dx + (p[1] - ring.y(from)) * dy)
            / Math.max(1e-18, dx * dx + dy * dy);
    return Math.max(0, Math.min(1, t));
  }

  /** A ring led into its corners; those that it can't be led into are added to the lonely ones. */
  private Ring led(int number, Way ring, Map<Long, List<double[]>> detours, List<double[]> alone) {
    List<double[]> points = new ArrayList<>();
    boolean changed = false;
    for (int s = 0; s < ring.size(); s++) {
      double[] here = {ring.x(s), ring.y(s)};
      points.add(here);
      List<double[]> corners = detours.get(key(number, s));
      if (corners == null) {
        continue;
      }
      int from = s;
      corners.sort(Comparator.comparingDouble(c -> along(ring, from, c)));
      int t = (s + 1) % ring.size();
      double[] next = {ring.x(t), ring.y(t)};
      double[] at = here;
      for (double[] corner : corners) {
        List<double[]> way = ways.between(at, corner);
        if (!way.isEmpty() && !ways.between(corner, next).isEmpty()) {
          points.addAll(way);
          at = corner;
          changed = true;
        } else {
          alone.add(corner);
        }
      }
      if (at != here) {
        List<double[]> back = ways.between(at, next);
        points.addAll(back.subList(0, back.size() - 1));
      }
    }
    return changed ? ring(ring.index(), ring.closed(), points) : ring.ring();
  }

  private static Ring ring(int index, boolean closed, List<double[]> points) {
    return new Ring(
        index,
        closed,
        points.stream().mapToDouble(p -> p[0]).toArray(),
        points.stream().mapToDouble(p -> p[1]).toArray());
  }

  /** Ways through lonely corners that lie in one narrow place; a point for a corner by itself. */
  private List<Ring> joined(List<double[]> corners) {
    List<Ring> rings = new ArrayList<>();
    List<double[]> left = new ArrayList<>(corners);
    while (!left.isEmpty()) {
      List<double[]> points = new ArrayList<>();
      double[] at = left.remove(0);
      points.add(at);
      List<double[]> way = toFollower(at, left);
      while (!way.isEmpty()) {
        points.addAll(way);
        at = way.get(way.size() - 1);
        left.remove(at);
        way = toFollower(at, left);
      }
      if (points.size() == 1) {
        points.add(new double[] {at[0] + 5e-4, at[1]});
      }
      rings.add(ring(0, false, points));
    }
    return rings;
  }

  /** The way to the nearest corner that one leads to, which is its last point; empty if none. */
  private List<double[]> toFollower(double[] at, List<double[]> left) {
    return left.stream()
        .filter(p -> Math.hypot(p[0] - at[0], p[1] - at[1]) < JOIN_MM)
        .sorted(Comparator.comparingDouble(p -> Math.hypot(p[0] - at[0], p[1] - at[1])))
        .map(corner -> ways.between(at, corner))
        .filter(way -> !way.isEmpty())
        .findFirst()
        .orElse(List.of());
  }
}
