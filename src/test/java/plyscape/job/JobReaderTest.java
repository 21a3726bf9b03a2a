package plyscape.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import plyscape.fault.Warning;
import plyscape.grid.Box;
import plyscape.job.TerrainSpec.BreakList;
import plyscape.job.TerrainSpec.NamedBands;
import plyscape.layup.CutAllowance;
import plyscape.layup.Method;
import plyscape.layup.Sanding;
import plyscape.layup.Top;
import plyscape.machine.CuttingData;
import plyscape.machine.Form;
import plyscape.machine.Machine;
import plyscape.machine.Motion;
import plyscape.machine.SettingUp;
import plyscape.machine.Tool;
import plyscape.machine.Travel;
import plyscape.machine.Workshop;

class JobReaderTest {

  private static final String LEAST = "layup: layup.yaml\nterrain: {file: terrain.asc}\n";

  @TempDir Path folder;
  private JobFixture files;

  @BeforeEach
  void makeFiles() {
    files = new JobFixture(folder);
  }

  /**
   * Defaults are those of src/contract.md, section 5; minimum_floor and minimum_area 1. The lowest
   * ply's middle is 0.45 mm over the bottom, less than minimum_floor.
   */
  @Test
  void leastJob_takesTheContractsDefaults() {
    checkDefaults(files.job(LEAST));
    checkDefaults(
        JobReader.of(
            folder.resolve("terrain.asc"),
            folder.resolve("layup.yaml"),
            List.of(),
            files.warnings));
    assertEquals(
        List.of("floor-plies", "tools-assumed", "floor-plies", "tools-assumed"),
        files.warnings.list().stream().map(Warning::code).toList());
  }

  @Test
  void name_headsTheOutputs_elseTheLayupsDoes() {
    String rest = "layup: layup.yaml\nterrain: {file: terrain.asc}\n";
    Job named = files.job("name: Winter valley\n" + rest);
    assertEquals("Winter valley", named.name());
    assertEquals("Winter valley", named.title());
    assertEquals("Winter valley, left", named.called(", left").title());
    Job plain = files.job(rest);
    assertEquals("job", plain.name());
    assertEquals("layup", plain.title());
    assertTrue(files.jobFault("name: [a]\n" + rest).contains("name"));
  }

  @Test
  void groundTakesAllPliesThatLeaveTheFloor() {
    Job job = files.job(LEAST + "minimum_floor: 0.5\ntools: [{diameter: 3}]\n");
    assertEquals(List.of(1, 2, 3, 4), job.terrain().plyNumbers());
    assertTrue(files.warnings.list().isEmpty());
    job = files.job(LEAST + "minimum_floor: 2\ntools: [{diameter: 3}]\n");
    assertEquals(List.of(1, 2), job.terrain().plyNumbers());
    String message = files.warnings.list().get(0).message();
    assertTrue(message.startsWith("no ground goes to oak, deep blue: too little wood"), message);
  }

  /** Nothing leaves the floor: left to the check that says so. */
  @Test
  void panelThinnerThanTheFloor_keepsAllPlies() {
    Job job = files.job(LEAST + "minimum_floor: 4\ntop: mid\n");
    assertEquals(List.of(1, 2, 3, 4), job.terrain().plyNumbers());
  }

  @Test
  void breaksForAllPlies_meanAllPlies() {
    String terrain = "layup: layup.yaml\nterrain: {file: terrain.asc, ";
    assertEquals(
        List.of(1, 2, 3, 4), files.job(terrain + "bands: [9, 8, 7]}\n").terrain().plyNumbers());
    assertEquals(List.of(1, 2, 3), files.job(terrain + "bands: [9, 8]}\n").terrain().plyNumbers());
  }

  @Test
  void jobWithoutTools_saysWhichOneItIsPlannedFor() {
    files.job(LEAST + "minimum_floor: 0.5\n");
    assertEquals(
        "the job lists no tools: planned for end mill 3, flat, with flutes of 12 mm, feed 1800"
            + " mm/min; list what is in the drawer",
        files.warnings.list().get(0).message());
  }

  private void checkDefaults(Job job) {
    assertEquals(
        new TerrainSpec(
            folder.resolve("terrain.asc"),
            null,
            "",
            List.of(1, 2, 3),
            NamedBands.SCALE,
            0.4,
            TerrainOptions.PLAIN),
        job.terrain());
    assertEquals(new Job.PanelSpec(240, 240, 6), job.panel());
    assertEquals(List.of(), job.zones());
    assertEquals(List.of(Workshop.END_MILL_3), job.tools());
    assertEquals(Workshop.ROUTER, job.machine());
    assertEquals(
        new CutAllowance(0.10, Method.RSS, 0.03, new Sanding(0.10, 0.05), Top.LEAVE, 1.0),
        job.allowance());
    assertEquals(1, job.minimumAreaMm2());
  }

  @Test
  void everyKey_isRead() {
    Job job =
        files.job(
            """
            layup: layup.yaml
            terrain:
              file: terrain.asc
              crop: [412000, 5601000, 415000, 5604000]
              crop_crs: EPSG:32632
              plies: [meadow, oak, deep blue]
              bands: [310.5, 260]
              smoothing: 0
            panel: {width: 200, height: 150, border: 5}
            zones:
              - {name: river, file: zones.geojson, where: {kind: river, level: [0, "1", true]}, ply: deep blue, ground_width: 12}
              - {file: zones.geojson, sink: 1, width: 0.5}
            tools:
              - {name: ball, shape: ball, diameter: 6, flute_length: 20, flutes: 3, rpm: 12000, feed: 900, plunge: 200, stepdown: 1, stepover: 0.2}
              - {diameter: 1.5}
            machine: {travel: [400, 500, 90], rapid: 3000, acceleration: 250, cornering: 0, safe_height: 5, z_error: 0.01, zero: centre, zero_z: bottom}
            clearance: {minimum: 0.05, method: worst}
            sanding: 0.2
            sanding_tolerance: 0
            top: mid
            minimum_floor: 0.5
            minimum_area: 2
            """);
    assertEquals(
        new TerrainSpec(
            folder.resolve("terrain.asc"),
            new Box(412000, 5601000, 415000, 5604000),
            "EPSG:32632",
            List.of(1, 3, 4),
            new BreakList(List.of(310.5, 260.0)),
            0,
            TerrainOptions.PLAIN),
        job.terrain());
    assertEquals(new Job.PanelSpec(200, 150, 5), job.panel());
    ZoneSpec river = job.zones().get(0);
    assertEquals(Map.of("kind", List.of("river"), "level", List.of(0.0, "1", true)), river.where());
    assertEquals(4, river.plyNumber());
    assertNull(river.sink());
    assertEquals(12, river.width().groundM());
    assertEquals("zones", job.zones().get(1).name());
    assertEquals(1, job.zones().get(1).sink());
    assertEquals(0.5, job.zones().get(1).width().mm());
    assertEquals(
        new Tool(
            "ball",
            new Form(Tool.Shape.BALL, 6, 20, 3, 0, 0, Tool.Spiral.UNSAID),
            new CuttingData(12_000, 900, 200, 1, 0.2)),
        job.tools().get(0));
    assertEquals("end mill 1.5", job.tools().get(1).name());
    assertEquals(
        new Machine(
            new Travel(400, 500, 90),
            new Motion(3000, 250, 0, 0.01),
            new SettingUp(Machine.Zero.CENTRE, Machine.ZeroZ.BOTTOM, 5, 60, 5),
            Workshop.ROUTER.rules()),
        job.machine());
    assertEquals(
        new CutAllowance(0.05, Method.WORST, 0.01, new Sanding(0.2, 0), Top.MID, 0.5),
        job.allowance());
    assertEquals(2, job.minimumAreaMm2());
  }

  @Test
  void tiles_areColumnsAndRowsOfPanels_oneByDefault() {
    Job job = files.job(LEAST + "panel: {width: 200, height: 150, border: 5, tiles: [3, 2]}\n");
    assertEquals(new Job.PanelSpec(200, 150, 5, 3, 2, null, 0), job.panel());
    assertEquals(new Job.PanelSpec(600, 300, 5), job.panel().whole());
  }

  @Test
  void faults_sayPlaceFoundAndWanted() {
    assertEquals(
        "job.yaml:1:1: the key \"layup\" is missing; wanted a layup file, such as layup.yaml",
        files.jobFault("terrain: {file: terrain.asc}\n"));
    assertEquals(
        "job.yaml:1:1: the key \"terrain\" is missing; wanted keys with values, at least \"file:\"",
        files.jobFault("layup: layup.yaml\n"));
    assertEquals(
        "job.yaml:3:9: panel: unknown key \"widht\"; did you mean \"width\"? known are width,"
            + " height, border, tiles, top_map, turn",
        files.jobFault(LEAST + "panel: {widht: 10}\n"));
    assertEquals(
        "job.yaml:3:17: panel.width: found \"240\" in quotes; wanted a number, mm, 5 to 5000",
        files.jobFault(LEAST + "panel: {width:  \"240\"}\n"));
    assertEquals(
        "job.yaml:3:6: top: found \"midd\"; did you mean \"mid\"? wanted one of leave, mid",
        files.jobFault(LEAST + "top: midd\n"));
    assertEquals(
        "job.yaml:2:11: terrain: unknown key \"files\"; did you mean \"file\"? known are file,"
            + " crop, crop_crs, plies, bands, smoothing",
        files
            .jobFault("layup: layup.yaml\nterrain: {files: terrain.asc}\n")
            .replaceAll("smoothing, .*", "smoothing"));
  }

  /** What beginners write for a number; 1/8 inch is 25.4 / 8 mm. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          sanding: 0,15                  | "0,15"; wanted a number, mm, 0 to 10; decimals take a point, thousands nothing: 0.15
          'panel:\n  width: 240,5'       | nothing: 240.5
          'tools:\n  - rpm: 16,000'      | nothing: 16.000 or 16000
          'panel: {width: 240,5}'        | unknown key "5"; between braces a comma ends a value
          'tools: [{stepover: 45%}]'     | as a fraction that is 0.45
          'panel: {border: 5 %}'         | the number alone, not a share
          'tools: [{diameter: 1/8}]'     | if that is an inch's, it is 3.175 mm
          'tools: [{diameter: 1/8 in}]'  | it is 3.175 mm
          'tools: [{diameter: 0.25in}]'  | that is 6.35 mm
          'panel: {width: 240 mm}'       | without a unit: 240
          'panel: {width: 24cm}'         | that is 240 mm
          'panel: {width: wide}'         | wanted a number, mm, 5 to 5000
          """)
  void numbersAsPeopleWriteThem_areToldWhatWouldDo(String keys, String says) {
    String fault = files.jobFault(LEAST + keys.replace("\\n", "\n") + "\n");
    assertTrue(fault.contains(says), fault);
  }

  @Test
  void endlessDigits_areNoSlip() {
    for (String end : new String[] {"in", "cm", "%", "/1", " mm"}) {
      String fault = files.jobFault(LEAST + "panel: {width: " + "9".repeat(400) + end + "}\n");
      assertTrue(fault.endsWith("wanted a number, mm, 5 to 5000"), fault);
    }
  }

  @Test
  void jobAndLayupMixedUp_areToldApart() {
    assertTrue(files.jobFault(JobFixture.LAYUP).contains("a layup, not a job"));
    assertTrue(files.layupFault(LEAST).contains("a job, not a layup"), files.layupFault(LEAST));
  }

  @Test
  void danglingNames_giveTheNearest() {
    assertEquals(
        "job.yaml:2:39: terrain.plies.1: no ply \"meadw\" in the layup; did you mean \"meadow\"?"
            + " known are meadow, wood, oak, deep blue",
        files.jobFault("layup: layup.yaml\nterrain: {file: terrain.asc, plies: [ meadw]}\n"));
    assertTrue(
        files
            .jobFault("layup: layup.yaml\nterrain: {file: terrian.asc}\n")
            .contains("did you mean \"terrain.asc\"?"));
    assertTrue(
        files
            .jobFault(LEAST + "zones:\n  - {file: zones.geojson, ply: blue}\n")
            .startsWith("job.yaml:4:32: zones.1.ply: no ply \"blue\" in the layup"));
  }

  @Test
  void contradictions_areFaults() {
    assertTrue(
        files
            .jobFault(LEAST + "zones:\n  - {file: zones.geojson}\n")
            .contains("neither \"ply\" nor \"sink\""));
    assertTrue(
        files
            .jobFault(LEAST + "zones:\n  - {file: zones.geojson, ply: oak, sink: 1}\n")
            .contains("both"));
    assertTrue(
        files
            .jobFault(
                LEAST + "zones:\n  - {file: zones.geojson, ply: oak, width: 1, ground_width: 1}\n")
            .contains("both \"width\" and \"ground_width\""));
    assertTrue(
        files
            .jobFault(LEAST + "panel: {width: 100, border: 50}\n")
            .startsWith("job.yaml:3:29: panel.border"));
    assertTrue(
        files
            .jobFault(LEAST + "tools: [{name: a}, {name: a}]\n")
            .contains("a second tool named \"a\""));
    assertTrue(
        files.jobFault(LEAST + "tools: [{stepdown: 20}]\n").contains("no longer than the flutes"));
    assertTrue(
        files.jobFault(LEAST + "tools: [{stepover: 45}]\n").contains("fraction of the diameter"));
    assertTrue(
        files
            .jobFault(LEAST + "tools: [{flutes: 2.5}]\n")
            .contains("wanted a whole number, 1 to 20"));
    String terrain = "layup: layup.yaml\nterrain: {file: terrain.asc, ";
    assertTrue(
        files.jobFault(terrain + "bands: [1, 2, 3]}\n").contains("wanted falling elevations"));
    assertTrue(files.jobFault(terrain + "bands: [4]}\n").contains("found 1 breaks for 3 plies"));
    assertTrue(files.jobFault(terrain + "bands: natrual}\n").contains("did you mean \"natural\"?"));
    assertTrue(files.jobFault(terrain + "crop: [1, 2, 3]}\n").contains("found a list of 3"));
    assertTrue(files.jobFault(terrain + "crop: [5, 2, 3, 9]}\n").contains("least value not below"));
    assertTrue(files.jobFault(terrain + "plies: [oak, 3]}\n").contains("a second time"));
  }

  @Test
  void pliesOutOfOrder_areSortedWithAWarning() {
    Job job = files.job("layup: layup.yaml\nterrain: {file: terrain.asc, plies: [oak, meadow]}\n");
    assertEquals(List.of(1, 3), job.terrain().plyNumbers());
    assertEquals("plies-order", files.warnings.list().get(0).code());
  }

  @Test
  void relativePaths_countFromTheJobFile_alsoWithoutAFolder() {
    Job job =
        files.job("layup: ./layup.yaml\nterrain: {file: " + folder.resolve("terrain.asc") + "}\n");
    assertEquals(folder.resolve("terrain.asc"), job.terrain().file());
    assertEquals("job", job.name());
  }

  @Test
  void surface_isFlatUnlessSaid_andItsCuspHasARange() {
    String base = "layup: layup.yaml\nterrain: {file: terrain.asc}\n";
    assertEquals(SurfaceSpec.FLAT, files.job(base).surface());
    SurfaceSpec sculpted = files.job(base + "surface: sculpted\ncusp: 0.05\n").surface();
    assertEquals(new SurfaceSpec(SurfaceSpec.Kind.SCULPTED, 0.05), sculpted);
    assertEquals(0.02, files.job(base + "surface: sculpted\n").surface().cuspMm());
    String typo = files.jobFault(base + "surface: sculptd\n");
    assertTrue(typo.contains("did you mean \"sculpted\""), typo);
    String coarse = files.jobFault(base + "cusp: 1\n");
    assertTrue(coarse.contains("0.002 to 0.2"), coarse);
  }

  @Test
  void topMap_oneForEachTile() {
    String tiled = LEAST + "panel: {tiles: [2, 1], top_map: {file: \"top-%s.csv\"}}\n";
    String one = files.jobFault(tiled.formatted("x"));
    assertTrue(one.contains("one top map for 2 panels"), one);
    String missing = files.jobFault(tiled.formatted("{tile}"));
    assertTrue(missing.contains("top-tile-1-1.csv"), missing);
  }

  @Test
  void encodings_haveNeutralWords_andTheirOldNames() {
    String job = "layup: layup.yaml\nterrain: {file: terrain.asc, encoding: %s}\n";
    for (String word : new String[] {"rgb-256", "terrarium"}) {
      assertEquals(
          TerrainOptions.Encoding.RGB_256,
          files.job(job.formatted(word)).terrain().options().raster().encoding());
    }
    for (String word : new String[] {"rgb-tenth", "terrain-rgb"}) {
      assertEquals(
          TerrainOptions.Encoding.RGB_TENTH,
          files.job(job.formatted(word)).terrain().options().raster().encoding());
    }
    String fault = files.jobFault(job.formatted("rgb"));
    assertTrue(fault.contains("auto, grey, rgb-256, rgb-tenth"), fault);
  }

  @Test
  void measuredPlaceOutsideThePanel_isAFault() {
    String layup = "measured_places: [{at: [20, 400], bottoms: {1: 0.9}}]\n" + JobFixture.LAYUP;
    files.file("layup.yaml", layup);
    String fault = files.jobFault(LEAST + "panel: {width: 400, height: 240}\n");
    assertTrue(fault.contains("outside the panel of 400 x 240 mm; are x and y swapped?"), fault);
  }
}
