package plyscape.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.terrain.AscText;

/**
 * Ground without a value, and water at the lowest level, through the command that draws. The carved
 * area is 24 x 24 mm, 12 x 12 cells of 4 mm2, rising to the east.
 */
class VoidGroundTest {

  @TempDir Path folder;
  private SmallJob files;

  @BeforeEach
  void makeFiles() {
    files = new SmallJob(folder);
  }

  /** Columns from the west without a value. */
  private void ground(int without) {
    files.write(
        "terrain.asc",
        AscText.of(12, 12, (column, row) -> column < without ? -9999 : 100 + 5 * column));
  }

  private Path job(String terrain) {
    return files.write(
        "job.yaml",
        "layup: layup.yaml\nterrain: {file: terrain.asc, crs: \"EPSG:32632\""
            + (terrain.contains("smoothing") ? "" : ", smoothing: 0")
            + terrain
            + "}\n"
            + "panel: {width: 30, height: 30, border: 3}\n"
            + "minimum_area: 0.1\n"
            + "minimum_floor: 0.2\n");
  }

  private JsonNode areas(String terrain) throws IOException {
    Run run = Run.of("preview", job(terrain), "--json", "-o", folder.resolve("out"), "--force");
    assertEquals(0, run.code(), run.err());
    return new ObjectMapper().readTree(run.out()).get("plies");
  }

  private Run preview(String terrain) {
    return Run.of("preview", job(terrain), "-o", folder.resolve("out"), "--force");
  }

  @Test
  void aGapOfACell_isFilledAndCounted() {
    files.write(
        "terrain.asc",
        AscText.of(12, 12, (column, row) -> column == 4 && row == 7 ? -9999 : 100 + 5 * column));
    Run run = preview("");
    assertEquals(0, run.code(), run.err());
    assertTrue(run.err().contains("1 void cells in the crop were filled"), run.err());
    assertFalse(run.err().contains("voids-large"), run.err());
  }

  @Test
  void aQuarter_isFilledButNotWithoutAWord() {
    ground(3);
    Run run = preview("");
    assertEquals(0, run.code(), run.err());
    assertTrue(run.err().contains("25 % of the carved ground has no value"), run.err());
    assertTrue(run.err().contains("terrain.voids: leave"), run.err());
    assertFalse(preview(", voids: fill").err().contains("voids-large"));
  }

  @Test
  void moreThanHalf_isRefusedUnlessItIsMeant_insideARasterAndBesideIt() {
    ground(7);
    Run run = preview("");
    assertEquals(1, run.code());
    assertTrue(run.err().contains("58 % of the carved ground has no value"), run.err());
    ground(0);
    Run crop = preview(", crop: [-140, 0, 100, 120]");
    assertEquals(1, crop.code());
    assertTrue(crop.err().contains("terrain.voids"), crop.err());
    for (String rule : new String[] {"fill", "leave", "base"}) {
      assertEquals(0, preview(", crop: [-140, 0, 100, 120], voids: " + rule).code(), rule);
    }
    ground(7);
    for (String rule : new String[] {"fill", "leave", "base"}) {
      assertEquals(0, preview(", voids: " + rule).code(), rule);
    }
  }

  /** Six columns of twelve are void: half of 576 mm2. */
  @Test
  void voids_goToTheTopPlyOrToTheOneNamed() throws IOException {
    ground(6);
    JsonNode base = areas(", voids: base, plies: [high, low]");
    assertEquals(288, base.get(2).get("area_mm2").asDouble(), 3);
    assertEquals(288, sum(base.get(0), base.get(1)), 3);
    JsonNode left = areas(", voids: leave, plies: [low, base]");
    assertEquals(288, left.get(0).get("area_mm2").asDouble(), 3);
    Run wrong = preview(", voids: bottom");
    assertEquals(2, wrong.code());
    assertTrue(wrong.err().contains("bottom"), wrong.err());
  }

  private static double sum(JsonNode one, JsonNode other) {
    return one.get("area_mm2").asDouble() + other.get("area_mm2").asDouble();
  }

  /** Half of the ground at one level. */
  @Test
  void muchGroundAtTheLowestLevel_isHintedAt() {
    files.write("terrain.asc", AscText.of(12, 12, (column, row) -> column < 6 ? 0 : 20 * column));
    String said = preview("").err();
    assertTrue(said.contains("50 % of the ground lies at one elevation, 0.0 m"), said);
    assertTrue(said.contains("terrain.sea_level: 0.0"), said);
    assertFalse(preview(", sea_level: 0, sea_ply: base").err().contains("flat-lowest"));
  }

  /**
   * A lake of half of the ground lies on the break between the plies but for rounding: it is the
   * upper one's, smoothed or not.
   */
  @Test
  void aLakeOnABreak_isTheUpperPlys() throws IOException {
    files.write(
        "terrain.asc",
        AscText.of(12, 12, (column, row) -> column < 3 ? 0 : column < 9 ? 0.1 * 3 : 1));
    for (String smoothing : new String[] {"0", "0.4"}) {
      JsonNode plies =
          areas(", smoothing: " + smoothing + ", plies: [high, low, base], bands: [0.9, 0.3]");
      assertEquals(288, plies.get(1).get("area_mm2").asDouble(), 60, smoothing);
    }
  }

  @Test
  void aListedPlyWithoutGround_isNamed() {
    files.write("terrain.asc", AscText.of(12, 12, (column, row) -> column < 8 ? 10 : 20));
    String said = preview(", plies: [high, low, base], bands: equal-area").err();
    assertTrue(said.contains("ply-without-ground"), said);
  }

  /**
   * Tiles of 6 x 12 cells named by a pattern are the one ground; a pattern that fits nothing is
   * told.
   */
  @Test
  void tilesNamedByStars_areOneGround() throws IOException {
    ground(0);
    double whole = areas("").get(0).get("area_mm2").asDouble();
    for (int tile = 0; tile < 2; tile++) {
      int west = 6 * tile;
      files.write(
          "tiles/" + tile + ".asc",
          AscText.of(6, 12, (column, row) -> 100 + 5 * (column + west))
              .replace("xllcorner 0", "xllcorner " + 10 * west));
    }
    files.write("tiles/note.txt", "no tile");
    Path job = job("");
    String text = java.nio.file.Files.readString(job);
    files.write("job.yaml", text.replace("terrain.asc", "\"tiles/*.asc\""));
    Run run = Run.of("preview", job, "--json", "-o", folder.resolve("out"), "--force");
    assertEquals(0, run.code(), run.err());
    JsonNode plies = new ObjectMapper().readTree(run.out()).get("plies");
    assertEquals(whole, plies.get(0).get("area_mm2").asDouble(), 1e-6);
    files.write("job.yaml", text.replace("terrain.asc", "\"tiles/*.tif\""));
    Run none = Run.of("preview", job, "-o", folder.resolve("out"), "--force");
    assertEquals(2, none.code());
    assertTrue(none.err().contains("no file fits \"tiles/*.tif\""), none.err());
  }
}
