package plyscape.cli.recheck;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.cli.Run;
import plyscape.cli.SmallJob;
import plyscape.gcode.GcodeParser;
import plyscape.gcode.Program;
import plyscape.machine.Move;
import plyscape.recheck.KnownTools;
import plyscape.recheck.WrittenPlan;
import plyscape.recheck.WrittenPlanReader;

/** A small job on a panel whose probed top is a saddle, planned and verified from its files. */
class BentVerifyTest {

  @TempDir static Path folder;

  private static double saddle(double x, double y) {
    return 0.2 * ((x - 15) * (x - 15) - (y - 15) * (y - 15)) / 225;
  }

  private static Path plan(String name, DoubleBinaryOperator top, String... places)
      throws Exception {
    StringBuilder csv = new StringBuilder("x,y,z\n");
    for (String place : places) {
      double x = Double.parseDouble(place.split(" ")[0]);
      double y = Double.parseDouble(place.split(" ")[1]);
      double z = top.applyAsDouble(x, y);
      csv.append(String.format(Locale.ROOT, "%s,%s,%.3f%n", x, y, z));
    }
    Files.writeString(folder.resolve(name + ".csv"), csv);
    Path job =
        new SmallJob(folder)
            .job(
                name + ".yaml",
                "minimum_floor: 0.3\noutline: {tabs: 2, tab_width: 3, tab_height: 0.5}\n");
    String text = Files.readString(job);
    assertTrue(text.contains("panel: {"), text);
    Files.writeString(job, text.replace("panel: {", "panel: {top_map: {file: " + name + ".csv}, "));
    Path out = folder.resolve(name);
    Run run = Run.of("plan", job, "-o", out, "-q");
    assertEquals(0, run.code(), run.err());
    return out;
  }

  private static JsonNode verify(int code, Object... args) throws Exception {
    Run run = Run.of(args);
    assertEquals(code, run.code(), run.out() + run.err());
    return new ObjectMapper().readTree(run.out());
  }

  @Test
  void grid_passesAsItLies_andFailsFlat() throws Exception {
    holds(
        plan(
            "grid",
            BentVerifyTest::saddle,
            "2 2",
            "15 2",
            "28 2",
            "2 15",
            "15 15",
            "28 15",
            "2 28",
            "15 28",
            "28 28"));
  }

  @Test
  void scattered_passesAsItLies_andFailsFlat() throws Exception {
    holds(
        plan(
            "scatter",
            BentVerifyTest::saddle,
            "1 3",
            "14 1",
            "29 2",
            "3 17",
            "16 13",
            "27 15",
            "2 28",
            "13 29",
            "29 27"));
  }

  /** Nominal Z0 is deep in the wood at the right edge, and in the air at the left one. */
  @Test
  void resume_keepsOffTheFaceAsItLies() throws Exception {
    DoubleBinaryOperator slope = (x, y) -> 0.06 * x - 0.6;
    double flatness = 0.02;
    Path out = plan("slope", slope, "0 0", "30 0", "0 30", "30 30", "15 15");
    WrittenPlan written =
        WrittenPlanReader.read(out, List.of(), new KnownTools(null, List.of(), List.of()));
    assertEquals(flatness, written.plan().flatnessMm(), 1e-9);
    List<Program.Block> blocks = written.programs().get(0).program().blocks();
    Path rest = folder.resolve("rest.nc");
    int ownWay = 0;
    for (int k = 5; k < blocks.size() - 1; k += blocks.size() / 25) {
      String from = written.programs().get(0).file() + ":" + blocks.get(k).line();
      // Refuses whatever comes nearer to the face than its flatness, or cuts another panel.
      Run run = Run.of("resume", out, "--from", from, "-o", rest, "--force");
      assertEquals(0, run.code(), from + ": " + run.err());
      ownWay += run.out().contains("own way down") ? 1 : 0;
      Program program =
          GcodeParser.parse(
              "rest.nc",
              Files.readString(rest),
              written.machine(),
              30,
              30,
              written.plan().thicknessMm());
      Move before = Move.rapid(program.startX(), program.startY(), program.startDepth());
      for (Program.Block block : program.blocks()) {
        Move move = block.move();
        double over = -move.depth() - slope.applyAsDouble(move.x(), move.y());
        boolean down = move.kind() == Move.Kind.RAPID && move.depth() > before.depth();
        assertTrue(!down || over > flatness, from + ": rapid " + over + " over the face");
        before = move;
      }
    }
    assertTrue(ownWay < 25, "no restart came down a ramp");
  }

  /** Two sculpted panels, one bent along a grid and one as a few places tell. */
  @Test
  void sculptedTiles_passAsEachLies_andFailFlat() throws Exception {
    SmallJob files = new SmallJob(folder);
    files.write(
        "top-tile-1-1.csv", "x,y,z\n1,1,0.2\n15,1,-0.2\n1,15,0\n15,15,-0.1\n1,29,0.3\n15,29,0\n");
    files.write("top-tile-2-1.csv", "x,y,z\n0,2,-0.3\n16,1,0\n7,14,0.2\n2,28,-0.1\n15,29,0.3\n");
    Path job =
        files.job(
            "tiles.yaml",
            """
            surface: sculpted
            cusp: 0.1
            minimum_floor: 0.3
            tools:
              - {name: end mill, diameter: 3}
              - {name: ball, shape: ball, diameter: 3, stepdown: 0.4, stepover: 0.3}
            """);
    String text = Files.readString(job);
    Files.writeString(
        job,
        text.replace(
            "{width: 30,", "{tiles: [2, 1], top_map: {file: 'top-{tile}.csv'}, width: 16,"));
    Path out = folder.resolve("tiles");
    Run run = Run.of("plan", job, "-o", out, "-q");
    assertEquals(0, run.code(), run.err());
    holds(out.resolve("tile-1-1"));
    holds(out.resolve("tile-2-1"));
  }

  private static void holds(Path out) throws Exception {
    JsonNode found = verify(0, "verify", out, "--json");
    JsonNode written =
        new ObjectMapper().readTree(out.resolve("plan.json").toFile()).get("verification");
    for (String key : new String[] {"matched_share", "gouged_mm2", "uncut_mm2", "bite_max_mm"}) {
      assertEquals(written.get(key).asDouble(), found.get(key).asDouble(), 1e-9, key);
    }
    assertTrue(found.get("bite_max_share").asDouble() <= 1, found.toString());
    JsonNode flat = verify(3, "verify", out, "--json", "--flat");
    assertTrue(flat.get("matched_share").asDouble() < 0.7, flat.get("matched_share").toString());
  }
}
