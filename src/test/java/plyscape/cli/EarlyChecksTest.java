package plyscape.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Jobs that can't be done are refused before any map is read: where the terrain's file holds no
 * raster, the refusal is about the job and not about the file. Depths by hand: plies of 1, 1 and
 * 1.2 mm, sanding 0.1, so that the low ply is cut to 1.4 and the base to 2.5.
 */
class EarlyChecksTest {

  @TempDir Path folder;
  private SmallJob files;

  @BeforeEach
  void makeFiles() {
    files = new SmallJob(folder);
  }

  private void spoilTerrain() {
    files.write("terrain.asc", "no raster at all");
  }

  private Run plan(String more, Object... options) {
    Object[] args = new Object[options.length + 4];
    args[0] = "plan";
    args[1] = files.job("job.yaml", more);
    args[2] = "-o";
    args[3] = folder.resolve("out");
    System.arraycopy(options, 0, args, 4, options.length);
    return Run.of(args);
  }

  private static void refused(Run run, String... said) {
    assertEquals(1, run.code(), run.err());
    for (String text : said) {
      assertTrue(run.err().contains(text), run.err());
    }
  }

  @Test
  void spoiledTerrain_isBadInput() {
    spoilTerrain();
    assertEquals(2, plan("").code());
  }

  @Test
  void panelBeyondTheTravel() {
    spoilTerrain();
    refused(
        plan("", "--width", 3000, "--height", 3000),
        "needs 2995.5 mm of X travel, zero point included, and machine.travel gives 300 mm");
    refused(plan("", "--width", 3000, "--height", 400), "mm of X travel");
    assertEquals(2, plan("", "--width", 290, "--height", 290).code(), "looks at the terrain");
    assertEquals(
        2, plan("", "--width", 320, "--height", 100).code(), "the terrain may be narrower");
  }

  @Test
  void travelOfZ() {
    spoilTerrain();
    refused(
        plan("machine: {travel: [300, 300, 5]}\n"),
        "needs 5.4 mm of Z travel",
        "lower safe_height");
  }

  /** The landscape of 2 x 2 panels: each by itself is within the travel, or not. */
  @Test
  void travelIsThatOfOnePanel() {
    spoilTerrain();
    String tiles = "panel.tiles=[2, 2]";
    assertEquals(2, plan("", "--width", 250, "--height", 250, "--set", tiles).code());
    refused(plan("", "--width", 450, "--height", 450, "--set", tiles), "mm of X travel");
  }

  @Test
  void flutesShorterThanTheLowestPlyOfTheGround() {
    spoilTerrain();
    String tools = "tools: [{flute_length: 1.2, stepdown: 1}]\n";
    refused(
        plan(tools),
        "ply 2 (low): it is to be cut to 1.400 mm, and the longest flutes have 1.20 mm",
        "list a flat cutter with flutes of 1.40 mm or more",
        "--accept-short-flutes");
    assertEquals(2, plan(tools, "--accept-short-flutes").code(), "then the terrain is read");
  }

  @Test
  void ballsAlone_cutNoFloors() {
    spoilTerrain();
    refused(plan("tools: [{shape: ball}]\n"), "and no cutter is flat");
  }

  @Test
  void stickoutShorterThanTheCut() {
    spoilTerrain();
    refused(
        plan("tools: [{flute_length: 12, stickout: 1.2, name: short mill}]\n"),
        "short mill: it sticks out 1.20 mm and would be run down to 1.400 mm",
        "clamp it with a stickout of 1.40 mm or more");
  }

  @Test
  void floorUnderTheLowestPlyOfTheGround() {
    spoilTerrain();
    refused(plan("", "--plies", "high,low,base"), "less than minimum_floor 1.000 mm");
  }

  /** Where the ground's lowest ply is within reach and a zone's isn't. */
  @Test
  void flutesShorterThanAZonesPly_areFoundWithTheRegions() {
    files.write(
        "zone.geojson",
        """
        {"type": "Feature", "crs": {"type": "name", "properties": {"name": "EPSG:32632"}},
         "properties": {}, "geometry":
         {"type": "Polygon", "coordinates": [[[20, 20], [90, 20], [90, 90], [20, 90], [20, 20]]]}}
        """);
    String more =
        """
        minimum_floor: 0.5
        zones: [{name: pond, file: zone.geojson, ply: base}]
        tools: [{flute_length: 2, diameter: 1.5, stepdown: 1}]
        """;
    refused(plan(more), "ply 3 (base): it is to be cut to 2.500 mm");
    assertFalse(Files.exists(folder.resolve("out")));
    Run accepted = plan(more, "--accept-short-flutes");
    assertEquals(0, accepted.code(), accepted.err());
    assertTrue(accepted.err().contains("warning short-flutes: ply 3 (base)"), accepted.err());
  }

  @Test
  void nothingWithinReach_isNoPlan() throws IOException {
    Run run =
        plan("tools: [{flute_length: 1.2, stepdown: 1}]\n", "--accept-short-flutes", "--force");
    refused(run, "nothing can be cut");
    assertFalse(Files.exists(folder.resolve("out")));
  }

  @Test
  void panelSlightlyBeyondTheTravel_isRefusedBeforeToolpaths() {
    refused(
        plan("machine: {travel: [25, 300, 80]}\ntools: [{diameter: 2}]\n", "-v"),
        "mm of X travel, zero point included, and machine.travel gives 25 mm");
  }

  @Test
  void travelTooShort_helpIsWhatTheJobDoesNotDoYet() {
    String travel = "machine: {travel: [%s], %s}\n";
    refused(plan(travel.formatted("300, 300, 5", "zero_z: top")), "leave the deepest plies out");
    refused(plan(travel.formatted("300, 300, 7", "zero_z: bottom")), "or zero_z: top");
    refused(plan(travel.formatted("25, 300, 80", "zero: lower-left")), "or zero: centre");
    refused(plan(travel.formatted("9, 300, 80", "zero: centre")), "panel or a wider border would");
  }

  @Test
  void onlyATopPlyThatIsLeft_saysThatNothingIsCut() {
    Run run = plan("", "--plies", "high");
    assertEquals(0, run.code(), run.err());
    assertTrue(run.err().contains("nothing-cut"), run.err());
    assertFalse(plan("", "--plies", "high", "--top", "mid", "--force").err().contains("nothing"));
  }
}
