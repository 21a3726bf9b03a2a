package plyscape.toolpath.motion;

import java.util.ArrayList;
import java.util.List;
import plyscape.machine.Machine;
import plyscape.machine.MotionModel;
import plyscape.machine.Move;
import plyscape.toolpath.lattice.Stock;
import plyscape.toolpath.task.RapidRoom;

/**
 * A way by rapids from one place to another over what stands between them: up, level and down, or
 * aslant over it like a taut string, whichever is the fastest on the machine. Each leg is straight,
 * as a G0 of several axes is on controllers that lead the axes together (RS274).
 */
final class RapidHop {

  /** What stands is looked at in stretches about this long, mm. */
  private static final double LOOK_MM = 0.5;

  private static final int MOST_STRETCHES = 400;

  private final Machine machine;
  private final MotionModel model;
  private final RapidRoom room;

  /**
   * @param room how near rapids come to what stands
   */
  RapidHop(Machine machine, RapidRoom room) {
    this.machine = machine;
    model = new MotionModel(machine);
    this.room = room;
  }

  /** Tells the depth of the highest wood along a straight way. */
  interface Wood {
    double highest(double ax, double ay, double bx, double by);
  }

  /**
   * The rapids from one place to another, and down to where they are to end or to the level way,
   * whichever is deeper.
   *
   * @param from X, Y and depth; nothing stands there over the depth
   * @param end the same
   * @param deepest depth under which nothing but the end lies, mm
   */
  List<Move> moves(double[] from, double[] end, double deepest, Wood wood) {
    double length = Math.hypot(end[0] - from[0], end[1] - from[1]);
    int n = Math.max(1, Math.min(MOST_STRETCHES, (int) Math.ceil(length / LOOK_MM)));
    double[] limits = new double[n];
    double level = Math.min(from[2], deepest);
    for (int i = 0; i < n; i++) {
      double[] a = between(from, end, (double) i / n);
      double[] b = between(from, end, (double) (i + 1) / n);
      limits[i] = depth(wood.highest(a[0], a[1], b[0], b[1]), from[2]);
      level = Math.min(level, limits[i]);
    }
    double[] to = {end[0], end[1], Math.max(end[2], level)};
    List<double[]> string = string(from[2], to[2], limits);
    List<double[]> flat = List.of(new double[] {0, level}, new double[] {1, level});
    List<Move> best = along(from, to, deepest, flat);
    double least = seconds(from, best);
    for (List<double[]> profile : profiles(string)) {
      if (profile.stream().anyMatch(corner -> corner[1] < -machine.safeHeightMm())) {
        continue;
      }
      List<Move> moves = along(from, to, deepest, profile);
      double seconds = seconds(from, moves);
      if (seconds < least) {
        least = seconds;
        best = moves;
      }
    }
    return best;
  }

  /** Depth at which a rapid goes over wood or floor that stands no higher than a depth. */
  private double depth(double highest, double fromDepth) {
    double clearance =
        highest <= Stock.SAME_MM
            ? room.faceMm()
            : highest < fromDepth - Stock.SAME_MM
                ? Math.max(room.faceMm() / 2, room.floorMm())
                : room.floorMm();
    return Math.max(-machine.safeHeightMm(), highest - clearance);
  }

  /** The taut string: share of the way and depth of its corners, from end to end. */
  private List<double[]> string(double fromDepth, double toDepth, double[] limits) {
    int n = limits.length;
    double[] least = new double[n + 1];
    for (int i = 0; i <= n; i++) {
      least[i] = Math.min(limits[Math.max(0, i - 1)], limits[Math.min(n - 1, i)]);
    }
    // From its own floor the cutter may go up aslant, over wood beside it only straight up.
    least[0] =
        limits[0] < fromDepth - room.floorMm() - Stock.SAME_MM
            ? least[0]
            : fromDepth - room.straightMm();
    least[n] = Math.min(least[n], toDepth);
    List<double[]> string = new ArrayList<>();
    for (int i = 0; i <= n; i++) {
      double[] point = {(double) i / n, least[i]};
      while (string.size() > 1 && !over(string, point)) {
        string.remove(string.size() - 1);
      }
      string.add(point);
    }
    return string;
  }

  /** Whether the last corner lies over the line from the one before it to a point. */
  private static boolean over(List<double[]> string, double[] point) {
    double[] b = string.get(string.size() - 1);
    double[] a = string.get(string.size() - 2);
    return (b[1] - a[1]) * (point[0] - a[0]) < (point[1] - a[1]) * (b[0] - a[0]) - 1e-12;
  }

  /** The string, and each of its lines drawn out to one end or both. */
  private static List<List<double[]>> profiles(List<double[]> string) {
    List<List<double[]>> profiles = new ArrayList<>();
    profiles.add(string);
    int last = string.size() - 1;
    for (int i = 0; i < last; i++) {
      double[] begin = drawnOut(string.get(i), string.get(i + 1), 0);
      double[] end = drawnOut(string.get(i), string.get(i + 1), 1);
      profiles.add(List.of(begin, end));
      List<double[]> first = new ArrayList<>(string.subList(0, i + 1));
      first.add(end);
      profiles.add(first);
      List<double[]> second = new ArrayList<>(string.subList(i + 1, last + 1));
      second.add(0, begin);
      profiles.add(second);
    }
    return profiles;
  }

  private static double[] drawnOut(double[] a, double[] b, double at) {
    return new double[] {at, a[1] + (b[1] - a[1]) * (at - a[0]) / (b[0] - a[0])};
  }

  /** Rapids along a profile, with what is straight up or down at both ends. */
  private static List<Move> along(
      double[] from, double[] to, double deepest, List<double[]> profile) {
    MoveList moves = new MoveList(from[0], from[1], from[2]);
    int last = profile.size() - 1;
    for (int i = 0; i <= last; i++) {
      double t = profile.get(i)[0];
      double[] at = i == 0 ? from : i == last ? to : between(from, to, t);
      double depth = profile.get(i)[1];
      boolean stays = i == 0 && depth >= from[2];
      moves.rapid(at[0], at[1], stays ? from[2] : Math.min(depth, Math.max(deepest, to[2])));
    }
    moves.rapid(to[0], to[1], to[2]);
    return moves.moves();
  }

  private double seconds(double[] from, List<Move> moves) {
    return model.times(from[0], from[1], from[2], moves).totalS();
  }

  private static double[] between(double[] from, double[] to, double t) {
    return new double[] {from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])};
  }
}
