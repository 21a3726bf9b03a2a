package plyscape.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.InputFault;
import plyscape.layup.Layup;
import plyscape.layup.PanelPoint;

class LayupReaderTest {

  @TempDir Path folder;
  private JobFixture files;

  @BeforeEach
  void makeFiles() {
    files = new JobFixture(folder);
  }

  @Test
  void theContractsExample_isReadAsItStands() {
    Layup layup =
        files.layup(
            """
            name: Tarn Hollow, nine plies
            glue_line: 0.04
            glue_line_tolerance: 0.01
            measured_thickness: 9.10          # optional, with measured_thickness_tolerance
            measured_bottoms: {2: 2.92}       # optional: ply number or name -> mm
            flatness: 0.08
            plies:                            # top to bottom
              - {name: meadow, colour: "#8fbf5a", thickness: 0.9, tolerance: 0.04, grain: 0, wood: dyed poplar}
              - {name: wood, colour: "#3f7d3a", thickness: 0.9, tolerance: 0.04, grain: 90, wood: dyed poplar}
            """);
    assertEquals("Tarn Hollow, nine plies", layup.name());
    assertEquals(0.04, layup.glueLine().thicknessMm());
    assertEquals(0.01, layup.glueLine().toleranceMm());
    assertEquals(9.10, layup.measured().thicknessMm());
    assertEquals(Map.of(2, 2.92), layup.measured().bottomsMm());
    assertEquals(0.08, layup.flatnessMm());
    assertEquals("#8fbf5a", layup.plies().get(0).colour());
    assertEquals(90, layup.plies().get(1).grainDeg());
    assertEquals("dyed poplar", layup.plies().get(1).wood());
  }

  @Test
  void colourWithoutQuotes_isToldAsOne() {
    String fault =
        files.layupFault("plies:\n  - {name: a, colour: #8fbf5a, thickness: 1}\n  - {name: b}\n");
    assertTrue(fault.contains("put quotes around what begins with #"), fault);
  }

  @Test
  void absentValues_areZeroOrNone() {
    Layup layup = files.layup(JobFixture.LAYUP);
    assertEquals("layup", layup.name());
    assertEquals(0, layup.glueLine().thicknessMm());
    assertEquals(0, layup.plies().get(0).toleranceMm());
    assertNull(layup.measured().thicknessMm());
    assertTrue(layup.measured().bottomsMm().isEmpty());
    assertEquals("#aabbcc", layup.plies().get(2).colour());
  }

  @Test
  void measuredBottoms_byName() {
    Layup layup = files.layup("measured_bottoms: {wood: 1.71, 4: 3.4}\n" + JobFixture.LAYUP);
    assertEquals(Map.of(2, 1.71, 4, 3.4), layup.measured().bottomsMm());
  }

  @Test
  void measuredPlaces_withTilesAndTaper() {
    Layup layup =
        files.layup(
            "measured_at: [20, 220]\npress_taper: 0.02\npress_bow: 0.01\nmeasured_places:\n"
                + "  - {at: [5, 230], bottoms: {wood: 1.71, 4: 3.4}, tolerance: 0.02}\n"
                + "  - {at: [10, 10], bottoms: {1: 0.9}, tile: tile-2-1}\n"
                + JobFixture.LAYUP);
    assertEquals(0.02, layup.measured().pressTaper());
    assertEquals(0.01, layup.measured().pressBow());
    assertEquals(new PanelPoint(20, 220), layup.measured().at());
    assertEquals(2, layup.measured().places().size());
    assertEquals(Map.of(2, 1.71, 4, 3.4), layup.measured().places().get(0).bottoms().depthsMm());
    assertEquals(1, layup.ofTile("tile-1-1").measured().places().size());
    assertEquals(2, layup.ofTile("tile-2-1").measured().places().size());
  }

  @Test
  void measuredPlaces_faults() {
    String fault =
        files.layupFault("measured_places: [{at: [5], bottoms: {1: 0.9}}]\n" + JobFixture.LAYUP);
    assertTrue(fault.contains("found a list of 1; wanted x and y on the panel in mm"), fault);
    fault = files.layupFault("measured_places: [{at: [5, 5], bottoms: {}}]\n" + JobFixture.LAYUP);
    assertTrue(fault.contains("measured_places.1.bottoms: no bottom"), fault);
    fault =
        files.layupFault(
            "measured_places: [{at: [5, 5], bottoms: {1: 0.9}, tile: a}]\n" + JobFixture.LAYUP);
    assertTrue(fault.contains("wanted a name such as tile-1-1"), fault);
  }

  @Test
  void faults_sayPlaceFoundAndWanted() {
    assertEquals(
        "layup.yaml:1:1: unknown key \"glueline\"; did you mean \"glue_line\"? known are name,"
            + " glue_line, glue_line_tolerance, measured_thickness, measured_thickness_tolerance,"
            + " measured_bottoms, measured_bottoms_tolerance, measured_at, measured_places,"
            + " press_taper, press_bow, flatness, plies",
        files.layupFault("glueline: 0.1\n" + JobFixture.LAYUP));
    assertEquals(
        "layup.yaml:2:45: plies.1.thickness: found \"0.9 mm\"; wanted a number, mm, 0.01 to 25; the"
            + " number alone, without a unit: 0.9",
        files.layupFault("plies:\n  - {name: a, colour: \"#000000\", thickness: 0.9 mm}\n"));
    assertEquals(
        "layup.yaml:2:45: plies.1.thickness: found -0.9; out of the sane range: wanted a number,"
            + " mm, 0.01 to 25",
        files.layupFault("plies:\n  - {name: a, colour: \"#000000\", thickness: -0.9}\n"));
    assertEquals(
        "layup.yaml:2:5: plies.1: the key \"thickness\" is missing; wanted a number, mm, 0.01 to"
            + " 25",
        files.layupFault("plies:\n  - {name: a, colour: \"#000000\"}\n"));
    assertEquals(
        "layup.yaml:2:23: plies.1.colour: found \"green\"; wanted a colour in quotes, such as"
            + " \"#8fbf5a\"",
        files.layupFault("plies:\n  - {name: a, colour: green, thickness: 1}\n"));
    assertEquals(
        "layup.yaml:3:12: plies.1.colour: no value; wanted a colour in quotes, such as \"#8fbf5a\";"
            + " a value that begins with # needs quotes",
        files.layupFault("plies:\n  - name: a\n    colour: #8fbf5a\n    thickness: 1\n"));
    assertEquals(
        "layup.yaml:2:56: plies.1.tolerance: a tolerance of 2.0 mm for a ply of 1.0 mm;"
            + " wanted no more than the thickness; it is plus or minus, in mm",
        files.layupFault(
            "plies:\n  - {name: a, colour: \"#000\", thickness: 1, tolerance: 2.0}\n"));
    assertEquals(
        "layup.yaml:1:20: measured_bottoms: no ply \"wod\" in the layup; did you mean \"wood\"?"
            + " known are meadow, wood, oak, deep blue",
        files.layupFault("measured_bottoms: {wod: 1.71}\n" + JobFixture.LAYUP));
    assertEquals(
        "layup.yaml:1:20: measured_bottoms: no ply \"9\" in the layup; the layup has plies 1 to 4",
        files.layupFault("measured_bottoms: {9: 1.71}\n" + JobFixture.LAYUP));
  }

  @Test
  void namesGivenTwice_areFaults() {
    String ply = "  - {name: oak, colour: \"#000\", thickness: 1}\n";
    assertEquals(
        "layup.yaml:3:12: plies.2.name: a second ply named \"oak\", the first in line 2; names must"
            + " differ",
        files.layupFault("plies:\n" + ply + ply));
    assertEquals(
        "layup.yaml:2:1: the key \"flatness\" a second time, first in line 1; keep one of them",
        files.layupFault("flatness: 0.1\nflatness: 0.2\n" + JobFixture.LAYUP));
    assertTrue(
        files
            .layupFault("measured_bottoms: {wood: 1.71, 2: 1.8}\n" + JobFixture.LAYUP)
            .contains("ply 2 a second time"));
  }

  @Test
  void numbersThatYamlReadsInOtherWays_areDecimalHere() {
    assertTrue(files.layupFault("flatness: 0x1\n" + JobFixture.LAYUP).contains("found \"0x1\""));
    assertTrue(files.layupFault("flatness: 1:30\n" + JobFixture.LAYUP).contains("found \"1:30\""));
    assertTrue(files.layupFault("flatness: .nan\n" + JobFixture.LAYUP).contains("found \".nan\""));
    assertTrue(
        files.layupFault("flatness: 1e999\n" + JobFixture.LAYUP).contains("found \"1e999\""));
    assertEquals(0.01, files.layup("flatness: 1e-2\n" + JobFixture.LAYUP).flatnessMm());
    assertEquals(1.0, files.layup("flatness: 010e-1\n" + JobFixture.LAYUP).flatnessMm());
  }

  @Test
  void filesThatArentSettings_sayWhatTheyAre() {
    assertTrue(files.layupFault("").startsWith("layup.yaml: the file holds nothing; wanted keys"));
    assertTrue(
        files.layupFault("# only a comment\n").startsWith("layup.yaml: the file holds nothing"));
    assertTrue(files.layupFault("- a\n- b\n").startsWith("layup.yaml:1:1: the file holds a list"));
    assertTrue(
        files
            .layupFault("plies:\n\t- a\n")
            .startsWith("layup.yaml:2:1: not valid YAML: found character"));
    assertTrue(files.layupFault("plies: [\n").startsWith("layup.yaml:2:1: not valid YAML"));
    files.bytes("x.yaml", "name: M\u00fchlbach".getBytes(StandardCharsets.ISO_8859_1));
    InputFault latin =
        assertThrows(InputFault.class, () -> LayupReader.read(folder.resolve("x.yaml")));
    assertEquals(
        "x.yaml:1:8: a byte 0xfc that isn't UTF-8; save the file as UTF-8", files.shown(latin));
    files.bytes("x.yaml", JobFixture.LAYUP.getBytes(StandardCharsets.UTF_16));
    InputFault wide =
        assertThrows(InputFault.class, () -> LayupReader.read(folder.resolve("x.yaml")));
    assertEquals("x.yaml: text in UTF-16; save it as UTF-8", files.shown(wide));
    InputFault none =
        assertThrows(InputFault.class, () -> LayupReader.read(folder.resolve("layop.yaml")));
    assertTrue(none.getMessage().endsWith("did you mean \"layup.yaml\"?"), none.getMessage());
    assertThrows(InputFault.class, () -> LayupReader.read(folder));
  }

  @Test
  void byteOrderMark_isSkipped() {
    assertEquals(4, files.layup("\ufeff" + JobFixture.LAYUP).plies().size());
  }

  @Test
  void hostileYaml_endsQuicklyWithAFault() {
    assertTrue(files.layupFault("[".repeat(5000)).contains("more than 40 levels"));
    StringBuilder laughs = new StringBuilder("a0: &a0 [x,x,x,x,x,x,x,x,x]\n");
    for (int i = 1; i < 12; i++) {
      String alias = "*a" + (i - 1);
      laughs.append("a").append(i).append(": &a").append(i).append(" [");
      laughs.append(String.join(",", java.util.Collections.nCopies(9, alias))).append("]\n");
    }
    assertTrue(files.layupFault(laughs + JobFixture.LAYUP).contains("aliases"));
    assertTrue(files.layupFault("a: &a [*a]\n" + JobFixture.LAYUP).startsWith("layup.yaml:1:"));
    assertTrue(
        files
            .layupFault("name: !!java.io.File [/etc]\n" + JobFixture.LAYUP)
            .contains("tag is not allowed"));
  }
}
