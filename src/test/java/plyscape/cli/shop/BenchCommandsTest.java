package plyscape.cli.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.cli.Run;
import plyscape.job.LayupReader;

/** The commands for the bench, in-process: check, calibrate, glueup. */
class BenchCommandsTest {

  private static final String LAYUP =
      """
      # My panel.
      name: Thin <panel> & co
      glue_line: 0.05
      glue_line_tolerance: 0.02
      flatness: 0.12   # straight edge
      plies:
        - {name: meadow, colour: "#8fbf5a", thickness: 0.6, tolerance: 0.06, grain: 0, wood: dyed poplar}
        - {name: wood, colour: "#3f7d3a", thickness: 0.4, tolerance: 0.08, grain: 90, wood: dyed poplar}  # thin
        - {name: oak, colour: "#c8a165", thickness: 0.6, tolerance: 0.06, grain: 0, wood: poplar}
      """;

  @TempDir private Path folder;

  private Path layup() throws IOException {
    return write("layup.yaml", LAYUP);
  }

  private Path write(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  private long files() throws IOException {
    try (Stream<Path> list = Files.list(folder)) {
      return list.count();
    }
  }

  private static JsonNode json(Run run) throws IOException {
    assertEquals(0, run.code(), run.err());
    return new ObjectMapper().readTree(run.out());
  }

  @Test
  void check_advice_risk_drawing() throws Exception {
    Path svg = folder.resolve("section.svg");
    JsonNode node = json(Run.of("check", layup(), "--json", "--z-error", "0.15", "--svg", svg));
    JsonNode thin = node.path("plies").path(1);
    assertFalse(thin.path("reliable").asBoolean());
    double p = thin.path("risk").asDouble();
    assertTrue(p > 1e-4 && p < 0.1, "risk " + p);
    JsonNode advice = node.path("advice").path(0);
    assertEquals(2, advice.path("ply").asInt());
    assertEquals(
        2 * thin.path("needed_mm").asDouble(), advice.path("thickness_mm").asDouble(), 1e-12);
    DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(svg.toFile());
    Run text = Run.of("check", layup(), "--z-error", "0.15");
    assertTrue(text.out().contains("too thin") && text.out().contains("helps most"), text.out());
    assertEquals(1, Run.of("check", layup(), "--svg", svg).code(), "an existing drawing is kept");
    assertEquals(1, Run.of("check", layup(), "--z-error", "0.15", "--strict").code());
  }

  @Test
  void check_badInput_exit2() throws IOException {
    Path layup = layup();
    for (String[] change :
        new String[][] {
          {"thickness: 0.4", "thickness: -0.4"},
          {"tolerance: 0.08", "tolerance: 0.8"},
          {"flatness", "measured_bottoms: {1: 1.2, 2: 1.1}\nflatness"},
          {"flatness", "measured_bottoms: {2: 1.2}\nmeasured_thickness: 1.15\nflatness"},
          {"flatness", "measured_thickness: 3.0\nflatness"}
        }) {
      Files.writeString(layup, LAYUP.replace(change[0], change[1]));
      Run run = Run.of("check", layup, "--svg", folder.resolve("no.svg"));
      assertEquals(2, run.code(), change[1]);
      assertEquals("", run.out());
      assertEquals(1, files(), change[1]);
    }
  }

  @Test
  void calibrate_keepsComments_namesOutliers_andTheNewLayupChecks() throws IOException {
    Path csv =
        write(
            "r.csv",
            "ply,edge,depth\n"
                + "meadow,,0.62\n"
                + "meadow,,0.60\n"
                + "1,,0.61\n"
                + "1,,0.9\n"
                + "wood,top,0.66\n"
                + "wood,top,0.67\n"
                + "wood,,1.07\n"
                + "2,,1.06\n"
                + "2,,1.05\n");
    Path target = folder.resolve("new.yaml");
    Run run = Run.of("calibrate", layup(), csv, "-o", target);
    assertEquals(0, run.code(), run.err());
    assertTrue(run.err().contains("row 5") && run.err().contains("outlier"), run.err());
    String text = Files.readString(target);
    assertTrue(
        text.startsWith("# My panel.")
            && text.contains("# straight edge")
            && text.contains("# thin"),
        text);
    assertEquals(1.06, LayupReader.read(target).measured().bottomsMm().get(2), 0.001);
    assertEquals(0, Run.of("check", target).code());
    assertEquals(1, Run.of("calibrate", layup(), csv, "-o", target).code(), "not without --force");
    assertEquals(0, Run.of("calibrate", layup(), csv, "-o", target, "--force", "-q").code());
    Run inPlace = Run.of("calibrate", layup(), csv, "-o", layup(), "--force");
    assertEquals(1, inPlace.code());
    assertEquals(LAYUP, Files.readString(layup()));
  }

  @Test
  void calibrate_badRow_exit2_rowNamed_nothingWritten() throws IOException {
    Path csv = write("r.csv", "ply,depth\n1,0.62\n\n# note\n2,abc\n");
    Run run = Run.of("calibrate", layup(), csv, "-o", folder.resolve("new.yaml"));
    assertEquals(2, run.code());
    assertTrue(run.err().contains("row 5"), run.err());
    assertEquals(2, files());
    assertEquals(
        2,
        Run.of("calibrate", layup(), folder.resolve("none.csv"), "-o", folder.resolve("new.yaml"))
            .code());
  }

  @Test
  void calibrate_layupThatCantBeEditedByLine_isWrittenAnew() throws IOException {
    Path flow =
        write(
            "flow.yaml",
            "{name: f, glue_line: 0.05, plies: [{name: a, colour: \"#112233\", thickness: 0.6},"
                + " {name: b, colour: \"#112233\", thickness: 0.6}]}\n");
    Path target = folder.resolve("new.yaml");
    Run run =
        Run.of(
            "calibrate", flow, write("r.csv", "ply,depth,tolerance\na,0.61,0.03\n"), "-o", target);
    assertEquals(0, run.code(), run.err());
    assertEquals(0.61, LayupReader.read(target).measured().bottomsMm().get(1), 1e-9);
    assertEquals(0.03, LayupReader.read(target).measured().bottomsToleranceMm(), 1e-9);
  }

  @Test
  void glueup_textJsonPage() throws Exception {
    Path svg = folder.resolve("sheet.svg");
    JsonNode node =
        json(
            Run.of(
                "glueup",
                layup(),
                "--size",
                "300x200",
                "--trim",
                0,
                "--pressure",
                1,
                "--spread",
                150,
                "--json",
                "--svg",
                svg));
    assertEquals(60, node.path("clamping").path("force_kn").asDouble(), 1e-9);
    assertEquals(18, node.path("glue").path("total_g").asDouble(), 1e-9);
    assertEquals(3, node.path("clamping").path("count").asInt());
    assertTrue(node.path("balanced").asBoolean());
    var page =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(svg.toFile())
            .getDocumentElement();
    assertEquals("190mm", page.getAttribute("width"));
    assertEquals("255mm", page.getAttribute("height"));
    Run text = Run.of("glueup", layup(), "--size", "300x200");
    assertTrue(text.out().contains("kN") && text.out().contains("odd, crossed"), text.out());
    for (String size : new String[] {"300", "0x20", "300x", "axb", "1e9x3"}) {
      assertEquals(2, Run.of("glueup", layup(), "--size", size).code(), size);
    }
    assertEquals(2, Run.of("glueup", layup(), "--size", "300x200", "--glue", "tar").code());
    assertEquals(2, Run.of("glueup", layup(), "--size", "300x200", "--pressure", "-1").code());
  }

  @Test
  void coupon_isCutInSimulation_andItsReadingsFileFeedsCalibrate() throws Exception {
    Path out = folder.resolve("coupon");
    JsonNode node =
        json(Run.of("coupon", layup(), "-o", out, "--size", "70x50", "--step", "0.08", "--json"));
    // Thinnest ply 0.4: a fifth is 0.08 mm, so that this is just allowed.
    assertEquals(0.08, node.path("step_mm").asDouble(), 1e-12);
    assertEquals(0, node.path("verification").path("gouged_mm2").asDouble());
    assertEquals(0, node.path("verification").path("uncut_mm2").asDouble());
    assertTrue(node.path("verification").path("matched_share").asDouble() > 0.97);
    String program = Files.readString(out.resolve("coupon.nc"));
    assertTrue(program.contains("(caution") && program.endsWith("M5\nM30\n"), "head and end");
    DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(out.resolve("gauge.svg").toFile());
    Path csv = out.resolve("readings.csv");
    Files.writeString(
        csv,
        Files.readString(csv)
            .replace("meadow,,", "meadow,0.56,0.72")
            .replace("wood,,", "wood,1.04,1.12"));
    Path calibrated = folder.resolve("new.yaml");
    assertEquals(0, Run.of("calibrate", layup(), csv, "-o", calibrated).code());
    assertEquals(0.615, LayupReader.read(calibrated).measured().bottomsMm().get(1), 1e-9);
    assertEquals(
        1, Run.of("coupon", layup(), "-o", out, "--size", "70x50").code(), "not without --force");
    assertEquals(1, Run.of("coupon", layup(), "-o", folder.resolve("b"), "--size", "20x20").code());
    assertEquals(
        1,
        Run.of("coupon", layup(), "-o", folder.resolve("b"), "--size", "500x50").code(),
        "travel");
    assertEquals(1, Run.of("coupon", layup(), "-o", folder.resolve("b"), "--step", "0.09").code());
    assertEquals(2, Run.of("coupon", layup(), "-o", folder.resolve("b"), "--tool", "saw").code());
    assertFalse(Files.exists(folder.resolve("b")));
  }

  private static final String SHELF =
      """
      name: From the shelf
      plies: 5
      glue_line: 0.04
      glue_line_tolerance: 0.01
      flatness: 0.08
      veneers:
        - {name: chalk, colour: "#ece3cc", thickness: 0.9, tolerance: 0.04, wood: poplar, count: 2}
        - {name: meadow, colour: "#9cc45f", thickness: 0.6, tolerance: 0.04, wood: dyed poplar, count: 1}
        - {name: wood, colour: "#2f6b45", thickness: 0.6, tolerance: 0.04, wood: dyed poplar, count: 1}
        - {name: deep blue, colour: "#1f4e79", thickness: 0.9, tolerance: 0.04, wood: dyed poplar, count: 2}
      zones: {river: deep blue}
      """;

  private static final String HILL =
      "ncols 6\nnrows 4\nxllcorner 0\nyllcorner 0\ncellsize 10\nNODATA_value -9999\n"
          + "1 2 3 4 5 6\n2 3 4 6 8 9\n1 3 5 9 12 15\n1 2 4 8 13 20\n";

  @Test
  void suggest_balancedReliable_andTheLayupChecks() throws IOException {
    Path terrain = write("hill.asc", HILL);
    Path shelf = write("shelf.yaml", SHELF);
    Path best = folder.resolve("best.yaml");
    JsonNode node =
        json(Run.of("suggest", terrain, "--veneers", shelf, "--json", "--in-order", "-o", best));
    JsonNode first = node.path("proposals").path(0);
    assertTrue(node.path("proven").asBoolean());
    assertEquals(0, first.path("unbalanced_pairs").asInt());
    assertTrue(first.path("worst_ratio").asDouble() >= 1);
    JsonNode layup = first.path("layup");
    assertEquals("chalk", layup.path(0).path("name").asText());
    assertEquals("river", layup.path(3).path("zone").asText());
    assertEquals("floor", layup.path(4).path("role").asText());
    assertEquals(0, Run.of("check", best, "--strict").code());
    assertTrue(
        json(Run.of("glueup", best, "--size", "100x80", "--json")).path("balanced").asBoolean());
    Run text = Run.of("suggest", terrain, "--veneers", shelf, "--zone", "tarn=wood");
    assertTrue(
        text.out().contains("tarn: wood")
            && text.out().contains("river: deep blue")
            && text.out().contains("Reckoned with glue lines of "),
        text.out() + text.err());
  }

  @Test
  void suggest_whatCantBe_isSaidWithWhy() throws IOException {
    Path terrain = write("hill.asc", HILL);
    Path shelf = write("shelf.yaml", SHELF);
    Run even = Run.of("suggest", terrain, "--veneers", shelf, "--plies", 4);
    assertEquals(1, even.code());
    assertTrue(even.err().contains("3 or 5"), even.err());
    Run few = Run.of("suggest", terrain, "--veneers", shelf, "--plies", 7);
    assertEquals(1, few.code());
    assertTrue(few.err().contains("6 are on the shelf"), few.err());
    Run thin = Run.of("suggest", terrain, "--veneers", shelf, "--clearance", "0.4");
    assertEquals(1, thin.code());
    assertTrue(thin.err().contains("0.300 mm of clearance where 0.400 is needed"), thin.err());
    Run floor = Run.of("suggest", terrain, "--veneers", shelf, "--minimum-floor", "3");
    assertEquals(1, floor.code());
    assertTrue(floor.err().contains("minimum_floor"), floor.err());
    assertEquals(2, Run.of("suggest", terrain, "--veneers", shelf, "--zone", "river=blue").code());
    Path bad = write("bad.yaml", SHELF.replace("count: 1", "count: -1"));
    assertEquals(
        2, Run.of("suggest", terrain, "--veneers", bad, "-o", folder.resolve("no.yaml")).code());
    assertFalse(Files.exists(folder.resolve("no.yaml")));
  }

  @Test
  void probe_sheetsFilesAndProgram_andALogReadBack() throws Exception {
    Path job = Path.of("samples/tarn-hollow/job.yaml");
    Path out = folder.resolve("probe");
    Run run = Run.of("probe", job, "-o", out, "--places", "3x4", "--program");
    assertEquals(0, run.code(), run.err());
    assertTrue(run.out().startsWith("12 places to touch (3 x 4)"), run.out());
    assertTrue(Files.readString(out.resolve("probe.html")).contains("slip a sheet of paper"));
    assertTrue(Files.readString(out.resolve("edges.csv")).contains("\nply,depth,x,y\n"));
    assertTrue(Files.readString(out.resolve("probe.nc")).contains("G38.2 "));
    assertEquals(13 + 2, Files.readAllLines(out.resolve("top.csv")).size());
    Path log = write("log.txt", "hello\n10 20 0.1\n200,20,0.2\nX10 Y200 Z-0.1\n");
    Path top = folder.resolve("top.csv");
    Run read = Run.of("probe", "--read", log, "-o", top);
    assertEquals(0, read.code(), read.err());
    assertEquals("3 places, from lines 2-4.\nNot taken: lines 1.\n", read.out());
    assertEquals("x,y,z\n10,20,0.1\n200,20,0.2\n10,200,-0.1\n", Files.readString(top));
    assertEquals(1, Run.of("probe", "--read", log, "-o", top).code(), "not without --force");
    assertEquals(2, Run.of("probe", "-o", top, "--force").code());
    assertEquals(2, Run.of("probe", job, "-o", out, "--force", "--places", "1x4").code());
    assertEquals(
        2,
        Run.of("probe", "--read", write("no.txt", "nothing\n"), "-o", folder.resolve("x.csv"))
            .code());
  }

  /** With one place measured a corner far from it is less sure; the advice names an edge there. */
  @Test
  void check_atAPlace_andWhatToMeasureNext() throws Exception {
    Path placed =
        write(
            "placed.yaml",
            LAYUP.replace(
                "flatness",
                "press_taper: 0.08\n"
                    + "measured_places: [{at: [0, 120], bottoms: {2: 1.05}, tolerance: 0.02}]\n"
                    + "flatness"));
    JsonNode near = json(Run.of("check", placed, "--at", "5,120", "--json"));
    JsonNode far = json(Run.of("check", placed, "--at", "235,20", "--json"));
    int last = far.path("plies").size() - 1;
    assertEquals(235, far.path("at").get(0).asDouble());
    assertTrue(
        far.path("plies").get(last).path("needed_mm").asDouble()
            > near.path("plies").get(last).path("needed_mm").asDouble() + 0.02);
    String where = far.path("measure_next").path("where").asText();
    assertTrue(where.contains("right"), where);
    Run text = Run.of("check", placed, "--at", "235,20", "--panel", "240x240");
    assertTrue(text.out().contains("measure the bottom of ply"), text.out());
    assertEquals(2, Run.of("check", placed, "--at", "235").code());
    assertEquals(2, Run.of("check", placed, "--at", "999,2").code());
  }

  @Test
  void coupon_atPlacesInTheWaste_isCutThere_andItsReadingsSayWhere() throws Exception {
    Path out = folder.resolve("places");
    JsonNode node =
        json(
            Run.of(
                "coupon",
                layup(),
                "-o",
                out,
                "--size",
                "60x40",
                "--step",
                "0.08",
                "--place",
                "-20,120",
                "--place",
                "260,40",
                "--set",
                "machine.travel=[400, 400, 80]",
                "--json"));
    assertEquals(0, node.path("verification").path("gouged_mm2").asDouble());
    assertEquals(0, node.path("verification").path("uncut_mm2").asDouble());
    String csv = Files.readString(out.resolve("readings.csv"));
    assertTrue(
        csv.contains("\nply,from,to,x,y\nmeadow,,,-20,120\n") && csv.contains(",,,260,40\n"), csv);
    assertEquals(2, Run.of("coupon", layup(), "-o", out, "--place", "400,1").code());
    Path filled = write("filled.csv", csv.replace("meadow,,,-20,120", "meadow,0.56,0.64,-20,120"));
    Path target = folder.resolve("placed.yaml");
    Run run = Run.of("calibrate", layup(), filled, "-o", target);
    assertEquals(0, run.code(), run.err());
    assertEquals(-20, LayupReader.read(target).measured().places().get(0).at().xMm());
    assertTrue(run.out().contains("is now known at (0, 0) to +-"), run.out());
  }
}
