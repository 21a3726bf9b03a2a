package plyscape.shop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.Place;
import plyscape.job.LayupReader;
import plyscape.layup.Bottoms;
import plyscape.layup.GlueLine;
import plyscape.layup.Layup;
import plyscape.layup.Measured;
import plyscape.layup.MeasuredPlace;
import plyscape.layup.PanelPoint;
import plyscape.layup.Ply;

class LayupRewriteTest {

  private static final String PLIES =
      "plies:\n"
          + "  - {name: a, colour: \"#112233\", thickness: 0.9}  # oak\n"
          + "  - {name: b, colour: \"#112233\", thickness: 0.9}\n";
  private static final SortedMap<Integer, Double> BOTTOMS =
      new TreeMap<>(Map.of(1, 0.87654, 2, 1.8));

  @TempDir private Path dir;

  @Test
  void noKeyYet_putBeforePlies_aboveTheirComment() {
    String text = "# mine\nname: x\n\n# the plies\n" + PLIES;
    assertEquals(
        "# mine\n"
            + "name: x\n\n"
            + "measured_bottoms: {1: 0.8765, 2: 1.8}\n"
            + "measured_bottoms_tolerance: 0.0301\n"
            + "# the plies\n"
            + PLIES,
        LayupRewrite.withBottoms(text, new Bottoms(BOTTOMS, 0.03001)));
  }

  @Test
  void flowMap_replaced_commentOnTheLineKept() {
    String text =
        "measured_bottoms: {1: 0.9}   # old cut\nmeasured_bottoms_tolerance: 0.1 # guess\n" + PLIES;
    assertEquals(
        "measured_bottoms: {1: 0.8765, 2: 1.8}   # old cut\n"
            + "measured_bottoms_tolerance: 0.03 # guess\n"
            + PLIES,
        LayupRewrite.withBottoms(text, new Bottoms(BOTTOMS, 0.03)));
  }

  @Test
  void blockMap_replaced_commentsOfTheNextKeyKept() {
    String text = "measured_bottoms:\n  a: 0.9\n  # between\n  b: 1.9\n\n# the plies\n" + PLIES;
    assertEquals(
        "measured_bottoms: {1: 0.8765, 2: 1.8}\n\nmeasured_bottoms_tolerance: 0.03\n# the plies\n"
            + PLIES,
        LayupRewrite.withBottoms(text, new Bottoms(BOTTOMS, 0.03)));
  }

  @Test
  void windowsLineEnds_kept() {
    String text = "name: x\r\nplies:\r\n  - {name: a, colour: \"#112233\", thickness: 0.9}\r\n";
    assertEquals(
        "name: x\r\n"
            + "measured_bottoms: {1: 0.5}\r\n"
            + "measured_bottoms_tolerance: 0.03\r\n"
            + "plies:\r\n"
            + "  - {name: a, colour: \"#112233\", thickness: 0.9}\r\n",
        LayupRewrite.withBottoms(text, new Bottoms(new TreeMap<>(Map.of(1, 0.5)), 0.03)));
  }

  @Test
  void rewrittenText_readsAsMeant() throws IOException {
    String text = "# c\nname: x\nmeasured_bottoms:\n  a: 0.9\n" + PLIES;
    Path file =
        Files.writeString(
            dir.resolve("l.yaml"), LayupRewrite.withBottoms(text, new Bottoms(BOTTOMS, 0.03)));
    Layup read = LayupReader.read(file);
    assertEquals(new TreeMap<>(Map.of(1, 0.8765, 2, 1.8)), read.measured().bottomsMm());
    assertEquals(0.03, read.measured().bottomsToleranceMm());
  }

  @Test
  void cleanFile_readsBackAsItWas() throws IOException {
    List<Ply> plies =
        List.of(
            new Ply(1, "a \"b\" \\ #c: é", 0x123456, 0.9, 0.04, 90, "it's oak, dyed"),
            new Ply(2, "two", 0, 0.6, 0, -45, ""));
    Layup layup =
        new Layup("f", "Nämé: # x", plies, new GlueLine(0.04, 0.01), Measured.NOTHING, 0.08)
            .withThickness(1.5, 0.02)
            .withBottoms(new TreeMap<>(Map.of(1, 0.88)), 0.03);
    Path file = Files.writeString(dir.resolve("l.yaml"), LayupYaml.text(layup, "made"));
    Layup read = LayupReader.read(file);
    assertEquals(layup.plies(), read.plies());
    assertEquals(layup.name(), read.name());
    assertEquals(layup.measured().thicknessMm(), read.measured().thicknessMm());
    assertEquals(layup.measured().bottomsMm(), read.measured().bottomsMm());
    assertEquals(0.08, read.flatnessMm());
  }

  @Test
  void measuredPlaces_areWrittenInOneLine_andReadBack() throws IOException {
    MeasuredPlace place =
        new MeasuredPlace(
            new PanelPoint(20, 220.5),
            new Bottoms(new TreeMap<>(Map.of(1, 0.88, 2, 1.75)), 0.02),
            "tile-1-2",
            Place.file("l.yaml"));
    String text = LayupRewrite.withPlaces("flatness: 0.1\n" + PLIES, List.of(place));
    assertTrue(
        text.contains(
            "\nmeasured_places: [{at: [20, 220.5], bottoms: {1: 0.88, 2: 1.75}, tolerance: 0.02,"
                + " tile: tile-1-2}]\n"),
        text);
    Path file = Files.writeString(dir.resolve("l.yaml"), text);
    MeasuredPlace read = LayupReader.read(file).measured().places().get(0);
    assertEquals(place.at(), read.at());
    assertEquals(place.bottoms(), read.bottoms());
    assertEquals("tile-1-2", read.tile());
  }
}
