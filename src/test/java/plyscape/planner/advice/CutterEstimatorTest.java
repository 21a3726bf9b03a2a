package plyscape.planner.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.fault.Warnings;
import plyscape.job.Job;
import plyscape.job.JobReader;
import plyscape.job.yaml.Setting;
import plyscape.machine.Tool;
import plyscape.machine.Workshop;
import plyscape.plan.CutterAdvice;
import plyscape.plan.CutterEstimate;
import plyscape.plan.PanelPlan;
import plyscape.plan.Progress;
import plyscape.plan.UsualOptions;
import plyscape.planner.Planner;

/** Estimates for a cutter more, held against plans with that cutter. */
class CutterEstimatorTest {

  private static final List<Setting> SMALL =
      List.of(
          new Setting("panel.width", "60", "--width"),
          new Setting("panel.height", "72", "--height"),
          new Setting("panel.border", "4", "--border"));

  private static PanelPlan plan(Job job) {
    return (PanelPlan) Planner.plan(job, UsualOptions.WHOLE, Progress.NONE, new Warnings());
  }

  @Test
  void estimatesAreWithinFifteenPerCentOfPlans() {
    Job job = JobReader.read(Path.of("samples/eildon/job.yaml"), SMALL, new Warnings());
    PanelPlan plan = plan(job);
    assertEquals(
        List.of(3.0, 4.0, 6.0),
        plan.estimates().stream().map(estimate -> estimate.tool().diameterMm()).toList());
    for (CutterEstimate estimate : plan.estimates()) {
      List<Tool> tools = new ArrayList<>(job.tools());
      tools.add(estimate.tool());
      double real = plan(job.with(tools)).time().totalS();
      assertEquals(real, estimate.totalS(), 0.15 * real, estimate.tool().name());
    }
    CutterAdvice advice = CutterAdvice.of(plan).orElseThrow();
    double change = job.machine().toolChangeS();
    assertEquals(
        1 - (advice.estimate().totalS() + change) / plan.time().totalS(),
        advice.savedShare(),
        1e-12);
    assertTrue(advice.savedShare() > 0.1);
  }

  /** Nothing on the list is larger than 6 mm. */
  @Test
  void largestCommonCutter_hasNothingToGain() {
    Job job =
        JobReader.read(Path.of("samples/eildon/job.yaml"), SMALL, new Warnings())
            .with(List.of(Workshop.endMill(6, 12), Workshop.endMill(2, 12)));
    PanelPlan plan = plan(job);
    assertTrue(plan.estimates().isEmpty());
    assertTrue(CutterAdvice.of(plan).isEmpty());
  }
}
