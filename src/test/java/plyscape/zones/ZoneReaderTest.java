package plyscape.zones;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static plyscape.zones.MapText.collection;
import static plyscape.zones.MapText.feature;
import static plyscape.zones.MapText.square;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Coordinate;
import plyscape.fault.InputFault;
import plyscape.fault.Warning;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.GroundFrame;
import plyscape.job.LineWidth;
import plyscape.job.ZoneSpec;
import plyscape.job.ZoneSpecs;

class ZoneReaderTest {

  /** 1 km on 100 mm: 1 mm is 10 m. */
  private static final Box PANEL = new Box(5, 5, 105, 105);

  private static final GroundFrame PLAIN = new GroundFrame("", new Box(0, 0, 1000, 1000), PANEL, 1);
  private static final GroundFrame UTM =
      new GroundFrame("EPSG:32638", new Box(444000, 3684000, 445000, 3685000), PANEL, 1);

  @TempDir Path dir;
  private final Warnings warnings = new Warnings();

  private ZoneSpec spec(
      String json, TreeMap<String, List<Object>> where, Double width, Double groundWidth)
      throws IOException {
    Path file = dir.resolve("map.geojson");
    Files.writeString(file, json);
    return ZoneSpecs.of("test", file, where, 2, null, new LineWidth(width, groundWidth, null));
  }

  private Zone read(String json, GroundFrame frame) throws IOException {
    return read(json, frame, null, null);
  }

  private Zone read(String json, GroundFrame frame, Double width, Double groundWidth)
      throws IOException {
    return ZoneReader.read(
            List.of(spec(json, new TreeMap<>(), width, groundWidth)), frame, warnings)
        .get(0);
  }

  private List<String> codes() {
    return warnings.list().stream().map(Warning::code).toList();
  }

  /**
   * Latitudes on a sphere (EPSG:4047) are taken as those of WGS 84, as GDAL 3.6.2 with PROJ 9.1.1
   * does; by way of the Earth's centre the map would lie 18 km off at 33 degrees.
   */
  @Test
  void mapOnASphere_liesWhereItsDegreesSay_andItIsTold() throws IOException {
    String map = square(44.398, 33.294, 0.004);
    Zone plain = read(map, UTM);
    assertEquals(List.of(), codes());
    String crs = "{\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"EPSG:4047\"}},";
    Zone sphere = read(crs + map.substring(1), UTM);
    assertEquals(List.of("crs-sphere"), codes());
    assertTrue(plain.area().getArea() > 1000);
    assertEquals(0, sphere.area().symDifference(plain.area()).getArea(), 1e-6);
  }

  @Test
  void square_onThePanel() throws IOException {
    Zone zone = read(square(100, 200, 300), PLAIN);
    assertEquals(900, zone.area().getArea(), 1e-9);
    assertEquals(15, zone.area().getEnvelopeInternal().getMinX(), 1e-9);
    assertEquals(25, zone.area().getEnvelopeInternal().getMinY(), 1e-9);
    assertEquals(1, zone.features());
    assertEquals(List.of("zone-crs-unknown"), codes());
  }

  /**
   * GeographicLib's documentation: 33.3 N, 44.4 E is 444140.54, 3684706.36 in UTM 38 N (references,
   * section 3).
   */
  @Test
  void longitudeLatitude_landsWhereUtmSays() throws IOException {
    double d = 1e-3;
    Zone zone = read(square(44.4, 33.3, d), UTM);
    Coordinate corner =
        new Coordinate(5 + (444140.54 - 444000) / 10, 5 + (3684706.36 - 3684000) / 10);
    double nearest = Double.MAX_VALUE;
    for (Coordinate c : zone.area().getCoordinates()) {
      nearest = Math.min(nearest, c.distance(corner));
    }
    assertEquals(0, nearest, 0.001);
    assertTrue(codes().isEmpty());
  }

  /** The same place by way of GeoTools, named in the old crs member, must be the same. */
  @Test
  void crsMember_isFollowed() throws IOException {
    String crs =
        "\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"urn:ogc:def:crs:EPSG::32638\"}},";
    String json =
        "{\"type\":\"Feature\"," + crs + "\"geometry\":" + square(444100, 3684100, 200) + "}";
    Zone zone = read(json, UTM);
    assertEquals(400, zone.area().getArea(), 1e-6);
    assertEquals(15, zone.area().getEnvelopeInternal().getMinX(), 1e-6);
    Zone shifted = read(json.replace("::32638", "::32637"), UTM);
    assertEquals(0, shifted.features());
    assertEquals("outside the carved area", shifted.skipped().get(0).why());
    assertTrue(codes().contains("zone-outside"));
  }

  /** Latitude first, as maps on the wall are read. */
  @Test
  void swappedCoordinates_areToldAsSuch() throws IOException {
    assertEquals(1, read(square(44.402, 33.297, 0.002), UTM).features());
    assertEquals(0, read(square(33.297, 44.402, 0.002), UTM).features());
    String said = warnings.list().get(0).message();
    assertTrue(said.contains("with x and y swapped it would lie there"), said);
    read(square(10, 50, 0.002), UTM);
    said = warnings.list().get(1).message();
    assertEquals("All that it picks (1 feature) lies outside the carved area.", said);
  }

  @Test
  void degreesOverATerrainWithoutCrs_areSuspected() throws IOException {
    read(square(10, 50, 1), PLAIN);
    String said = warnings.list().get(0).message();
    assertTrue(said.contains("if they are longitude and latitude, set terrain.crs"), said);
    read(square(100, 200, 300), PLAIN);
    assertTrue(warnings.list().get(1).message().endsWith("the raster's own."), "y beyond 90");
  }

  @Test
  void whatIsNoMap_isToldByName() {
    String[][] files = {{"PK\3\4", "a zip archive"}, {"<svg/>", "XML with a root element <svg>"}};
    for (String[] file : files) {
      InputFault fault = assertThrows(InputFault.class, () -> read(file[0], UTM));
      assertTrue(fault.getMessage().contains(file[1]), fault.getMessage());
      assertTrue(fault.getMessage().contains("save it as GeoJSON"), fault.getMessage());
    }
  }

  @Test
  void crsMemberAfterTheFeatures_orNull_isTheSame() throws IOException {
    String json =
        "{\"features\":["
            + feature("null", square(444100, 3684100, 200))
            + "],\"type\":\"FeatureCollection\","
            + "\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"EPSG:32638\"}}}";
    assertEquals(400, read(json, UTM).area().getArea(), 1e-6);
    Zone guessed = read(json.replaceAll("\"crs\".*", "\"crs\":null}"), UTM);
    assertEquals(400, guessed.area().getArea(), 1e-6);
    assertEquals(List.of("zone-crs-guessed"), codes());
  }

  /** Closed form: a strip with round ends is length times width and a disk. */
  @Test
  void line_isWidened() throws IOException {
    String line = "{\"type\":\"LineString\",\"coordinates\":[[200,500],[800,500]]}";
    double expected = 60 * 3 + Math.PI * 1.5 * 1.5;
    assertEquals(expected, read(line, PLAIN, 3.0, null).area().getArea(), 0.002 * expected);
    assertEquals(expected, read(line, PLAIN, null, 30.0).area().getArea(), 0.002 * expected);
    Zone none = read(line, PLAIN);
    assertEquals(0, none.features());
    assertTrue(none.area().isEmpty());
    assertEquals("a line, and the zone has no width", none.skipped().get(0).why());
  }

  @Test
  void line_crossingTheEdge_isWidenedBeforeItIsClipped() throws IOException {
    String line = "{\"type\":\"LineString\",\"coordinates\":[[-5000,0],[6000,0]]}";
    assertEquals(100 * 2, read(line, PLAIN, 4.0, null).area().getArea(), 1e-6);
  }

  @Test
  void polygonFarBeyondTheTerrain_coversIt() throws IOException {
    assertEquals(100 * 100, read(square(-1e6, -1e6, 2e6), PLAIN).area().getArea(), 1e-6);
    Zone world =
        read(
            "{\"type\":\"Polygon\",\"coordinates\":[[[-180,-90],[180,-90],[180,90],[-180,90],[-180,-90]]]}",
            UTM);
    assertEquals(100 * 100, world.area().getArea(), 1e-6);
  }

  @Test
  void nullEmptyAndBrokenGeometries_areListedAndTheRestIsUsed() throws IOException {
    Zone zone =
        read(
            collection(
                feature("{\"name\":\"nothing\"}", "null"),
                feature("{}", "{\"type\":\"Polygon\",\"coordinates\":[]}"),
                feature(
                    "{\"name\":\"odd\"}", "{\"type\":\"Polygon\",\"coordinates\":[[1,2],[3,4]]}"),
                feature("{}", "{\"type\":\"Curve\",\"coordinates\":[[1,2],[3,4]]}"),
                feature("{}", "{\"type\":\"Point\",\"coordinates\":[100,100]}"),
                feature("{}", "{\"type\":\"LineString\",\"coordinates\":[[null,2],[3,4]]}"),
                feature("{}", square(100, 100, 100))),
            PLAIN);
    assertEquals(1, zone.features());
    assertEquals(
        List.of(
            new Zone.Skipped("nothing", "no geometry"),
            new Zone.Skipped("feature 2", "no geometry"),
            new Zone.Skipped("odd", "coordinates don't fit a Polygon"),
            new Zone.Skipped("feature 4", "unknown geometry type Curve"),
            new Zone.Skipped("feature 5", "a point"),
            new Zone.Skipped("feature 6", "coordinates don't fit a LineString")),
        zone.skipped());
    assertEquals(100, zone.area().getArea(), 1e-9);
    assertTrue(codes().contains("zone-skipped"));
  }

  @Test
  void collectionsAltitudesAndHoles() throws IOException {
    String ring = "[[0,0,7],[600,0,7],[600,600,7],[0,600,7],[0,0,7]]";
    String hole = "[[100,100],[100,200],[200,200],[200,100],[100,100]]";
    String inner =
        "{\"type\":\"GeometryCollection\",\"geometries\":[{\"type\":\"Polygon\",\"coordinates\":["
            + ring
            + ","
            + hole
            + "]},"
            + square(700, 700, 100)
            + "]}";
    Zone zone = read("{\"type\":\"GeometryCollection\",\"geometries\":[" + inner + "]}", PLAIN);
    assertEquals(3600 - 100 + 100, zone.area().getArea(), 1e-9);
    assertEquals(1, zone.features());
  }

  @Test
  void bowTie_isRepairedAndCounted() throws IOException {
    String bow = "{\"type\":\"Polygon\",\"coordinates\":[[[0,0],[400,400],[400,0],[0,400],[0,0]]]}";
    Zone zone = read(feature("{\"name\":\"bow\"}", bow), PLAIN);
    assertTrue(zone.area().isValid());
    assertEquals(800, zone.area().getArea(), 1e-6);
    assertTrue(
        warnings.list().stream()
            .anyMatch(w -> w.code().equals("zone-repaired") && w.message().contains("bow")));
  }

  @Test
  void overlappingFeatures_countOnce() throws IOException {
    Zone zone =
        read(
            collection(feature("{}", square(0, 0, 200)), feature("{}", square(100, 100, 200))),
            PLAIN);
    assertEquals(400 + 400 - 100, zone.area().getArea(), 1e-9);
  }

  @Test
  void faults_sayLineAndColumn() {
    InputFault cut =
        assertThrows(
            InputFault.class,
            () -> read("{\"type\":\"FeatureCollection\",\n\"features\":[{", PLAIN));
    assertEquals(2, cut.place().line());
    InputFault type = assertThrows(InputFault.class, () -> read("{\"type\":\"Topology\"}", PLAIN));
    assertTrue(type.getMessage().contains("Topology"));
    assertThrows(InputFault.class, () -> read("", PLAIN));
    assertThrows(InputFault.class, () -> read("[1,2]", PLAIN));
    assertThrows(
        InputFault.class,
        () ->
            ZoneReader.read(
                List.of(
                    ZoneSpecs.of(
                        "x", dir.resolve("none"), new TreeMap<>(), 1, null, LineWidth.NONE)),
                PLAIN,
                warnings));
  }

  /**
   * Closed form: strips with round ends, 2 lanes times 5 m and 4 m where the property is missing; 1
   * mm is 10 m.
   */
  @Test
  void width_fromAProperty() throws IOException {
    String line = "{\"type\":\"LineString\",\"coordinates\":[[200,500],[800,500]]}";
    ZoneSpec plain =
        spec(
            collection(feature("{\"lanes\":2}", line), feature("{}", line.replace("500", "100"))),
            new TreeMap<>(),
            null,
            null);
    ZoneSpec byLanes =
        ZoneSpecs.of(
            "lanes",
            plain.file(),
            plain.where(),
            2,
            null,
            new LineWidth(null, null, new ZoneSpec.WidthBy("lanes", 5, 4.0, true)));
    Zone zone = ZoneReader.read(List.of(byLanes), PLAIN, 1, warnings).get(0);
    double expected = 60 + Math.PI / 4 + 60 * 0.4 + Math.PI * 0.04;
    assertEquals(expected, zone.area().getArea(), 0.002 * expected);
  }

  @Test
  void keep_widensOrDropsWhatIsNarrowerThanTheCutter() throws IOException {
    String line = "{\"type\":\"LineString\",\"coordinates\":[[200,500],[800,500]]}";
    ZoneSpec plain =
        spec(
            collection(
                feature("{}", line),
                feature("{}", square(100, 100, 5)),
                feature("{}", square(300, 100, 100))),
            new TreeMap<>(),
            0.4,
            null);
    Zone widened =
        ZoneReader.read(List.of(kept(plain, ZoneSpec.Keep.WIDEN)), PLAIN, 2, warnings).get(0);
    double strip = 60 * 2.05 + Math.PI * 1.025 * 1.025;
    assertEquals(3, widened.features());
    double hut = widened.area().getArea() - strip - 100;
    assertTrue(hut > Math.PI && hut < 7, "a hut the cutter just fits into, not " + hut);
    assertTrue(codes().contains("zone-widened"));
    Zone dropped =
        ZoneReader.read(List.of(kept(plain, ZoneSpec.Keep.DROP)), PLAIN, 2, warnings).get(0);
    assertEquals(1, dropped.features());
    assertEquals(100, dropped.area().getArea(), 1e-9);
    assertEquals("narrower than the smallest cutter", dropped.skipped().get(0).why());
  }

  private static ZoneSpec kept(ZoneSpec spec, ZoneSpec.Keep keep) {
    return new ZoneSpec(spec.name(), spec.map(), 2, null, spec.width(), null, keep);
  }

  /**
   * 30 000 points at random make about 300 million crossings, which no memory holds; a star of 251
   * points crosses itself 31 000 times and is mended.
   */
  @Test
  void scribble_isLeftOut_andAStarIsMended() throws IOException {
    java.util.Random random = new java.util.Random(8);
    StringBuilder scribble = new StringBuilder();
    for (int i = 0; i < 30_000; i++) {
      scribble.append(
          String.format(
              java.util.Locale.ROOT,
              "[%.3f,%.3f],",
              1000 * random.nextDouble(),
              1000 * random.nextDouble()));
    }
    Zone none = read(ring(scribble.toString()), PLAIN);
    assertEquals(1, none.skipped().size());
    assertTrue(none.skipped().get(0).why().contains("crosses itself"), none.skipped().toString());
    StringBuilder star = new StringBuilder();
    for (int i = 0; i < 251; i++) {
      double a = 2 * Math.PI * i * 125 / 251;
      star.append(
          String.format(
              java.util.Locale.ROOT,
              "[%.6f,%.6f],",
              500 + 400 * Math.cos(a),
              500 + 400 * Math.sin(a)));
    }
    assertTrue(read(ring(star.toString()), PLAIN).area().getArea() > 0);
  }

  private static String ring(String points) {
    String first = points.substring(0, points.indexOf(']') + 1);
    return "{\"type\":\"Polygon\",\"coordinates\":[[" + points + first + "]]}";
  }
}
