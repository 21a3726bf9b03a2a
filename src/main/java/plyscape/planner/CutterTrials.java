package plyscape.planner;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import plyscape.fault.JobFault;
import plyscape.fault.VerifyFault;
import plyscape.fault.Warnings;
import plyscape.job.Job;
import plyscape.machine.Tool;
import plyscape.plan.CutPlan;
import plyscape.plan.CutterTrial;
import plyscape.plan.PanelFigures;
import plyscape.plan.Plan;
import plyscape.plan.PlanOptions;
import plyscape.plan.Progress;
import plyscape.planner.advice.CommonCutters;
import plyscape.region.Tiling;

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
    return trial(job, set, options);
  }

  /** Plans a job with these cutters. Bad input is a fault as ever; a refusal is an outcome. */
  private static CutterTrial trial(Job job, List<Tool> tools, PlanOptions options) {
    try {
      Plan plan = Planner.plan(job.with(tools), options, Progress.NONE, new Warnings());
      return new CutterTrial(tools, Optional.of(outcome((CutPlan) plan)), "");
    } catch (JobFault | VerifyFault refused) {
      return new CutterTrial(tools, Optional.empty(), refused.getMessage());
    }
  }

  private static CutterTrial.Outcome outcome(CutPlan plan) {
    List<PanelFigures> panels = plan.figures();
    List<String> cutters = panels.stream().flatMap(panel -> panel.cutters().stream()).toList();
    int changes = Math.max(0, cutters.size() - 1);
    double lost =
        plan.tiling().merged().stream().mapToDouble(Tiling.Merged::areaMm2).sum()
            + panels.stream().mapToDouble(PanelFigures::unreachableMm2).sum();
    return new CutterTrial.Outcome(
        cutters.stream().distinct().toList(),
        plan.time().totalS(),
        changes,
        changes * plan.job().machine().toolChangeS(),
        plan.tiling().exposed().size(),
        lost);
  }

  /** No cut is deeper. */
  private double thicknessMm() {
    return job.layup().plies().stream().mapToDouble(ply -> ply.thicknessMm()).sum();
  }
}
