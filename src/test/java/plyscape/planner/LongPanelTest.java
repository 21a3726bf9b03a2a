package plyscape.planner;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.Warnings;
import plyscape.job.JobReader;
import plyscape.plan.PanelPlan;
import plyscape.plan.PlanOptions;
import plyscape.plan.Progress;
import plyscape.simulate.Verification;
import plyscape.terrain.AscText;

/**
 * Sculpted faces on a panel longer than 800 mm: far from the origin places and depths must be as
 * exact as near to it (src/contract.md, section 9). Narrow, so that it takes a few seconds.
 */
class LongPanelTest {

  @TempDir Path folder;

  @Test
  void sculptedFaces_holdOverTheWholeLength() throws IOException {
    Files.writeString(
        folder.resolve("layup.yaml"),
        """
        plies:
          - {name: high, colour: "#dddddd", thickness: 1.2, tolerance: 0.03}
          - {name: mid, colour: "#448844", thickness: 1.2, tolerance: 0.03}
          - {name: low, colour: "#884422", thickness: 1.2, tolerance: 0.03}
          - {name: base, colour: "#aa8866", thickness: 2}
        """);
    Files.writeString(
        folder.resolve("terrain.asc"),
        AscText.of(420, 4, (column, row) -> 100 + 30 * Math.sin(column / 13.0 + row / 9.0)));
    PanelPlan plan =
        (PanelPlan)
            Planner.plan(
                JobReader.read(
                    Files.writeString(
                        folder.resolve("job.yaml"),
                        """
                        layup: layup.yaml
                        terrain: {file: terrain.asc, plies: [high, mid, low], crs: "EPSG:32632"}
                        panel: {width: 846, height: 14, border: 3}
                        machine: {travel: [900, 300, 80]}
                        surface: sculpted
                        cusp: 0.1
                        tools:
                          - {name: end mill 6, diameter: 6, stepover: 0.45}
                          - {name: ball 6, shape: ball, diameter: 6, stepover: 0.3}
                        """),
                    List.of(),
                    new Warnings()),
                new PlanOptions(false, false, Set.of(), 0.2),
                Progress.NONE,
                new Warnings()); // gouges and collisions would be a fault
    assertEquals(840, plan.tiling().carved().width(), 1e-9);
    assertEquals("ball 6", plan.programs().get(plan.programs().size() - 1).tool().name());
    Verification v = plan.verification();
    assertTrue(v.safe(), v.toString());
    // Both long walls run along the lines of finishing: with lines no nearer than the cusp asks,
    // 24 mm2 stayed along them within the cutter's reach.
    assertTrue(v.uncutMm2() < 0.1, v.toString());
    // The rest lies at the feet of the two long walls, where a ball of 6 mm doesn't fit.
    assertTrue(v.matchedShare() > 0.6, v.toString());
    // The finishing goes on to the far end: its text reaches places beyond 800 mm.
    String text = plan.programs().get(plan.programs().size() - 1).text();
    assertTrue(text.lines().anyMatch(line -> line.matches(".*X8[0-3]\\d\\..*")), "nothing there");
  }
}
