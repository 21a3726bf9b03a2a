package plyscape.zones;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static plyscape.zones.MapText.collection;
import static plyscape.zones.MapText.feature;
import static plyscape.zones.MapText.square;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.GroundFrame;
import plyscape.job.LineWidth;
import plyscape.job.ZoneSpec;
import plyscape.job.ZoneSpecs;

/** {@code where}: which features of a map a zone picks, by the area that they have together. */
class ZoneWhereTest {

  /** 1 km on 100 mm: 1 mm is 10 m. */
  private static final GroundFrame PLAIN =
      new GroundFrame("", new Box(0, 0, 1000, 1000), new Box(5, 5, 105, 105), 1);

  @TempDir Path dir;
  private final Warnings warnings = new Warnings();

  private Zone readWhere(String json, String key, Object... values) throws IOException {
    Path file = Files.writeString(dir.resolve("map.geojson"), json);
    TreeMap<String, List<Object>> where = new TreeMap<>(Map.of(key, List.of(values)));
    ZoneSpec spec = ZoneSpecs.of("test", file, where, 2, null, LineWidth.NONE);
    return ZoneReader.read(List.of(spec), PLAIN, warnings).get(0);
  }

  @Test
  void where_picksByValueListNumberAndNestedName() throws IOException {
    String json =
        collection(
            feature(
                "{\"kind\":\"river\",\"lanes\":2,\"tags\":{\"bridge\":true}}", square(0, 0, 100)),
            feature("{\"kind\":\"wood\",\"lanes\":\"4\"}", square(200, 0, 200)),
            feature("{\"kind\":[\"hut\",\"barn\"]}", square(500, 0, 300)));
    assertEquals(100, readWhere(json, "kind", "river").area().getArea(), 1e-9);
    assertEquals(500, readWhere(json, "kind", "river", "wood").area().getArea(), 1e-9);
    assertEquals(400, readWhere(json, "lanes", 4.0).area().getArea(), 1e-9);
    assertEquals(100, readWhere(json, "tags.bridge", true).area().getArea(), 1e-9);
    assertEquals(900, readWhere(json, "kind", "barn").area().getArea(), 1e-9);
    assertEquals(0, readWhere(json, "kind", "rivr").features());
    assertTrue(
        warnings.list().stream()
            .anyMatch(w -> w.code().equals("zone-empty") && w.message().contains("river, wood")));
  }

  @Test
  void where_rangesPresenceAndNegation() throws IOException {
    String json =
        collection(
            feature("{\"lanes\":1,\"name\":\"Low Lane\"}", square(0, 0, 100)),
            feature("{\"lanes\":\"3\"}", square(200, 0, 200)),
            feature("{\"name\":null}", square(500, 0, 300)));
    assertEquals(
        400, readWhere(json, "lanes", new ZoneSpec.Between(2.0, null)).area().getArea(), 1e-9);
    assertEquals(
        100, readWhere(json, "lanes", new ZoneSpec.Between(null, 2.0)).area().getArea(), 1e-9);
    assertEquals(500, readWhere(json, "lanes", new ZoneSpec.Present(true)).area().getArea(), 1e-9);
    assertEquals(1300, readWhere(json, "name", new ZoneSpec.Present(false)).area().getArea(), 1e-9);
    assertEquals(
        1300, readWhere(json, "lanes", new ZoneSpec.Not(List.of(1.0))).area().getArea(), 1e-9);
    assertEquals(
        1000,
        readWhere(json, "lanes", 1.0, new ZoneSpec.Present(false)).area().getArea(),
        1e-9,
        "any of them");
  }

  @Test
  void where_isToldInWords() throws IOException {
    readWhere(
        collection(feature("{\"kind\":\"lane\"}", square(0, 0, 100))),
        "knid",
        "road",
        new ZoneSpec.Between(2.0, 4.0),
        new ZoneSpec.Present(true));
    String said = warnings.list().get(warnings.list().size() - 1).message();
    assertTrue(said.contains("fits knid: road or 2 to 4 or any: no feature has knid"), said);
  }

  @Test
  void misspeltName_isToldWithTheNamesThatThereAre() throws IOException {
    readWhere(collection(feature("{\"natural\":\"wood\"}", square(0, 0, 100))), "naturl", "wood");
    String said = warnings.list().get(warnings.list().size() - 1).message();
    assertTrue(
        said.contains("no feature has naturl (did you mean \"natural\"? known are natural)"), said);
  }
}
