package plyscape.planner;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.MultiPolygon;
import plyscape.fault.InputFault;
import plyscape.fault.Warnings;
import plyscape.gcode.GcodeParser;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.job.Job;
import plyscape.job.JobReader;
import plyscape.job.yaml.Setting;
import plyscape.layup.PanelPoint;
import plyscape.layup.PlyDepth;
import plyscape.layup.PlyShown;
import plyscape.plan.Acceptance;
import plyscape.plan.Landscape;
import plyscape.plan.LyingPanel;
import plyscape.plan.PanelPlan;
import plyscape.plan.PlanOptions;
import plyscape.plan.Progress;
import plyscape.plan.TiledLandscape;
import plyscape.region.RegionRaster;
import plyscape.sample.WholeSample;
import plyscape.simulate.BentPanel;
import plyscape.simulate.Cut;
import plyscape.simulate.HeightField;
import plyscape.simulate.Setup;
import plyscape.simulate.Simulator;

/** The sample panel that is neither flat nor equally thick. */
class LyingSampleTest {

  private static final Path SAMPLES = Path.of("samples/tarn-hollow");

  private static final double CELL_MM = 0.2;

  /** Of so many cells one is judged; no divisor of a row's 1200, so that rows differ. */
  private static final int JUDGED = 7;

  /** Share of the carved area that the README gives. */
  private static final double STATED = 0.071;

  /** The same of the program that was made for the panel, as the README gives it. */
  private static final double STATED_BENT = 0.0006;

  /**
   * Both programs are cut into the panel as it lies, in simulation, and every face that is left is
   * held against the plies at its place. The README states both figures.
   */
  @Test
  void flatProgram_wouldShowWrongPlies() throws IOException {
    PanelPlan bent = plan("lying.yaml");
    Landscape lies = bent.landscape();
    assertEquals(STATED, wrongShare(WholeSample.cuts(lies.job(), lies.thicknessMm()), lies), 0.001);
    assertEquals(STATED_BENT, wrongShare(cuts(bent), lies), 0.0003);
  }

  private static List<Cut> cuts(PanelPlan plan) {
    return plan.programs().stream()
        .map(
            p ->
                new Cut(
                    GcodeParser.parse(
                        p.file(),
                        p.text(),
                        plan.job().machine(),
                        240,
                        240,
                        plan.landscape().thicknessMm()),
                    p.tool()))
        .toList();
  }

  /** Share of the carved area that shows another ply than wanted, once cut and sanded. */
  private static double wrongShare(List<Cut> cuts, Landscape lies) {
    Job job = lies.job();
    BentPanel panel = LyingPanel.of(lies);
    Box whole = new Box(0, 0, 240, 240);
    HeightField surface = HeightField.uncut(whole, CELL_MM);
    Box carved = lies.tiling().carved();
    Setup setup = new Setup(whole, lies.thicknessMm(), carved, job.machine(), CELL_MM).lying(panel);
    Simulator.cut(setup, cuts, surface);
    int wrong = 0;
    int all = 0;
    CellFrame frame = surface.frame();
    for (Map.Entry<Integer, MultiPolygon> shown : lies.tiling().exposed().entrySet()) {
      boolean[] inside = RegionRaster.inside(shown.getValue(), frame);
      for (int i = 0; i < inside.length; i += JUDGED) {
        double x = frame.centreX(i % frame.columns());
        double y = frame.centreY(i / frame.columns());
        if (inside[i]) {
          // Sanding takes its share off the uncut face and the floors alike.
          double face = surface.depth()[i] - panel.faceMm(x, y) + job.allowance().sandingMm();
          all++;
          wrong += wrong(lies.depths().of(shown.getKey(), new PanelPoint(x, y)), face) ? 1 : 0;
        }
      }
    }
    return (double) wrong / all;
  }

  private static PanelPlan plan(String job) {
    Warnings warnings = new Warnings();
    return (PanelPlan)
        Planner.plan(
            JobReader.read(SAMPLES.resolve(job), List.of(), warnings),
            new PlanOptions(false, false, EnumSet.noneOf(Acceptance.class), 0.5),
            Progress.NONE,
            warnings);
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

  /**
   * Depths of a panel that curves: the bend and the simulation each follow them by their own way.
   */
  @Test
  void bowedPlies_areFollowedByBendAndProof(@TempDir Path folder) throws IOException {
    StringBuilder layup = new StringBuilder(Files.readString(SAMPLES.resolve("layup.yaml")));
    layup.append("\npress_bow: 0.03\nmeasured_places:\n");
    for (int i = 0; i < 9; i++) {
      int x = 120 * (i % 3);
      int y = 120 * (i / 3);
      double r2 = (Math.pow(x - 120, 2) + Math.pow(y - 120, 2)) / 1e4;
      layup.append(
          String.format(
              Locale.ROOT,
              "  - {at: [%d, %d], bottoms: {4: %.3f, 8: %.3f}, tolerance: 0.02}%n",
              x,
              y,
              3.70 * (1 + 0.008 * r2),
              7.46 * (1 + 0.008 * r2)));
    }
    Files.writeString(folder.resolve("l.yaml"), layup);
    Warnings warnings = new Warnings();
    Setting own = new Setting("layup", folder.resolve("l.yaml").toAbsolutePath().toString(), "t");
    Landscape plan =
        Planner.plan(
                JobReader.read(SAMPLES.resolve("job.yaml"), List.of(own), warnings),
                PlanOptions.preview(EnumSet.noneOf(Acceptance.class)),
                Progress.NONE,
                warnings)
            .landscape();
    PlyDepth deep = plan.depths().of(8);
    PlyDepth corner = plan.depths().of(8, new PanelPoint(3, 236));
    assertTrue(corner.targetMm() > deep.targetMm() + 0.12, corner.targetMm() + " at the corner");
    BentPanel proof = LyingPanel.of(plan);
    for (PanelPoint at : List.of(new PanelPoint(3, 236), new PanelPoint(77, 191))) {
      for (int ply = 2; ply <= 8; ply++) {
        double flat = plan.depths().of(ply).targetMm();
        double here = plan.depths().of(ply, at).targetMm();
        assertEquals(here, plan.shape().bend().depthMm(at.xMm(), at.yMm(), flat), 1e-6);
        assertEquals(flat, proof.flatMm(at.xMm(), at.yMm(), here), 1e-6);
      }
      assertEquals(plan.depths().thicknessMm(at), proof.bottom().depthMm(at.xMm(), at.yMm()), 1e-6);
    }
  }

  /** Places of the whole count from its own corner; the second panel begins at 120 mm. */
  private static void wholeHoldsWhatItsPanelsHold(TiledLandscape plan) {
    PlyShown left = plan.tiles().get(0).plan().depths().of(8).shown();
    PlyShown right = plan.tiles().get(1).plan().depths().of(8).shown();
    PlyShown whole = plan.landscape().depths().of(8).shown();
    assertTrue(left.neededWorstMm() != right.neededWorstMm());
    assertEquals(Math.max(left.neededWorstMm(), right.neededWorstMm()), whole.neededWorstMm());
    boolean first = left.neededWorstMm() > right.neededWorstMm();
    assertEquals(first ? left.worstAt().xMm() : right.worstAt().xMm() + 120, whole.worstAt().xMm());
    assertEquals(left.reliable() && right.reliable(), whole.reliable());
    assertTrue(whole.risk() >= Math.min(left.risk(), right.risk()));
    assertTrue(whole.risk() <= Math.max(left.risk(), right.risk()));
    assertEquals(
        Math.min(left.floor().floorMm(), right.floor().floorMm()), whole.floor().floorMm());
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
    Path none = folder.resolve("none.yaml");
    Files.writeString(none, layup.replace("tile-2-1", "tile-2-2"));
    List<Setting> other = new ArrayList<>(settings);
    other.set(0, new Setting("layup", none.toAbsolutePath().toString(), "t"));
    String fault =
        assertThrows(
                InputFault.class,
                () -> JobReader.read(SAMPLES.resolve("job.yaml"), other, new Warnings()))
            .getMessage();
    assertTrue(fault.contains("\"tile-2-2\"") && fault.contains("tile-1-1 to tile-2-1"), fault);
    Landscape left = plan.tiles().get(0).plan();
    Landscape right = plan.tiles().get(1).plan();
    assertEquals(0.1, left.shape().topMap().orElseThrow().highMm());
    assertEquals(-0.3, right.shape().topMap().orElseThrow().lowMm());
    wholeHoldsWhatItsPanelsHold(plan);
    assertEquals(
        7.55 - 7.30,
        right.depths().of(8, new PanelPoint(0, 0)).bottomMm()
            - left.depths().of(8, new PanelPoint(0, 0)).bottomMm(),
        1e-3);
  }
}
