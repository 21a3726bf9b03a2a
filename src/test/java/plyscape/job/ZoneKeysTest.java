package plyscape.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ZoneKeysTest {

  private static final String HEAD =
      "layup: layup.yaml\n"
          + "terrain: {file: terrain.asc}\n"
          + "zones:\n"
          + "  - {file: zones.geojson, sink: 1, ";

  @TempDir Path folder;
  private JobFixture files;

  @BeforeEach
  void makeFiles() {
    files = new JobFixture(folder);
  }

  private ZoneSpec zone(String keys) {
    return files.job(HEAD + keys + "}\n").zones().get(0);
  }

  @Test
  void where_takesRangesPresenceAndNegation() {
    ZoneSpec zone =
        zone(
            "where: {lanes: {min: 2, max: 4}, name: {exists: true}, kind: {not: [river, 3]}, level:"
                + " [0, {min: 5}]}");
    assertEquals(List.of(new ZoneSpec.Between(2.0, 4.0)), zone.where().get("lanes"));
    assertEquals(List.of(new ZoneSpec.Present(true)), zone.where().get("name"));
    assertEquals(List.of(new ZoneSpec.Not(List.of("river", 3.0))), zone.where().get("kind"));
    assertEquals(List.of(0.0, new ZoneSpec.Between(5.0, null)), zone.where().get("level"));
  }

  @Test
  void width_takesAProperty_andKeepAWord() {
    ZoneSpec zone = zone("ground_width: {property: lanes, times: 3}, keep: widen");
    assertEquals(new ZoneSpec.WidthBy("lanes", 3, null, true), zone.width().by());
    assertNull(zone.width().groundM());
    assertEquals(ZoneSpec.Keep.WIDEN, zone.keep());
    ZoneSpec other = zone("width: {property: size, otherwise: 0.5}");
    assertEquals(new ZoneSpec.WidthBy("size", 1, 0.5, false), other.width().by());
    assertEquals(ZoneSpec.Keep.MERGE, other.keep());
  }

  @Test
  void values_areNumbersOfClasses() {
    assertEquals(List.of(41.0, 42.0), zone("values: [41, 42]").values());
    assertEquals(List.of(5.0), zone("values: 5").values());
    assertNull(zone("keep: drop").values());
  }

  @Test
  void faults_sayWhatWouldDo() {
    assertTrue(files.jobFault(HEAD + "values: []}\n").contains("found 0 values"));
    assertTrue(files.jobFault(HEAD + "values: [wood]}\n").contains("wanted a number"));
    assertTrue(
        files
            .jobFault(HEAD + "values: [41], where: {kind: wood}}\n")
            .contains("both \"values\" and \"where\""));
    assertTrue(files.jobFault(HEAD + "keep: wide}\n").contains("wanted merge, widen or drop"));
    assertTrue(
        files.jobFault(HEAD + "where: {lanes: {min: 4, max: 2}}}\n").contains("max below the min"));
    assertTrue(
        files.jobFault(HEAD + "where: {lanes: {min: 4, exists: true}}}\n").contains("two things"));
    assertTrue(
        files.jobFault(HEAD + "where: {lanes: {mni: 4}}}\n").contains("unknown key \"mni\""));
    assertTrue(files.jobFault(HEAD + "width: {property: }}\n").contains("property"));
  }
}
