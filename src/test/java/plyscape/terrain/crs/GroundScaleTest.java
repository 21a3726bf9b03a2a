package plyscape.terrain.crs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import plyscape.fault.Place;
import plyscape.grid.Box;

class GroundScaleTest {

  private static GroundCrs crs(String id) {
    return CrsLookup.describe(id, Place.file(""));
  }

  /** On its central meridian UTM shrinks by 0.9996 (its definition), the same both ways. */
  @Test
  void utm_isTheInverseOfItsScale() {
    GroundScale scale =
        GroundScale.over(crs("EPSG:32632"), new Box(499900, 5_200_000, 500100, 5_200_200));
    assertEquals(1 / 0.9996, scale.metresX(), 1e-7);
    assertEquals(1 / 0.9996, scale.metresY(), 1e-7);
    assertEquals(0, scale.spread(), 1e-7);
  }

  /**
   * Snyder, USGS PP 1395, p. 269: k = 0.9997989 at 40.5 N 73.5 W (Clarke 1866; another ellipsoid of
   * that size changes k by less than 1e-7).
   */
  @Test
  void transverseMercator_agreesWithThePublishedScale() {
    GroundCrs tm =
        crs(
            "PROJCS[\"x\",GEOGCS[\"g\",DATUM[\"d\",SPHEROID[\"s\",6378137,298.257223563]],"
                + "PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433]],"
                + "PROJECTION[\"Transverse_Mercator\"],PARAMETER[\"central_meridian\",-75],"
                + "PARAMETER[\"latitude_of_origin\",0],PARAMETER[\"scale_factor\",0.9996],"
                + "PARAMETER[\"false_easting\",0],PARAMETER[\"false_northing\",0],UNIT[\"m\",1]]");
    GroundScale scale = GroundScale.over(tm, new Box(127000, 4484000, 127200, 4484200));
    assertEquals(1 / 0.9997989, scale.metresPerUnit(), 1e-6);
  }

  /**
   * EPSG:3857 (x = a lon, y = a ln tan(45 + lat / 2), IOGP 373-07-2): on the ellipsoid a unit is
   * cos(lat) nu / a along X and cos(lat) rho / a along Y.
   */
  @Test
  void webMercator_isStretchedByTheLatitude() {
    double lat = Math.toRadians(60);
    double y = 6378137 * Math.log(Math.tan(Math.PI / 4 + lat / 2));
    GroundScale scale = GroundScale.over(crs("EPSG:3857"), new Box(999, y - 1, 1001, y + 1));
    double e2 = 0.00669437999014;
    double w = Math.sqrt(1 - e2 * 0.75);
    assertEquals(0.5 / w, scale.metresX(), 1e-7);
    assertEquals(0.5 * (1 - e2) / (w * w * w), scale.metresY(), 1e-7);
    assertTrue(scale.spread() < 0.004);
  }
}
