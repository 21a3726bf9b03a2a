package plyscape.planner;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.JobFault;
import plyscape.fault.Warnings;
import plyscape.job.JobReader;
import plyscape.layup.LeastFloor;
import plyscape.plan.Acceptance;
import plyscape.plan.Landscape;
import plyscape.plan.PlanOptions;
import plyscape.plan.Progress;

/**
 * A panel of 60 x 60 mm that is 3.1 mm thick at its centre and grows by 0.4 mm from its left edge
 * to its right one; ground falls to the right, so that the lower ply shows there, or to the left.
 */
class FloorByPlaceTest {

  @TempDir Path folder;

  private Landscape plan(boolean fallsToTheRight, double minimumFloor) throws IOException {
    String row = fallsToTheRight ? "9 9 9 5 1\n" : "1 5 9 9 9\n";
    Files.writeString(
        folder.resolve("slope.asc"),
        "ncols 5\nnrows 5\nxllcorner 500000\nyllcorner 5600000\ncellsize 150\n" + row.repeat(5));
    Files.writeString(
        folder.resolve("layup.yaml"),
        """
        name: three
        plies:
          - {name: pale, colour: "#eeeeee", thickness: 0.9}
          - {name: dark, colour: "#223344", thickness: 0.9}
          - {name: base, colour: "#998877", thickness: 1.3}
        measured_places:
          - {at: [0, 30], bottoms: {1: 0.842, 2: 1.684, 3: 2.9}, tolerance: 0.01}
          - {at: [60, 30], bottoms: {1: 0.958, 2: 1.916, 3: 3.3}, tolerance: 0.01}
        press_taper: 0.15
        """);
    Path job = folder.resolve("job.yaml");
    Files.writeString(
        job,
        String.format(
            Locale.ROOT,
            """
            layup: layup.yaml
            terrain: {file: slope.asc, crs: "EPSG:32632", plies: [pale, dark]}
            panel: {width: 60, height: 60, border: 8}
            minimum_floor: %.3f
            """,
            minimumFloor));
    Warnings warnings = new Warnings();
    return Planner.plan(
            JobReader.read(job, List.of(), warnings),
            PlanOptions.preview(EnumSet.noneOf(Acceptance.class)),
            Progress.NONE,
            warnings)
        .landscape();
  }

  private static double atCentre(Landscape plan) {
    return plan.depths().floorMm(2);
  }

  @Test
  void thinnestPlaceDecides_andIsNamed() throws IOException {
    Landscape plan = plan(false, 0.5);
    LeastFloor least = plan.leastFloor();
    double centre = atCentre(plan);
    // The carved area begins 8 mm from the left edge.
    assertEquals(8.5, least.at().xMm(), 0.6);
    double taper = plan.depths().thicknessMm() - plan.depths().thicknessMm(least.at());
    assertTrue(taper > 0.1, taper + " mm thinner");
    assertEquals(least.cutMm(), plan.depths().of(2, least.at()).targetMm(), 1e-9);
    assertTrue(least.floorMm() < centre - 0.05, least + " and " + centre);

    JobFault fault = assertThrows(JobFault.class, () -> plan(false, centre - 0.01));
    assertTrue(fault.getMessage().contains("at " + least.at()), fault.getMessage());
    assertTrue(fault.getMessage().contains("--plies pale"), fault.getMessage());
    assertEquals(least.floorMm(), plan(false, least.floorMm() - 1e-3).leastFloor().floorMm(), 1e-9);
  }

  /** What is too thin at the centre doesn't matter where nothing is cut so deep. */
  @Test
  void placesWhereThePlyDoesNotShow_dontCount() throws IOException {
    Landscape plan = plan(true, 0.5);
    assertTrue(plan.leastFloor().floorMm() > atCentre(plan) + 0.02);
    assertEquals(2, plan(true, atCentre(plan) + 0.02).tiling().exposed().size());
  }
}
