package plyscape.zones.osm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.locationtech.jts.geom.Envelope;
import plyscape.fault.InputFault;
import plyscape.zones.map.MapFeature;
import plyscape.zones.map.MapFile;
import plyscape.zones.map.MapQuery;

/** Situations by name, each in both formats and with the blocks in an order that isn't usual. */
class OsmReaderTest {

  enum Form {
    XML,
    PBF,
    PBF_SHUFFLED
  }

  @TempDir Path dir;

  private MapFile read(OsmFixture map, Form form, MapQuery query) throws IOException {
    Path file = dir.resolve(form == Form.XML ? "map.osm" : "map.osm.pbf");
    byte[] bytes =
        form == Form.XML
            ? map.xml().getBytes(StandardCharsets.UTF_8)
            : map.pbf(form == Form.PBF_SHUFFLED);
    Files.write(file, bytes);
    return new OsmFormat().read(file, query);
  }

  private MapFile read(OsmFixture map, Form form) throws IOException {
    return read(map, form, MapQuery.everything());
  }

  private static MapQuery within(Envelope reach) {
    return new MapQuery("", Set.of(), tags -> true, crs -> reach);
  }

  private static double area(MapFile map, int feature) {
    return map.features().get(feature).geometry().getArea();
  }

  private static long[] refs(long... ids) {
    return ids;
  }

  /** A square of 10 x 10 in two ways, a hole from 2 to 8 and an island from 4 to 6. */
  private static OsmFixture nested() {
    return new OsmFixture()
        .nodes(1, 0, 0, 10, 0, 10, 10, 0, 10)
        .nodes(11, 2, 2, 8, 2, 8, 8, 2, 8)
        .nodes(21, 4, 4, 6, 4, 6, 6, 4, 6)
        .way(1, refs(1, 2, 3))
        .way(2, refs(1, 4, 3))
        .way(3, refs(11, 12, 13, 14, 11))
        .way(4, refs(21, 22, 23, 24, 21));
  }

  /** References, section 12: 100 - 36 + 4, the island called a hole by mistake. */
  @ParameterizedTest
  @EnumSource(Form.class)
  void multipolygonFromWaysOfAnyDirection_hasItsHoleAndIsland(Form form) throws IOException {
    OsmFixture map =
        nested()
            .relation(
                7,
                new Object[] {4, "inner", 1, "outer", 3, "inner", 2, ""},
                "type=multipolygon",
                "natural=wood");
    MapFile found = read(map, form);
    assertEquals(1, found.features().size());
    assertEquals(68, area(found, 0), 1e-9);
    assertEquals("relation/7", found.features().get(0).label());
    assertEquals("wood", found.features().get(0).properties().get("natural"));
    assertEquals(Map.of("rings with the wrong role (where they lie counts)", 1), found.notes());
  }

  @ParameterizedTest
  @EnumSource(Form.class)
  void outlineThatDoesntClose_isCountedAndItsHoleMakesNoArea(Form form) throws IOException {
    OsmFixture map =
        nested()
            .relation(
                7,
                new Object[] {1, "outer", 3, "inner", 99, "outer"},
                "type=multipolygon",
                "natural=wood");
    MapFile found = read(map, form);
    assertEquals("no outline that closes", found.features().get(0).trouble());
    assertEquals(
        Map.of(
            "members of relations that aren't in the file", 1,
            "relations with an outline that doesn't close", 1),
        found.notes().entrySet().stream()
            .filter(note -> !note.getKey().startsWith("rings"))
            .collect(java.util.stream.Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue)));
  }

  /** Holes that touch along an edge are one hole: 100 - 2 * 9. */
  @ParameterizedTest
  @EnumSource(Form.class)
  void holesThatTouch_areOne(Form form) throws IOException {
    OsmFixture map =
        nested()
            .nodes(31, 2, 2, 5, 2, 5, 5, 2, 5)
            .nodes(41, 8, 2, 8, 5)
            .way(5, refs(31, 32, 33, 34, 31))
            .way(6, refs(32, 41, 42, 33, 32))
            .relation(
                8,
                new Object[] {1, "outer", 2, "outer", 5, "inner", 6, "inner"},
                "type=multipolygon",
                "landuse=meadow");
    MapFile found = read(map, form);
    assertEquals(82, area(found, 0), 1e-9);
    assertTrue(found.features().get(0).geometry().isValid());
  }

  /** Two triangles that share a corner where four ways meet. */
  @Test
  void ringsThatMeetAtANode_areTwo() {
    RingJoiner joined =
        RingJoiner.of(
            List.of(refs(1, 2), refs(2, 3, 1), refs(4, 1), refs(1, 5, 4), refs(6, 7), refs(7, 8)));
    assertEquals(2, joined.rings().size());
    assertTrue(joined.rings().stream().allMatch(ring -> ring.nodes().length == 4));
    assertEquals(2, joined.open());
  }

  @ParameterizedTest
  @EnumSource(Form.class)
  void wayAroundAllOfTheGround_isKept_andOneBesideItIsnt(Form form) throws IOException {
    OsmFixture map =
        nested()
            .way(10, refs(1, 2, 3, 4, 1), "landuse=forest")
            .way(11, refs(1, 2), "highway=path")
            .way(12, refs(21, 22), "highway=path")
            .way(13, refs(4, 2), "waterway=stream");
    MapFile found = read(map, form, within(new Envelope(4.5, 5.5, 3.5, 5)));
    List<String> labels = found.features().stream().map(MapFeature::label).toList();
    // The last passes the box by, but only its corners could tell.
    assertEquals(List.of("way/10", "way/12", "way/13"), labels);
  }

  @ParameterizedTest
  @EnumSource(Form.class)
  void boundaryAroundAllOfTheGround_isKept(Form form) throws IOException {
    OsmFixture map =
        nested()
            .relation(
                9, new Object[] {1, "outer", 2, "outer"}, "type=boundary", "boundary=protected")
            .relation(10, new Object[] {3, "outer"}, "type=boundary", "boundary=other");
    MapFile found = read(map, form, within(new Envelope(0.5, 1, 0.5, 1)));
    assertEquals(1, found.features().size());
    assertEquals(100, area(found, 0), 1e-9);
  }

  @ParameterizedTest
  @EnumSource(Form.class)
  void mapOverTheDateLine_goesOn(Form form) throws IOException {
    OsmFixture map =
        new OsmFixture()
            .nodes(1, 179.9, 0, -179.9, 0, -179.9, 0.1, 179.9, 0.1)
            .way(1, refs(1, 2, 3, 4, 1), "natural=water");
    MapFile found = read(map, form, within(new Envelope(179.95, 180.05, 0, 0.05)));
    assertEquals(0.02, area(found, 0), 1e-9);
  }

  /** References, section 12: what closed ways are by their tags. */
  @ParameterizedTest
  @EnumSource(Form.class)
  void closedWays_areAreasOrLinesByTheirTags(Form form) throws IOException {
    String[][] cases = {
      {"highway=primary", "line"},
      {"natural=water", "area"},
      {"natural=tree_row", "line"},
      {"highway=pedestrian,area=yes", "area"},
      {"building=yes,area=no", "line"},
      {"name=Ring", "line"},
      {"highway=primary,landuse=grass", "area line"},
      {"barrier=fence", "line"},
      {"barrier=hedge", "area"}
    };
    OsmFixture map = nested();
    for (int i = 0; i < cases.length; i++) {
      map.way(100 + i, refs(1, 2, 3, 4, 1), cases[i][0].split(","));
    }
    MapFile found = read(map, form);
    for (int i = 0; i < cases.length; i++) {
      String label = "way/" + (100 + i);
      List<MapFeature> parts =
          found.features().stream().filter(f -> f.label().equals(label)).toList();
      List<String> kinds =
          parts.stream().map(f -> f.geometry().getDimension() == 2 ? "area" : "line").toList();
      assertEquals(cases[i][1], String.join(" ", kinds), cases[i][0]);
    }
    MapFeature lawn =
        found.features().stream()
            .filter(f -> f.label().equals("way/106"))
            .findFirst()
            .orElseThrow();
    assertEquals(Map.of("landuse", "grass"), lawn.properties());
  }

  @ParameterizedTest
  @EnumSource(Form.class)
  void nodesThatArentInTheFile_cutLinesAndSpoilAreas(Form form) throws IOException {
    OsmFixture map =
        nested()
            .way(1000, refs(1, 2, 500, 3, 4, 501), "highway=track")
            .way(1001, refs(1, 2, 500, 1), "building=yes");
    MapFile found = read(map, form);
    assertEquals(2, found.features().get(0).geometry().getNumGeometries());
    assertEquals(20, found.features().get(0).geometry().getLength(), 1e-9);
    assertTrue(found.features().get(1).trouble().contains("aren't in the file"));
    assertEquals(Map.of("ways of which some nodes aren't in the file", 2), found.notes());
  }

  @ParameterizedTest
  @EnumSource(Form.class)
  void outerWayWithItsRelationsTag_isDrawnOnce(Form form) throws IOException {
    OsmFixture map =
        nested()
            .way(50, refs(1, 2, 3, 4, 1), "natural=wood", "name=Old")
            .relation(
                8, new Object[] {50, "outer", 3, "inner"}, "type=multipolygon", "natural=wood");
    MapFile found = read(map, form);
    assertEquals(List.of("relation/8"), found.features().stream().map(MapFeature::label).toList());
    assertEquals(64, area(found, 0), 1e-9);
  }

  @ParameterizedTest
  @EnumSource(Form.class)
  void routesAreLines_taggedNodesArePoints_andBoundsAreKnown(Form form) throws IOException {
    OsmFixture map =
        nested()
            .bounds(-1, -2, 11, 12)
            .node(900, 5, 5, "natural=peak", "name=Knott")
            .relation(3, new Object[] {1, "", 2, "forward"}, "type=route", "route=hiking");
    MapFile found = read(map, form);
    assertEquals(new Envelope(-1, 11, -2, 12), found.extent());
    assertEquals("node/900", found.features().get(0).label());
    assertEquals(5, found.features().get(0).geometry().getCoordinate().x, 1e-9);
    assertEquals(40, found.features().get(1).geometry().getLength(), 1e-9);
  }

  @Test
  void xmlWithDeletedAndUnsortedNodes_isReadAllTheSame() throws IOException {
    Path file = dir.resolve("edited.osm");
    Files.writeString(
        file,
        "<osm version='0.6'><way id='-1'><nd ref='-3'/><nd ref='5'/><nd ref='-9'/><nd ref='-3'/>"
            + "<tag k='building' v='yes'/></way><node id='5' lat='1' lon='0'/>"
            + "<node id='-3' lat='0' lon='0'/><node id='-9' lat='0' lon='2'/>"
            + "<node id='8' action='delete' lat='0' lon='2'/><node id='9' visible='false'/></osm>");
    MapFile found = new OsmFormat().read(file, MapQuery.everything());
    assertEquals(1, area(found, 0), 1e-12);
  }

  /** The whole file of references, section 12: 135 bytes made by hand; 85.33 m2. */
  @Test
  void fileMadeByHand_isRead() throws IOException {
    String hex =
        "0000000d0a094f534d48656164657218"
            + " 1e0a1c220e4f736d536368656d612d56302e36220a44656e73654e6f6465730000000b0a074f534d446174611849"
            + " 0a470a120a000a076e61747572616c0a057761746572121e121c0a0402020202"
            + "420980d9babb0300d00f004a0980f6e042d00f00cf0f12111a0f080a1201011a010242050202020205";
    Path file = dir.resolve("hand.osm.pbf");
    Files.write(file, HexFormat.of().parseHex(hex.replace(" ", "")));
    MapFile found = new OsmFormat().read(file, MapQuery.everything());
    assertEquals("water", found.features().get(0).properties().get("natural"));
    assertEquals(1e-8, area(found, 0), 1e-14);
    Envelope box = found.features().get(0).geometry().getEnvelopeInternal();
    assertEquals(7.0, box.getMinX(), 1e-12);
    assertEquals(46.5001, box.getMaxY(), 1e-12);
  }

  @Test
  void brokenFiles_areFaultsWithThePlace() throws IOException {
    byte[] whole = nested().way(10, refs(1, 2, 3, 4, 1), "natural=water").pbf(false);
    assertFault(Arrays.copyOf(whole, whole.length - 5), "cut off");
    assertFault(Arrays.copyOf(whole, 3), "cut off");
    byte[] flipped = whole.clone();
    flipped[whole.length - 30] ^= 0x55;
    assertFault(flipped, "at byte");
    assertFault("no blocks".getBytes(StandardCharsets.US_ASCII), "something else than a block");
    assertFault(new byte[0], "no header block");
    Path xml = dir.resolve("broken.osm");
    Files.writeString(xml, "<osm>\n<node id=\"x\" lat=\"1\" lon=\"2\"/></osm>");
    InputFault fault =
        assertThrows(InputFault.class, () -> new OsmFormat().read(xml, MapQuery.everything()));
    assertEquals(2, fault.place().line());
    Files.writeString(xml, "<osm>\n<node id=\"1\" lat=\"1\" lon=\"2\"/>");
    assertThrows(InputFault.class, () -> new OsmFormat().read(xml, MapQuery.everything()));
  }

  private void assertFault(byte[] bytes, String text) throws IOException {
    Path file = dir.resolve("broken.osm.pbf");
    Files.write(file, bytes);
    InputFault fault =
        assertThrows(InputFault.class, () -> new OsmFormat().read(file, MapQuery.everything()));
    assertTrue(fault.getMessage().contains(text), fault.getMessage());
    assertTrue(fault.getMessage().contains("broken.osm.pbf"), fault.getMessage());
  }
}
