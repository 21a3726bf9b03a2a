package plyscape.toolpath.depth;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;

/**
 * In which depths one cutter works its way down. Some depths are cut in full, over everything that
 * must get deeper and can't be reached in one cut from where it stands; each level gets a cut of
 * its own where it shows.
 *
 * @param steps in cutting order
 */
public record DepthPlan(List<DepthStep> steps) {

  /**
   * The plan for a panel that no cutter has touched: {@link DepthSequence} on what the cutter
   * reaches.
   */
  public static DepthPlan fresh(List<LevelWork> works, double stepdownMm) {
    return ordered(DepthSequence.plan(works, stepdownMm));
  }

  /**
   * The plan for what larger cutters left: full steps where they save the most cutting, found by
   * trying to add and to drop one at a time until nothing is gained.
   *
   * @param depthsMm of the levels, upper first
   * @param rest how much stands where
   * @param stepdownMm the cutter's
   */
  public static DepthPlan rest(double[] depthsMm, RestTally rest, double stepdownMm) {
    TreeSet<Double> choices = new TreeSet<>();
    for (double depth : depthsMm) {
      choices.add(depth);
    }
    for (double depth = stepdownMm; depth < depthsMm[depthsMm.length - 1]; depth += stepdownMm) {
      choices.add(Math.floor(depth * 1000 + 1e-6) / 1000);
    }
    TreeSet<Double> planes = greedyPlanes(depthsMm, stepdownMm);
    double cost = rest.cost(planes, depthsMm, stepdownMm);
    boolean better = true;
    while (better) {
      better = false;
      for (double choice : choices) {
        TreeSet<Double> other = new TreeSet<>(planes);
        if (!other.remove(choice)) {
          other.add(choice);
        }
        double otherCost = rest.cost(other, depthsMm, stepdownMm);
        if (otherCost < cost * (1 - 1e-9) - 1e-9) {
          planes = other;
          cost = otherCost;
          better = true;
        }
      }
    }
    return of(planes, depthsMm);
  }

  /** Each full step as far down as the stepdown allows, at a level where there is one. */
  private static TreeSet<Double> greedyPlanes(double[] depthsMm, double stepdownMm) {
    TreeSet<Double> planes = new TreeSet<>();
    double from = 0;
    double last = depthsMm[depthsMm.length - 1];
    while (from < last - 1e-9) {
      double next = from + stepdownMm;
      double level = 0;
      for (double depth : depthsMm) {
        if (depth <= next + 1e-9) {
          level = depth;
        }
      }
      from = level > from + 1e-9 ? level : Math.floor(next * 1000 + 1e-6) / 1000;
      planes.add(from);
    }
    return planes;
  }

  private static DepthPlan of(TreeSet<Double> planes, double[] depthsMm) {
    List<DepthStep> steps = new ArrayList<>();
    double from = 0;
    int level = 0;
    for (double plane : planes) {
      for (; level < depthsMm.length && depthsMm[level] < plane - 1e-9; level++) {
        steps.add(new DepthStep(level, depthsMm[level], false, from));
      }
      if (level < depthsMm.length) {
        steps.add(new DepthStep(level, plane, true, from));
        level += depthsMm[level] <= plane + 1e-9 ? 1 : 0;
        from = plane;
      }
    }
    for (; level < depthsMm.length; level++) {
      steps.add(new DepthStep(level, depthsMm[level], false, from));
    }
    return ordered(steps);
  }

  /**
   * Full steps by depth; the others between two full ones come after the lower of them and from
   * below: each then finds the ground inside it open, and takes only its own band.
   */
  private static DepthPlan ordered(List<DepthStep> steps) {
    List<DepthStep> order = new ArrayList<>(steps);
    order.sort(
        Comparator.comparingDouble(DepthStep::fromMm)
            .thenComparing(step -> !step.full())
            .thenComparingDouble(step -> -step.depthMm()));
    return new DepthPlan(List.copyOf(order));
  }
}
