package plyscape.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.Warnings;
import plyscape.job.JobReader;
import plyscape.job.Setting;
import plyscape.layup.PanelPoint;
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

  /** Panels are pressed one by one: each has its own top face and its own readings. */
  @Test
  void tiles_eachHasItsOwnFaceAndPlies(@TempDir Path folder) throws IOException {
    for (int i = 1; i <= 2; i++) {
      String z = i == 1 ? "0.1" : "-0.3";
      Files.writeString(
          folder.resolve("top-tile-" + i + "-1.csv"),
          "x,y,z\n0,0,0\n120,0," + z + "\n0,240,0\n120,240," + z + "\n60,120,0\n");
    }
    String layup =
        Files.readString(SAMPLES.resolve("layup.yaml"))
            + "\nmeasured_places:\n"
            + "  - {at: [0, 0], bottoms: {8: 7.30}, tolerance: 0.02, tile: tile-1-1}\n"
            + "  - {at: [0, 0], bottoms: {8: 7.55}, tolerance: 0.02, tile: tile-2-1}\n";
    Files.writeString(folder.resolve("l.yaml"), layup);
    Warnings warnings = new Warnings();
    List<Setting> settings =
        List.of(
            new Setting("layup", folder.resolve("l.yaml").toAbsolutePath().toString(), "t"),
            new Setting("panel.width", "120", "t"),
            new Setting("panel.tiles", "[2, 1]", "t"),
            new Setting(
                "panel.top_map",
                "{file: \"" + folder.toAbsolutePath() + "/top-{tile}.csv\"}",
                "t"));
    TiledLandscape plan =
        (TiledLandscape)
            Planner.plan(
                JobReader.read(SAMPLES.resolve("job.yaml"), settings, warnings),
                PlanOptions.preview(EnumSet.noneOf(Acceptance.class)),
                Progress.NONE,
                warnings);
    Landscape left = plan.tiles().get(0).plan();
    Landscape right = plan.tiles().get(1).plan();
    assertEquals(0.1, left.shape().topMap().orElseThrow().highMm());
    assertEquals(-0.3, right.shape().topMap().orElseThrow().lowMm());
    assertEquals(
        7.55 - 7.30,
        right.depths().of(8, new PanelPoint(0, 0)).bottomMm()
            - left.depths().of(8, new PanelPoint(0, 0)).bottomMm(),
        1e-3);
  }
}
