package plyscape.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.Warnings;
import plyscape.job.JobReader;
import plyscape.plan.Acceptance;
import plyscape.plan.Landscape;
import plyscape.plan.PlanOptions;
import plyscape.plan.Progress;
import plyscape.planner.Planner;

/**
 * A ditch of 12 mm across a flat panel of 60 x 60 mm, in the ply below; sanding takes 0.4 of the
 * 0.45 mm that its floor lies under the ply's top.
 */
class RiskPictureTest {

  @TempDir Path folder;

  private Landscape plan(int block) throws IOException {
    Files.writeString(
        folder.resolve("ditch.asc"),
        "ncols 5\nnrows 5\nxllcorner 500000\nyllcorner 5600000\ncellsize 150\n"
            + "9 9 1 9 9\n".repeat(5));
    Files.writeString(
        folder.resolve("layup.yaml"),
        """
        name: two
        plies:
          - {name: pale, colour: "#eeeeee", thickness: 0.9, tolerance: 0.09}
          - {name: dark, colour: "#223344", thickness: 0.9, tolerance: 0.09}
          - {name: base, colour: "#998877", thickness: 3}
        """);
    Path job = folder.resolve("job.yaml");
    Files.writeString(
        job,
        String.format(
            Locale.ROOT,
            """
            layup: layup.yaml
            terrain: {file: ditch.asc, crs: "EPSG:32632", plies: [pale, dark]}
            panel: {width: 60, height: 60, border: 8}
            sanding: 0.4
            sanding_block: %d
            """,
            block));
    Warnings warnings = new Warnings();
    return Planner.plan(
            JobReader.read(job, List.of(), warnings),
            PlanOptions.preview(EnumSet.noneOf(Acceptance.class)),
            Progress.NONE,
            warnings)
        .landscape();
  }

  /** Pixels left of the key in a colour. */
  private static int pixels(Landscape plan, RiskStep step) throws IOException {
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(RiskPicture.png(plan)));
    int count = 0;
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < 936; x++) {
        count += (image.getRGB(x, y) & 0xffffff) == step.rgb() ? 1 : 0;
      }
    }
    return count;
  }

  @Test
  void floorsThatABlockMisses_areShownOnAFlatPanelToo() throws IOException {
    Landscape sponge = plan(0);
    assertEquals(0, pixels(sponge, RiskStep.MORE));
    Landscape block = plan(30);
    // The ditch takes about a quarter of the carved area, 44 of 60 mm wide.
    double share = pixels(block, RiskStep.MORE) / (660.0 * 660);
    assertTrue(share > 0.15 && share < 0.4, "share " + share);
    assertTrue(block.panelRisk() > sponge.panelRisk() + 0.02, block.panelRisk() + "");
  }
}
