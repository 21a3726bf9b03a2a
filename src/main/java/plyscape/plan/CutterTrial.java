package plyscape.plan;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import plyscape.fault.JobFault;
import plyscape.fault.VerifyFault;
import plyscape.fault.Warnings;
import plyscape.job.Job;
import plyscape.machine.Tool;
import plyscape.region.Tiling;

/**
 * A job planned with other cutters than it lists. Immutable.
 *
 * @param tools that there are
 * @param outcome what came of it, or empty when they can't do the job
 * @param refusal why they can't, "" when they can
 */
public record CutterTrial(List<Tool> tools, Optional<Outcome> outcome, String refusal) {

  /** Copies the list. */
  public CutterTrial {
    Objects.requireNonNull(outcome);
    Objects.requireNonNull(refusal);
    tools = List.copyOf(tools);
  }

  /**
   * What a plan comes to.
   *
   * @param used names of the cutters that it uses, in cutting order
   * @param cutS cutting time, s
   * @param changes of cutters, after the first of all is in
   * @param changesS what they take, s
   * @param plies how many show
   * @param lostMm2 what the map asks for and doesn't get: parts too narrow or too small for the
   *     cutters, and corners that none reaches
   */
  public record Outcome(
      List<String> used, double cutS, int changes, double changesS, int plies, double lostMm2) {

    /** Copies the list. */
    public Outcome {
      used = List.copyOf(used);
    }

    /** Cutting and changes, s. */
    public double totalS() {
      return cutS + changesS;
    }
  }

  /** Plans a job with these cutters. Bad input is a fault as ever; a refusal is an outcome. */
  static CutterTrial of(Job job, List<Tool> tools, PlanOptions options) {
    try {
      Plan plan = Planner.plan(job.with(tools), options, Progress.NONE, new Warnings());
      return new CutterTrial(tools, Optional.of(outcome((CutPlan) plan)), "");
    } catch (JobFault | VerifyFault refused) {
      return new CutterTrial(tools, Optional.empty(), refused.getMessage());
    }
  }

  private static Outcome outcome(CutPlan plan) {
    List<ToolProgram> programs =
        plan.panelPlans().stream().flatMap(p -> p.programs().stream()).toList();
    int changes = Math.max(0, programs.size() - 1);
    double lost =
        plan.tiling().merged().stream().mapToDouble(Tiling.Merged::areaMm2).sum()
            + plan.panelPlans().stream().mapToDouble(p -> p.verification().unreachableMm2()).sum();
    return new Outcome(
        programs.stream().map(program -> program.tool().name()).distinct().toList(),
        plan.time().totalS(),
        changes,
        changes * plan.job().machine().toolChangeS(),
        plan.tiling().exposed().size(),
        lost);
  }
}
