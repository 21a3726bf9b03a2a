package plyscape.planner;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import plyscape.fault.JobFault;
import plyscape.fault.Warnings;
import plyscape.gcode.GcodeParser;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.job.Job;
import plyscape.job.JobReader;
import plyscape.layup.PlyDepth;
import plyscape.plan.Landscape;
import plyscape.plan.LyingPanel;
import plyscape.plan.PanelPlan;
import plyscape.plan.PlanOptions;
import plyscape.plan.Progress;
import plyscape.plan.ToolProgram;
import plyscape.planner.cut.FaceTargets;
import plyscape.region.FaceField;
import plyscape.region.RegionRaster;
import plyscape.simulate.BentPanel;
import plyscape.simulate.CellVerdict;
import plyscape.simulate.Cut;
import plyscape.simulate.CutResult;
import plyscape.simulate.Setup;
import plyscape.simulate.Simulator;
import plyscape.terrain.AscText;

/**
 * Whole sculpted jobs on made ground. What is proved here is the point of it all: wherever a cutter
 * can come, the face as simulated from the written G-code, sanding taken off, keeps the clearance
 * that its ply needs from both its edges (src/contract.md, section 3).
 */
class SculptedPlanTest {

  private static final String FLATS =
      """
        - {name: end mill 3, diameter: 3, stepover: 0.45}
        - {name: end mill 1.5, diameter: 1.5, flute_length: 8, stepdown: 1, feed: 1200, plunge: 300}
      """;

  private static final List<String> FINISHERS =
      List.of(
          "  - {name: ball 2, shape: ball, diameter: 2, flute_length: 8, stepover: 0.3}\n",
          "  - {name: cone, shape: tapered, diameter: 4, tip_diameter: 1, taper: 8, flute_length:"
              + " 12}\n",
          "  - {name: ball 4, shape: ball, diameter: 4}\n"
              + "  - {name: ball 1, shape: ball, diameter: 1, flute_length: 6, stepdown: 0.3}\n",
          "");

  private static final String SCULPTED = "surface: sculpted\n";

  private static final String PANEL = "panel: {width: 40, height: 34, border: 3}\n";

  /** With seed 1, cell centres lie less than a micron off walls here and are cut a little. */
  private static final String CLOSE = "panel: {width: 34, height: 29, border: 3}\n";

  @TempDir static Path root;

  /** The plans of the made grounds, which several tests look at; seeds run side by side. */
  private static Map<Long, Made> made;

  private record Made(PanelPlan plan, Warnings warnings) {}

  @BeforeAll
  static void planTheMadeGrounds() {
    made =
        LongStream.rangeClosed(1, 4)
            .parallel()
            .boxed()
            .collect(Collectors.toMap(seed -> seed, SculptedPlanTest::made));
  }

  private static Made made(long seed) {
    Warnings warnings = new Warnings();
    String tools = FLATS + FINISHERS.get((int) (seed % 4));
    Job job = job(seed, tools, SCULPTED + top(seed), seed == 1 ? CLOSE : PANEL);
    return new Made(plan(job, warnings), warnings); // gouges and collisions would be a fault
  }

  private static String top(long seed) {
    return seed % 2 == 0 ? "top: mid\n" : "";
  }

  private static Job job(long seed, String tools, String more, String panel) {
    try {
      return written(seed, tools, more, panel);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Job written(long seed, String tools, String more, String panel)
      throws IOException {
    Path folder = Files.createTempDirectory(root, "job");
    Files.writeString(
        folder.resolve("layup.yaml"),
        """
        glue_line: 0.04
        flatness: 0.05
        plies:
          - {name: high, colour: "#dddddd", thickness: 0.9, tolerance: 0.03}
          - {name: mid, colour: "#448844", thickness: 0.9, tolerance: 0.03}
          - {name: low, colour: "#884422", thickness: 0.9, tolerance: 0.03}
          - {name: lake, colour: "#2244aa", thickness: 0.9, tolerance: 0.03}
          - {name: base, colour: "#aa8866", thickness: 1.2}
        """);
    Random random = new Random(seed);
    double[][] waves = new double[5][];
    for (int i = 0; i < waves.length; i++) {
      double turn = random.nextDouble() * 7;
      double k = 0.1 + 0.15 * random.nextDouble() * (i + 1);
      waves[i] =
          new double[] {
            k * Math.cos(turn), k * Math.sin(turn), random.nextDouble() * 7, 30.0 / (i + 1)
          };
    }
    String ground =
        AscText.of(
            48,
            40,
            (column, row) -> {
              double z = 100;
              for (double[] w : waves) {
                z += w[3] * Math.sin(w[0] * column + w[1] * row + w[2]);
              }
              return z;
            });
    Files.writeString(folder.resolve("terrain.asc"), ground);
    Files.writeString(
        folder.resolve("lake.geojson"),
        """
        {"type": "FeatureCollection", "crs": {"type": "name", "properties": {"name": "EPSG:32632"}},
         "features": [{"type": "Feature", "properties": {}, "geometry": {"type": "Polygon",
          "coordinates": [[[120, 120], [300, 90], [330, 250], [200, 290], [120, 120]]]}}]}
        """);
    Files.writeString(folder.resolve("steep.csv"), MadeTops.steep());
    Files.writeString(folder.resolve("few.csv"), MadeTops.FEW);
    return JobReader.read(
        Files.writeString(
            folder.resolve("job.yaml"),
            "layup: layup.yaml\n"
                + "terrain: {file: terrain.asc, plies: [high, mid, low], crs: 'EPSG:32632'}\n"
                + panel
                + "zones: [{name: lake, file: lake.geojson, ply: lake}]\n"
                + "tools:\n"
                + tools
                + more),
        List.of(),
        new Warnings());
  }

  private static FaceField faces(PanelPlan plan) {
    return plan.landscape().faces().orElseThrow();
  }

  private static PanelPlan plan(Job job, Warnings warnings) {
    return (PanelPlan)
        Planner.plan(job, new PlanOptions(false, false, Set.of(), 0.1), Progress.NONE, warnings);
  }

  private static CutResult cut(PanelPlan plan, double cellMm) {
    return cut(plan, cellMm, LyingPanel.of(plan.landscape()));
  }

  private static CutResult cut(PanelPlan plan, double cellMm, BentPanel lies) {
    Job job = plan.job();
    List<Cut> cuts =
        plan.programs().stream()
            .map(
                p ->
                    new Cut(
                        GcodeParser.parse(
                            p.file(),
                            p.text(),
                            job.machine(),
                            job.panel().widthMm(),
                            job.panel().heightMm(),
                            plan.depths().thicknessMm()),
                        p.tool()))
            .toList();
    Box panel = new Box(0, 0, job.panel().widthMm(), job.panel().heightMm());
    return Simulator.run(
        new Setup(panel, plan.depths().thicknessMm(), plan.tiling().carved(), job.machine(), cellMm)
            .lying(lies),
        cuts,
        FaceTargets.of(faces(plan)),
        job.tools());
  }

  @Test
  void madeGround_neitherGouges_norShowsAWrongPly() {
    made.entrySet().parallelStream()
        .forEach(
            one -> {
              long seed = one.getKey();
              PanelPlan plan = one.getValue().plan();
              CutResult result = cut(plan, 0.1);
              String who = "seed " + seed;
              assertTrue(result.verification().safe(), who + " " + result.verification());
              // A flat cutter's steps are a little higher than a ball's ridges here and there.
              double uncut = FINISHERS.get((int) (seed % 4)).isEmpty() ? 12 : 0.5;
              assertTrue(
                  result.verification().uncutMm2() < uncut, who + " " + result.verification());
              topFaceHolds(plan, result, who);
              colourHolds(plan, result, who);
              assertTrue(
                  plan.verification().matchedShare() > 0.75, who + " " + plan.verification());
            });
  }

  /**
   * Where the top ply stays uncut, and in the border, nothing is touched but within what a cutter's
   * edge may go over a wall (src/contract.md, section 9). Cells right at a wall may be, by any
   * depth.
   */
  private static void topFaceHolds(PanelPlan plan, CutResult result, String who) {
    CellFrame frame = result.field().frame();
    int[] region = RegionRaster.of(faces(plan).polygons(), frame);
    Geometry walls = new GeometryFactory().buildGeometry(boundaries(plan));
    int left = 0;
    for (int i = 0; i < region.length; i++) {
      if (region[i] != RegionRaster.NONE && plyOf(plan, region[i]).targetMm() > 0) {
        continue;
      }
      left++;
      if (result.field().depth()[i] > 0.001) {
        double x = frame.centreX(i % frame.columns());
        double y = frame.centreY(i / frame.columns());
        double over = walls.distance(new GeometryFactory().createPoint(new Coordinate(x, y)));
        assertTrue(over <= 0.02, who + ": cut " + over + " mm off any wall at " + x + " " + y);
      }
    }
    assertTrue(left > 1000, who + ": the border at least");
  }

  private static PlyDepth plyOf(PanelPlan plan, int region) {
    return plan.depths().of(faces(plan).faces().get(region).plyNumber());
  }

  private static List<Geometry> boundaries(PanelPlan plan) {
    return faces(plan).polygons().stream().map(Geometry::getBoundary).toList();
  }

  private static void colourHolds(PanelPlan plan, CutResult result, String who) {
    CellFrame frame = result.field().frame();
    int[] region = RegionRaster.of(faces(plan).polygons(), frame);
    double[] rough = faces(plan).roughMm();
    double sanding = plan.job().allowance().sandingMm();
    int unreached = 0;
    for (int i = 0; i < region.length; i++) {
      if (region[i] == RegionRaster.NONE || result.verdicts()[i] == CellVerdict.WALL.code()) {
        continue;
      }
      PlyDepth depth = plyOf(plan, region[i]);
      double cut = result.field().depth()[i];
      if (depth.targetMm() == 0) {
        continue;
      }
      if (cut < rough[region[i]] - 0.001) {
        unreached++; // corners that no flat cutter fits into, as on any panel
        assertTrue(
            cut > rough[region[i]] - 0.011
                || result.verdicts()[i] == CellVerdict.UNREACHABLE.code()
                || result.verdicts()[i] == CellVerdict.UNCUT.code(),
            who);
      } else {
        double face = cut + sanding;
        assertTrue(
            face >= depth.topMm() + depth.neededTopMm() - 0.001
                && face <= depth.bottomMm() - depth.neededBottomMm() + 0.01,
            who + " " + depth.ply().name() + " at " + face);
      }
    }
    assertTrue(unreached < region.length / 50, who + ": " + unreached);
  }

  /**
   * The surface, cut as the panel lies and brought back to the flat plan's depths, against the
   * faces: off walls no place is deeper by more than the proof's 0.01 mm, though the face under the
   * ball rises by up to 0.1 mm over its radius. The same programs fail on a flat panel.
   */
  @Test
  void bentPanels_areFinishedAsTheyLie() {
    List.of("steep.csv", "few.csv").parallelStream().forEach(SculptedPlanTest::bentPanel);
  }

  private static void bentPanel(String top) {
    String panel =
        "panel: {width: 24, height: 20, border: 3, top_map: {file: "
            + top
            + ", tolerance: 0.02}}\n";
    PanelPlan plan = plan(job(3, FLATS + FINISHERS.get(0), SCULPTED, panel), new Warnings());
    CutResult result = cut(plan, 0.06);
    assertTrue(result.verification().safe(), top + " " + result.verification());
    assertTrue(result.verification().uncutMm2() < 0.3, top + " " + result.verification());
    CellFrame frame = result.field().frame();
    int[] region = RegionRaster.of(faces(plan).polygons(), frame);
    Geometry walls = new GeometryFactory().buildGeometry(boundaries(plan)).buffer(0.05);
    PreparedGeometry near = PreparedGeometryFactory.prepare(walls);
    int judged = 0;
    for (int i = 0; i < region.length; i++) {
      double x = frame.centreX(i % frame.columns());
      double y = frame.centreY(i / frame.columns());
      if (region[i] == RegionRaster.NONE || faces(plan).faces().get(region[i]).flat()) {
        continue;
      }
      double over = result.field().depth()[i] - faces(plan).depthMm(region[i], x, y);
      if (over > 0.01) {
        assertTrue(near.contains(walls.getFactory().createPoint(new Coordinate(x, y))), top);
      }
      judged++;
    }
    assertTrue(judged > 10_000, top + " " + judged);
    assertFalse(cut(plan, 0.1, null).verification().safe(), top);
  }

  @Test
  void sameJobTwice_givesTheSameText() {
    String small = "panel: {width: 24, height: 20, border: 3}\n";
    Job job = job(3, FLATS + FINISHERS.get(0), SCULPTED + "cusp: 0.1\n", small);
    List<String> one = texts(plan(job, new Warnings()));
    assertEquals(one, texts(plan(job, new Warnings())));
    assertTrue(one.size() >= 2 && one.stream().allMatch(t -> t.contains("G1 ")), one.toString());
  }

  private static List<String> texts(PanelPlan plan) {
    return plan.programs().stream().map(ToolProgram::text).toList();
  }

  @Test
  void finishingIsLast_andTheTimesOfThePassesAddUp() {
    PanelPlan plan = made.get(4L).plan();
    ToolProgram last = plan.programs().get(plan.programs().size() - 1);
    assertEquals("ball 2", last.tool().name());
    assertTrue(last.passes().get(0).timeS() > 60, last.passes().toString());
    assertEquals(
        plan.time().totalS(),
        plan.programs().stream()
            .flatMap(p -> p.passes().stream())
            .mapToDouble(ToolProgram.PassSummary::timeS)
            .sum(),
        1e-6);
  }

  @Test
  void risk_isTheWorstInTheWindow() {
    Landscape flat =
        Planner.plan(
                job(4, FLATS, top(4), PANEL),
                PlanOptions.preview(Set.of()),
                Progress.NONE,
                new Warnings())
            .landscape();
    Landscape sculpted = made.get(4L).plan().landscape();
    assertTrue(flat.faces().isEmpty());
    assertTrue(sculpted.faces().isPresent());
    assertTrue(sculpted.depths().of(2).risk() > flat.depths().of(2).risk());
    assertEquals(flat.depths().of(2).targetMm(), sculpted.depths().of(2).targetMm());
  }

  @Test
  void flatCuttersAlone_cutSteps_andItIsTold() {
    Made steps = made.get(3L);
    assertTrue(steps.warnings().list().stream().anyMatch(w -> w.code().equals("steps")));
    assertEquals(2, steps.plan().programs().size());
  }

  @Test
  void withoutFlatCutters_itSaysWhatIsMissing() {
    Job job = job(3, FINISHERS.get(0), SCULPTED, PANEL);
    JobFault fault = assertThrows(JobFault.class, () -> plan(job, new Warnings()));
    assertTrue(fault.getMessage().contains("flat"), fault.getMessage());
  }
}
