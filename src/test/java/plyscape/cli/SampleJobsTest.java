package plyscape.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.DistanceTransform;
import plyscape.job.Job;
import plyscape.job.JobReader;
import plyscape.machine.Tool;
import plyscape.render.layer.SvgLayerReader;
import plyscape.sample.WholeSample;
import plyscape.simulate.Cut;
import plyscape.simulate.CutResult;
import plyscape.simulate.HeightField;
import plyscape.simulate.Setup;
import plyscape.simulate.Simulator;
import plyscape.simulate.Target;

/**
 * The bundled samples, planned whole as a user would, and held against src/contract.md from the
 * files that come out.
 */
class SampleJobsTest {

  @TempDir private Path folder;

  @Test
  void tarnHollow_showsWhatThePlanSays() throws IOException {
    Path out = WholeSample.out();
    JsonNode plan = json(out);
    areasAddUp(plan);
    breaksOfScale_followTheClosedForm(plan, List.of(1, 2, 3, 4));
    nothingIsSpoiled(plan);
    assertTrue(plan.at("/verification/matched_share").doubleValue() >= 0.98);
    assertTrue(shareFarFromEdges(plan, out, "tarn-hollow") >= 0.999);
    assertTrue(
        plan.at("/time/lower_bound_s").doubleValue() <= plan.at("/time/total_s").doubleValue());
  }

  /** On a panel of a ninth of the area: all of its plies, zones and cutters still come to work. */
  @Test
  void tarnHollowSmall_twiceTheSameBytes_andSwappedFilesAreFound() throws IOException {
    String[] small = {"--width", "80", "--height", "80"};
    Path first = plan("tarn-hollow", "first", small);
    areasAddUp(json(first));
    nothingIsSpoiled(json(first));
    swappedFiles_areFoundByLineAndPlace(first, 80);
    Path second = plan("tarn-hollow", "second", small);
    Map<String, byte[]> files = files(first);
    Map<String, byte[]> again = files(second);
    assertEquals(files.keySet(), again.keySet());
    files.forEach((name, bytes) -> assertArrayEquals(bytes, again.get(name), name));
  }

  @Test
  void eildon_realGround_plansClean() throws IOException {
    JsonNode plan = json(plan("eildon", "eildon"));
    areasAddUp(plan);
    nothingIsSpoiled(plan);
    assertTrue(plan.at("/verification/matched_share").doubleValue() >= 0.98);
    // Least and greatest of the warped raster by gdalinfo -mm (GDAL 3.6.2): 64.529 and 399.735,
    // before smoothing.
    assertTrue(plan.at("/terrain/zmin_m").doubleValue() >= 64.529);
    assertTrue(plan.at("/terrain/zmax_m").doubleValue() <= 399.735);
    assertEquals(
        8400, plan.at("/terrain/ground_per_panel_mm").doubleValue() * carved(plan).width(), 0.2);
  }

  /** The small cutter first: its rapids go through wood that the large one should have cleared. */
  private static void swappedFiles_areFoundByLineAndPlace(Path out, double side)
      throws IOException {
    List<Path> passes = WholeSample.sorted(out.resolve("passes"));
    assertEquals(2, passes.size());
    Run run = Run.of("verify", out.resolve("plan.json"), passes.get(1), passes.get(0), "--json");
    assertEquals(3, run.code(), run.err());
    JsonNode collision = new ObjectMapper().readTree(run.out()).path("collisions").path(0);
    assertEquals(
        passes.get(1).getFileName().toString(),
        Path.of(collision.path("file").asText()).getFileName().toString());
    assertTrue(
        collision.path("what").asText().startsWith("rapid through stock"), collision.toString());
    // The place is on the panel, and the line is a motion of that file.
    String line = Files.readAllLines(passes.get(1)).get(collision.path("line").intValue() - 1);
    assertTrue(line.matches("(G0 )?[XYZ].*"), line);
    assertTrue(
        collision.path("x").doubleValue() > 0 && collision.path("x").doubleValue() < side,
        collision.toString());
    assertEquals(0, Run.of("verify", out, "-q").code());
  }

  private Path plan(String sample, String name, String... options) {
    Path out = folder.resolve(name);
    List<Object> args =
        new ArrayList<>(List.of("plan", "samples/" + sample + "/job.yaml", "-o", out));
    args.addAll(List.of(options));
    Run run = Run.of(args.toArray());
    assertEquals(0, run.code(), run.err());
    return out;
  }

  private static void areasAddUp(JsonNode plan) {
    double sum = 0;
    double shares = 0;
    for (JsonNode ply : plan.path("plies")) {
      sum += ply.path("area_mm2").doubleValue();
      shares += ply.path("share").doubleValue();
    }
    double area = carved(plan).area();
    assertEquals(area, sum, 1e-6 * area);
    assertEquals(1, shares, 1e-9);
  }

  /**
   * src/contract.md, section 4: the break between two listed plies is where depth(z) is half way
   * between their mid-ply depths.
   */
  private static void breaksOfScale_followTheClosedForm(JsonNode plan, List<Integer> plies) {
    double zmin = plan.at("/terrain/zmin_m").doubleValue();
    double zmax = plan.at("/terrain/zmax_m").doubleValue();
    double first = mid(plan, plies.get(0));
    double last = mid(plan, plies.get(plies.size() - 1));
    for (int i = 0; i + 1 < plies.size(); i++) {
      double half = (mid(plan, plies.get(i)) + mid(plan, plies.get(i + 1))) / 2;
      double z = zmax - (half - first) / (last - first) * (zmax - zmin);
      assertEquals(z, ply(plan, plies.get(i)).at("/breaks_m/0").doubleValue(), 1e-9);
      assertEquals(z, ply(plan, plies.get(i + 1)).at("/breaks_m/1").doubleValue(), 1e-9);
    }
    // Section 3, by hand: plies of 0.9 and glue lines of 0.04 give a mid-ply depth of 0.45 + 0.94
    // (k - 1).
    for (int k = 1; k <= 9; k++) {
      assertEquals(0.45 + 0.94 * (k - 1), mid(plan, k), 1e-9);
    }
  }

  private static void nothingIsSpoiled(JsonNode plan) {
    assertEquals(0, plan.at("/verification/gouged_mm2").doubleValue());
    assertEquals(0, plan.at("/verification/collisions").intValue());
    double uncut = plan.at("/verification/uncut_mm2").doubleValue();
    assertTrue(uncut <= 1e-4 * carved(plan).area(), uncut + " mm2 left uncut");
  }

  /**
   * Share of cells at their target depth, of those farther than the smallest cutter's radius from
   * any region's edge.
   */
  private static double shareFarFromEdges(JsonNode plan, Path out, String sample)
      throws IOException {
    Job job = JobReader.read(Path.of("samples", sample, "job.yaml"), List.of(), new Warnings());
    double thickness = plan.at("/panel/thickness_mm").doubleValue();
    double width = job.panel().widthMm();
    double height = job.panel().heightMm();
    List<Cut> cuts = WholeSample.cuts(job, thickness);
    List<Target> targets = new ArrayList<>();
    for (Path file : WholeSample.sorted(out.resolve("layers"))) {
      SvgLayerReader.Layer layer =
          SvgLayerReader.read(file.getFileName().toString(), Files.readString(file));
      double depth = ply(plan, layer.plyNumber()).path("target_mm").doubleValue();
      targets.add(new Target(layer.plyNumber(), depth, layer.exposed().toArray(double[][]::new)));
    }
    Box panel = new Box(0, 0, width, height);
    Setup setup = new Setup(panel, thickness, carved(plan), job.machine(), 0.2);
    CutResult result = Simulator.run(setup, cuts, targets, job.tools());
    HeightField field = result.field();
    int columns = field.frame().columns();
    int rows = field.frame().rows();
    short[] target = result.targetOf();
    boolean[] edge = new boolean[target.length];
    for (int i = 0; i < target.length; i++) {
      edge[i] =
          i % columns == columns - 1
              || i >= target.length - columns
              || target[i] != target[i + 1]
              || target[i] != target[i + columns];
    }
    int[] squared = DistanceTransform.squared(edge, columns, rows);
    double radius =
        job.tools().stream().mapToDouble(Tool::radiusMm).min().orElseThrow() / field.frame().cellX()
            + 1;
    long far = 0;
    long right = 0;
    for (int i = 0; i < target.length; i++) {
      if (target[i] >= 0 && squared[i] > radius * radius) {
        far++;
        double depth = targets.get(target[i]).depthMm();
        right += Math.abs(field.depth()[i] - depth) <= 0.01 ? 1 : 0;
      }
    }
    assertTrue(far > target.length / 2, far + " cells");
    return (double) right / far;
  }

  private static Box carved(JsonNode plan) {
    JsonNode box = plan.at("/panel/carved");
    return new Box(
        box.get(0).doubleValue(),
        box.get(1).doubleValue(),
        box.get(2).doubleValue(),
        box.get(3).doubleValue());
  }

  private static JsonNode ply(JsonNode plan, int number) {
    return plan.path("plies").get(number - 1);
  }

  private static double mid(JsonNode plan, int number) {
    return ply(plan, number).path("mid_mm").doubleValue();
  }

  private static JsonNode json(Path out) throws IOException {
    return new ObjectMapper().readTree(out.resolve("plan.json").toFile());
  }

  private static Map<String, byte[]> files(Path root) throws IOException {
    Map<String, byte[]> files = new TreeMap<>();
    try (Stream<Path> list = Files.walk(root)) {
      for (Path file : list.filter(Files::isRegularFile).toList()) {
        files.put(root.relativize(file).toString(), Files.readAllBytes(file));
      }
    }
    return files;
  }
}
