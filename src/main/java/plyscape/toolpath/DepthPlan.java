package plyscape.toolpath;

import java.util.ArrayList;
import java.util.List;

/**
 * In which depths one cutter works its way down. Some levels are cut in full, over everything deeper too, none farther
 * below the one before than the stepdown; the others are cut only where they show, from the last full depth above.
 *
 * @param steps in cutting order
 */
record DepthPlan(List<Step> steps) {

  /**
   * One step down.
   *
   * @param level position of the level whose pocket bounds it
   * @param depthMm its floor
   * @param full whether everything deeper is cut too
   * @param fromMm depth of the full step before, 0 for the first
   */
  record Step(int level, double depthMm, boolean full, double fromMm) {}

  /**
   * The plan that goes as far down as the stepdown allows each time. After a full step the levels between it and the
   * full step before follow from below: then each finds the ground inside it open, and takes only its own band.
   *
   * @param depthsMm of the levels, upper first
   * @param used whether a level has anything for this cutter
   * @param stepdownMm the cutter's
   */
  static DepthPlan greedy(double[] depthsMm, boolean[] used, double stepdownMm) {
    List<Step> steps = new ArrayList<>();
    double from = 0;
    int done = -1;
    int last = depthsMm.length - 1;
    while (last >= 0 && !used[last]) {
      last--;
    }
    while (done < last) {
      int next = -1;
      for (int k = done + 1; k <= last; k++) {
        if (used[k] && depthsMm[k] <= from + stepdownMm + 1e-9) {
          next = k;
        }
      }
      if (next < 0) {
        int bound = done + 1;
        while (depthsMm[bound] < from + stepdownMm) {
          bound++;
        }
        steps.add(new Step(bound, from + stepdownMm, true, from));
        from += stepdownMm;
        continue;
      }
      steps.add(new Step(next, depthsMm[next], true, from));
      for (int k = next - 1; k > done; k--) {
        if (used[k]) {
          steps.add(new Step(k, depthsMm[k], false, from));
        }
      }
      from = depthsMm[next];
      done = next;
    }
    return new DepthPlan(steps);
  }
}
