package plyscape.toolpath.depth;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Which depths one cutter cuts over everything deeper ("planes"), and which levels only where they
 * show, for the least total time. Exact for the given times, by dynamic programming over the depth
 * of the last plane.
 *
 * <p>Usage: {@code List<DepthStep> steps = DepthSequence.plan(works, tool.stepdownMm());} the works
 * by rising depth; the steps come by rising depth, each from the plane before it.
 *
 * <p>A plane between two levels can be cut in the pocket of the lower one. Only planes at a level's
 * depth or exactly one stepdown under the plane before need be looked at: any other could go deeper
 * at the same cost, and what follows only gains. Each level must show its own face, so a level that
 * no plane stops at gets a cut of its own where it shows, from the last plane above, never more
 * than a stepdown.
 */
public final class DepthSequence {

  /** Steps this much over the stepdown are let pass: depths are sums of inexact thicknesses. */
  private static final double FUZZ_MM = 1e-9;

  private final List<LevelWork> works;
  private final double stepdownMm;
  private final Map<Double, Choice> choices = new HashMap<>();

  private DepthSequence(List<LevelWork> works, double stepdownMm) {
    this.works = List.copyOf(works);
    this.stepdownMm = stepdownMm;
    for (int i = 1; i < works.size(); i++) {
      if (!(works.get(i).depthMm() > works.get(i - 1).depthMm())) {
        throw new IllegalArgumentException("depths must rise");
      }
    }
    if (!(stepdownMm >= 0.002)) {
      throw new IllegalArgumentException("stepdown " + stepdownMm);
    }
  }

  /**
   * The best steps; of equally good ones (within a millionth) those with the fewest planes.
   *
   * @param works levels by rising depth
   * @param stepdownMm greatest depth of one cut
   */
  public static List<DepthStep> plan(List<LevelWork> works, double stepdownMm) {
    return new DepthSequence(works, stepdownMm).steps();
  }

  /** Seconds that the best steps take. */
  public static double seconds(List<LevelWork> works, double stepdownMm) {
    var sequence = new DepthSequence(works, stepdownMm);
    return works.isEmpty() ? 0 : sequence.below(0).seconds;
  }

  private List<DepthStep> steps() {
    List<DepthStep> steps = new ArrayList<>();
    double plane = 0;
    while (!works.isEmpty()) {
      Choice choice = below(plane);
      int level = firstBelow(plane);
      int last = choice.next < 0 ? works.size() : levelOf(choice.next);
      for (; level < last; level++) {
        if (works.get(level).exposedS() > 0) {
          steps.add(new DepthStep(level, works.get(level).depthMm(), false, plane));
        }
      }
      if (choice.next < 0) {
        break;
      }
      steps.add(new DepthStep(last, choice.next, true, plane));
      plane = choice.next;
    }
    return steps;
  }

  /** Best way to finish all that is deeper than a plane at which everything deeper stands. */
  private Choice below(double plane) {
    Choice known = choices.get(plane);
    if (known != null) {
      return known;
    }
    double deepest = works.get(works.size() - 1).depthMm();
    int first = firstBelow(plane);
    double between = 0;
    Choice best = null;
    int level = first;
    for (;
        level < works.size() && works.get(level).depthMm() - plane <= stepdownMm + FUZZ_MM;
        level++) {
      LevelWork work = works.get(level);
      best = better(best, below(work.depthMm()).after(work.depthMm(), between + work.fullS()));
      between += work.exposedS();
    }
    if (level < works.size()) {
      double next = Math.floor((plane + stepdownMm) * 1000 + 1e-6) / 1000;
      if (next < deepest && next > plane && levelOf(next) == level) {
        best = better(best, below(next).after(next, between + works.get(level).fullS()));
      }
    }
    while (level < works.size() && works.get(level).exposedS() == 0) {
      level++;
    }
    if (level == works.size()) {
      best = better(best, new Choice(-1, between, 0));
    }
    choices.put(plane, best);
    return best;
  }

  private static Choice better(Choice a, Choice b) {
    if (a == null) {
      return b;
    }
    double tie = 1e-6 * Math.max(a.seconds, b.seconds);
    boolean take =
        Math.abs(a.seconds - b.seconds) <= tie ? b.planes < a.planes : b.seconds < a.seconds;
    return take ? b : a;
  }

  private int firstBelow(double plane) {
    int level = 0;
    while (level < works.size() && works.get(level).depthMm() <= plane) {
      level++;
    }
    return level;
  }

  /** The level in whose pocket a plane is cut. */
  private int levelOf(double plane) {
    int level = 0;
    while (works.get(level).depthMm() < plane) {
      level++;
    }
    return level;
  }

  /**
   * The next plane, or -1 for none; the seconds for all that follows, and how many planes that has.
   */
  private record Choice(double next, double seconds, int planes) {

    Choice after(double plane, double secondsBefore) {
      return new Choice(plane, seconds + secondsBefore, planes + 1);
    }
  }
}
