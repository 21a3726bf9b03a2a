package plyscape.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A small job on a panel whose probed top is a saddle, planned and verified from its files. */
class BentVerifyTest {

  @TempDir static Path folder;

  private static Path plan(String name, String... places) throws Exception {
    StringBuilder csv = new StringBuilder("x,y,z\n");
    for (String place : places) {
      double x = Double.parseDouble(place.split(" ")[0]);
      double y = Double.parseDouble(place.split(" ")[1]);
      double z = 0.2 * ((x - 15) * (x - 15) - (y - 15) * (y - 15)) / 225;
      csv.append(String.format(Locale.ROOT, "%s,%s,%.3f%n", x, y, z));
    }
    Files.writeString(folder.resolve(name + ".csv"), csv);
    Path job = new SmallJob(folder).job(name + ".yaml", "minimum_floor: 0.3\n");
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
    holds(plan("grid", "2 2", "15 2", "28 2", "2 15", "15 15", "28 15", "2 28", "15 28", "28 28"));
  }

  @Test
  void scattered_passesAsItLies_andFailsFlat() throws Exception {
    holds(
        plan("scatter", "1 3", "14 1", "29 2", "3 17", "16 13", "27 15", "2 28", "13 29", "29 27"));
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
