package plyscape.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import plyscape.job.Job;
import plyscape.machine.Tool;

/**
 * Which cutters are worth trying in place of those that a job lists: one common cutter more, or one
 * of them less. Immutable.
 */
public final class CutterTrials {

  private final Job job;
  private final PlanOptions options;

  /** Of a job. */
  public CutterTrials(Job job, PlanOptions options) {
    this.job = job;
    this.options = options;
  }

  /** The sets, the job's own first. */
  public List<List<Tool>> sets() {
    List<List<Tool>> sets = new ArrayList<>();
    sets.add(job.tools());
    for (Tool more : CommonCutters.lackedBy(job.tools(), thicknessMm())) {
      List<Tool> set = new ArrayList<>(job.tools());
      set.add(more);
      set.sort(Comparator.comparingDouble(Tool::diameterMm).reversed());
      sets.add(List.copyOf(set));
    }
    for (Tool less : job.tools()) {
      List<Tool> set = new ArrayList<>(job.tools());
      set.remove(less);
      if (set.stream().anyMatch(tool -> tool.shape() == Tool.Shape.FLAT)) {
        sets.add(List.copyOf(set));
      }
    }
    return List.copyOf(sets);
  }

  /** Plans one of them; what doesn't differ from the job's own reads the same maps again. */
  public CutterTrial plan(List<Tool> set) {
    return CutterTrial.of(job, set, options);
  }

  /** No cut is deeper. */
  private double thicknessMm() {
    return job.layup().plies().stream().mapToDouble(ply -> ply.thicknessMm()).sum();
  }
}
