package plyscape.grid;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** The UTM projection against published and independently printed coordinates. */
class UtmZoneTest {

  /**
   * GeographicLib's documentation, zone 38 north; and the equator at 3 degrees off (references.md,
   * section 3).
   */
  @Test
  void publishedPlaces_agree() {
    assertPlace("EPSG:32638", 44.4, 33.3, 444140.54, 3684706.36, 0.01);
    assertPlace("EPSG:32631", 0, 0, 166021.443, 0, 0.001);
    assertPlace("EPSG:32631", 3, 0, 500000, 0, 1e-6);
  }

  /** Printed by gdaltransform, GDAL 3.6.2 with PROJ 9.1.1. */
  @Test
  void gdalsPlaces_agree() {
    assertPlace("EPSG:32632", 7.5, 50.5, 393620.713059493, 5595299.99483387, 1e-5);
    assertPlace("EPSG:32630", -2.7804167, 55.6304167, 513825.320737244, 6164969.07711602, 1e-5);
    assertPlace("EPSG:32719", -70.011, -32.653, 405186.563006791, 6386729.07575127, 1e-5);
    assertPlace("EPSG:32760", 179.9, -44.25, 731529.141235722, 5096269.2062614, 1e-5);
    assertPlace("EPSG:32633", 9.1, 78.9, 373403.122632992, 8765215.48974787, 1e-5);
    assertPlace("EPSG:32632", 16, 47, 1032085.49283072, 5228992.99438876, 1e-5);
  }

  @Test
  void wayBack_givesThePlaceAgain() {
    Random random = new Random(7);
    for (int i = 0; i < 2000; i++) {
      UtmZone zone = new UtmZone(1 + random.nextInt(60), random.nextBoolean());
      double[] xy = {
        zone.middleLongitude() + (random.nextDouble() - 0.5) * 12, random.nextDouble() * 178 - 89
      };
      double[] there = xy.clone();
      zone.fromDegrees(there, 1);
      zone.toDegrees(there, 1);
      assertEquals(xy[0], there[0], 1e-9, zone + " " + xy[0] + " " + xy[1]);
      assertEquals(xy[1], there[1], 1e-10, zone + " " + xy[0] + " " + xy[1]);
    }
  }

  /**
   * Across the date line a place 3 degrees east of the middle is the same distance off as 3 degrees
   * west.
   */
  @Test
  void dateLine_isNoEdge() {
    double[] xy = {-179, 10, 173, 10, 181, 10};
    new UtmZone(60, true).fromDegrees(xy, 3);
    assertEquals(xy[0] - 500000, 500000 - xy[2], 1e-6);
    assertEquals(xy[0], xy[4], 1e-6);
  }

  @Test
  void zones_areSixDegreesWide() {
    assertEquals("EPSG:32632", UtmZone.at(9, 50).code());
    assertEquals("EPSG:32601", UtmZone.at(-180, 1).code());
    assertEquals("EPSG:32601", UtmZone.at(180, 1).code());
    assertEquals("EPSG:32660", UtmZone.at(179.999, 1).code());
    assertEquals("EPSG:32719", UtmZone.at(-70, -33).code());
    assertEquals(new UtmZone(7, false), UtmZone.of("EPSG:32707"));
    assertNull(UtmZone.of("EPSG:32661"));
    assertNull(UtmZone.of("EPSG:25832"));
  }

  private static void assertPlace(
      String code, double lon, double lat, double east, double north, double within) {
    double[] xy = {lon, lat};
    UtmZone.of(code).fromDegrees(xy, 1);
    assertEquals(east, xy[0], within, code);
    assertEquals(north, xy[1], within, code);
  }
}
