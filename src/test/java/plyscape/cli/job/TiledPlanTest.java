package plyscape.cli.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.cli.Run;
import plyscape.cli.SmallJob;
import plyscape.terrain.AscText;

/** {@code panel.tiles}: one landscape over several panels, from the command line. */
class TiledPlanTest {

  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir Path folder;
  private SmallJob files;

  /** A cone on a ridge, twice as wide as high. */
  @BeforeEach
  void makeFiles() {
    files = new SmallJob(folder);
    files.write(
        "wide.asc",
        AscText.of(
            24,
            12,
            (column, row) -> 100 - 4 * Math.hypot(row - 5.5, 0.7 * (column - 9)) + 0.5 * row));
  }

  private Path job(String tiles) {
    return job(tiles, "");
  }

  private Path job(String tiles, String more) {
    return files.write(
        "wide.yaml",
        """
        layup: layup.yaml
        terrain: {file: wide.asc, plies: [high, low], smoothing: 0, crs: "EPSG:32632"}
        """
            + "panel: {width: 30, height: 33, border: 3"
            + tiles
            + "}\n"
            + more);
  }

  @Test
  void twoPanels_areTwoPlansThatVerify_withAnOverview() throws IOException {
    Path out = folder.resolve("out");
    Run run = Run.of("plan", job(", tiles: [2, 1]"), "-o", out);
    assertEquals(0, run.code(), run.err());
    SortedMap<String, String> written = SmallJob.contents(out);
    for (String tile : new String[] {"tile-1-1", "tile-2-1"}) {
      for (String name :
          new String[] {
            "plan.json",
            "report.html",
            "setup.html",
            "preview.png",
            "section.png",
            "layers/02-low.svg"
          }) {
        assertTrue(
            written.containsKey(tile + "/" + name), tile + "/" + name + " of " + written.keySet());
      }
      Run verify = Run.of("verify", out.resolve(tile));
      assertEquals(0, verify.code(), verify.out() + verify.err());
    }
    assertNotNull(
        ImageIO.read(new ByteArrayInputStream(Files.readAllBytes(out.resolve("overview.png")))));
    for (String[] command :
        new String[][] {
          {"verify", out.toString()},
          {"resume", out.toString(), "--from", "9", "-o", out.resolveSibling("9.nc").toString()}
        }) {
      Run whole = Run.of((Object[]) command);
      assertEquals(2, whole.code());
      assertTrue(
          whole.err().contains("a landscape over 2 panels")
              && whole.err().contains(out.resolve("tile-1-1") + "; there are tile-1-1, tile-2-1"),
          whole.err());
    }
    Matcher links = Pattern.compile("(?:src|href)=\"([^\"]*)\"").matcher(written.get("index.html"));
    int pages = 0;
    while (links.find()) {
      if (!links.group(1).startsWith("data:image/png;base64,")) {
        assertTrue(Files.exists(out.resolve(links.group(1))), links.group(1));
        pages++;
      }
    }
    assertEquals(6, pages, "picture, report and set-up sheet of each");
    JsonNode left = JSON.readTree(written.get("tile-1-1/plan.json"));
    JsonNode right = JSON.readTree(written.get("tile-2-1/plan.json"));
    // 54 x 27 mm of landscape, and the border only around the whole.
    assertEquals("[3.0,3.0,30.0,30.0]", left.at("/panel/carved").toString());
    assertEquals("[0.0,3.0,27.0,30.0]", right.at("/panel/carved").toString());
    assertEquals(30, right.at("/panel/width_mm").doubleValue());
    for (String common :
        new String[] {
          "/terrain/zmin_m",
          "/terrain/zmax_m",
          "/plies/0/breaks_m",
          "/plies/1/breaks_m",
          "/plies/1/target_mm"
        }) {
      assertEquals(left.at(common), right.at(common), common);
    }
    JsonNode tiles = JSON.readTree(written.get("tiles.json"));
    assertEquals("plyscape-tiles-1", tiles.at("/schema").asText());
    assertEquals(2, tiles.at("/tiles").size());
    assertEquals(30, tiles.at("/tiles/1/left_mm").doubleValue());
    assertEquals(
        left.at("/time/total_s").doubleValue() + right.at("/time/total_s").doubleValue(),
        tiles.at("/total_s").doubleValue(),
        1e-9);
    double area =
        left.at("/plies/1/area_mm2").doubleValue() + right.at("/plies/1/area_mm2").doubleValue();
    assertTrue(
        run.out().contains(String.format(Locale.ROOT, "%.1f", area)), area + " in\n" + run.out());
  }

  /** The same landscape on one panel of that size has the same plies and areas. */
  @Test
  void twoPanels_carryWhatOneLargePanelWould() throws IOException {
    Run split = Run.of("plan", job(", tiles: [2, 1]"), "-o", folder.resolve("a"), "--json", "-q");
    assertEquals(0, split.code(), split.err());
    Run large = Run.of("preview", job(""), "--width", "60", "--json", "-q");
    assertEquals(0, large.code(), large.err());
    TreeMap<String, Double> areas = new TreeMap<>();
    for (JsonNode tile : JSON.readTree(split.out()).get("tiles")) {
      for (JsonNode ply : tile.at("/plan/plies")) {
        areas.merge(ply.get("name").asText(), ply.get("area_mm2").doubleValue(), Double::sum);
      }
    }
    for (JsonNode ply : JSON.readTree(large.out()).get("plies")) {
      assertEquals(ply.get("area_mm2").doubleValue(), areas.get(ply.get("name").asText()), 0.01);
    }
  }

  @Test
  void oneTile_isThePlainPlan_butForTheDigestOfItsJobFile() throws IOException {
    assertEquals(0, Run.of("plan", job(""), "-o", folder.resolve("plain")).code());
    assertEquals(0, Run.of("plan", job(", tiles: [1, 1]"), "-o", folder.resolve("one")).code());
    assertEquals(withoutDigests("plain"), withoutDigests("one"));
  }

  /** The two job files differ, and so do their digests. */
  private SortedMap<String, String> withoutDigests(String name) throws IOException {
    SortedMap<String, String> contents = SmallJob.contents(folder.resolve(name));
    contents.replaceAll((file, text) -> text.replaceAll("\"sha256\" : \"[0-9a-f]{64}\"", ""));
    return contents;
  }

  @Test
  void force_replacesTilesOnly_andPreviewShowsTheWhole() throws IOException {
    Path out = folder.resolve("out");
    Path job = job(", tiles: [2, 1]");
    assertEquals(0, Run.of("plan", job, "-o", out).code());
    assertEquals(1, Run.of("plan", job, "-o", out).code());
    SortedMap<String, String> first = SmallJob.contents(out);
    // One panel after several and back are both outputs of plan.
    assertEquals(0, Run.of("plan", job(""), "-o", out, "--force").code());
    assertTrue(Files.exists(out.resolve("plan.json")) && !Files.exists(out.resolve("tiles.json")));
    assertEquals(0, Run.of("plan", job(", tiles: [2, 1]"), "-o", out, "--force").code());
    assertEquals(first, SmallJob.contents(out));
    files.write("out/tile-1-1/mine.txt", "kept");
    Run kept = Run.of("plan", job, "-o", out, "--force");
    assertEquals(1, kept.code());
    assertTrue(kept.err().contains("tile-1-1/mine.txt"), kept.err());
    Path picture = folder.resolve("picture");
    Run preview = Run.of("preview", job, "-o", picture);
    assertEquals(0, preview.code(), preview.err());
    assertEquals(java.util.Set.of("preview.png"), SmallJob.contents(picture).keySet());
  }

  /**
   * The seam lies at 120 m of ground: 3 m of the plot, 0.68 mm, are left of it, and 40 m, 9 mm,
   * right of it.
   */
  @Test
  void stripThatASeamLeaves_isTold_andTheProofHolds() throws IOException {
    files.write(
        "plot.geojson",
        """
        {"type": "FeatureCollection", "crs": {"type": "name", "properties": {"name": "urn:ogc:def:crs:EPSG::32632"}},
         "features": [{"type": "Feature", "properties": {}, "geometry": {"type": "Polygon",
           "coordinates": [[[117, 40], [160, 40], [160, 80], [117, 80], [117, 40]]]}}]}
        """);
    Path job = job(", tiles: [2, 1]", "zones: [{name: plot, file: plot.geojson, ply: low}]\n");
    Run run = Run.of("plan", job, "-o", folder.resolve("out"));
    assertEquals(0, run.code(), run.err());
    assertTrue(
        run.err().contains("warning seam-sliver: ") && run.err().contains("tile-1-1 X29.66"),
        run.err());
    JsonNode left = JSON.readTree(Files.readString(folder.resolve("out/tile-1-1/plan.json")));
    JsonNode right = JSON.readTree(Files.readString(folder.resolve("out/tile-2-1/plan.json")));
    assertTrue(left.at("/warnings").toString().contains("seam-sliver"));
    assertFalse(right.at("/warnings").toString().contains("seam-sliver"));
    // 40 m of it along the seam are 9 mm.
    assertEquals(9 * 0.675, left.at("/verification/unreachable_mm2").doubleValue(), 1.5);
    assertEquals(9 * 0.675, left.at("/zones/0/area_mm2").doubleValue(), 0.05);
    assertEquals(9 * 9, right.at("/zones/0/area_mm2").doubleValue(), 0.05);
    assertEquals(0, Run.of("verify", folder.resolve("out/tile-1-1")).code());
  }

  @Test
  void panelsThatStayBare_andBadCounts_areFaults() {
    Run bare = Run.of("plan", job(", tiles: [2, 5]"), "-o", folder.resolve("out"));
    assertEquals(1, bare.code(), bare.err());
    assertTrue(bare.err().contains("tile-1-1"), bare.err());
    assertFalse(Files.exists(folder.resolve("out")));
    for (String bad : new String[] {"[0, 1]", "[2]", "[1.5, 1]", "[21, 1]", "3"}) {
      Run run = Run.of("plan", job(", tiles: " + bad), "-o", folder.resolve("out"));
      assertEquals(2, run.code(), bad + ": " + run.err());
    }
    Run odd =
        Run.of("plan", job(", tiles: [2, 1]"), "-o", folder.resolve("out"), "--width", "30.0004");
    assertEquals(2, odd.code(), odd.err());
  }
}
