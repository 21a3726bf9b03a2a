package plyscape.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.fault.Warnings;
import plyscape.job.JobReader;
import plyscape.layup.PlyDepth;
import plyscape.layup.Spot;

/** The sample panel that is neither flat nor equally thick. */
class LyingSampleTest {

  private static final Path SAMPLES = Path.of("samples/tarn-hollow");

  /** Share of the carved area that the README gives. */
  private static final double STATED = 0.0705;

  /**
   * What the flat program would show in that panel: at each place of 1 mm2 the finished face of the
   * flat plan, held against the plies as they lie. The README states the figure.
   */
  @Test
  void flatProgram_wouldShowWrongPlies() {
    Landscape flat = landscape("job.yaml");
    Landscape lies = landscape("lying.yaml");
    double sanding = flat.job().allowance().sandingMm();
    int wrongFlat = 0;
    int wrongBent = 0;
    List<Spot> spots = flat.spots();
    for (Spot spot : spots) {
      PlyDepth at = lies.depths().of(spot.ply(), spot.at());
      double x = spot.at().xMm();
      double y = spot.at().yMm();
      double top = lies.shape().bend().top().heightMm(x, y);
      double cut = flat.depths().of(spot.ply()).targetMm();
      // Sanding takes its share off the uncut face and the floors alike.
      wrongFlat += wrong(at, (cut == 0 ? 0 : Math.max(0, cut + top)) + sanding) ? 1 : 0;
      double bent =
          lies.shape().bend().belowMm(x, y, lies.depths().of(spot.ply()).targetMm()) + top;
      wrongBent += wrong(at, bent + sanding) ? 1 : 0;
    }
    assertEquals(0, wrongBent);
    assertEquals(STATED, (double) wrongFlat / spots.size(), 0.002);
  }

  private static boolean wrong(PlyDepth at, double faceMm) {
    return faceMm < at.topMm() || faceMm > at.bottomMm();
  }

  @Test
  void verdictsGoByPlace() {
    Landscape lies = landscape("lying.yaml");
    assertFalse(lies.shape().flat());
    PlyDepth deep = lies.depths().of(8);
    assertFalse(deep.shown().leastTargetMm() == deep.shown().mostTargetMm());
  }

  private static Landscape landscape(String job) {
    Warnings warnings = new Warnings();
    return Planner.plan(
            JobReader.read(SAMPLES.resolve(job), List.of(), warnings),
            PlanOptions.preview(EnumSet.noneOf(Acceptance.class)),
            Progress.NONE,
            warnings)
        .landscape();
  }
}
