package plyscape.terrain.tiff;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.terrain.Rasters;
import plyscape.terrain.crs.CrsLookup;
import plyscape.terrain.crs.GroundCrs;
import plyscape.terrain.raster.Raster;

/**
 * CRSs that a GeoTIFF spells out in keys: keys as GDAL 3.6.2 wrote them, points as its {@code
 * gdaltransform} gives them on WGS 84.
 */
class SpelledCrsTest {

  /** 1e-6 degrees are 0.11 m; the oblique Mercator of the bundle is 0.08 m off. */
  private static final double NEAR_DEGREES = 1e-6;

  @TempDir Path dir;

  /** A file with the keys, each as number=value, several values parted by slashes. */
  private Path file(String keys) throws IOException {
    TreeMap<Integer, String> sorted = new TreeMap<>();
    for (String key : keys.strip().split(" ")) {
      sorted.put(Integer.parseInt(key.split("=")[0]), key.split("=")[1]);
    }
    List<Integer> directory = new ArrayList<>(List.of(1, 1, 0, sorted.size()));
    List<Double> doubles = new ArrayList<>();
    sorted.forEach(
        (key, value) -> {
          boolean whole = value.matches("\\d+");
          String[] parts = value.split("/");
          directory.addAll(
              whole
                  ? List.of(key, 0, 1, Integer.parseInt(value))
                  : List.of(key, 34736, parts.length, doubles.size()));
          for (String part : whole ? new String[0] : parts) {
            doubles.add(Double.parseDouble(part));
          }
        });
    return new TiffFixture(2, 2, 1, 2, 3, 4)
        .placed(0, 20, 10, 10)
        .tag(34735, directory.stream().mapToInt(i -> i).toArray())
        .tag(34736, doubles.stream().mapToDouble(d -> d).toArray())
        .write(dir.resolve("c.tif"));
  }

  @ParameterizedTest
  @CsvFileSource(resources = "/plyscape/terrain/spelled-crs.csv")
  void point_isWhereAnotherReaderPutsIt(
      String name, double x, double y, double longitude, double latitude, String keys)
      throws IOException {
    try (Raster raster = Rasters.open(file(keys), new Warnings())) {
      double[] xy = {x, y};
      CrsLookup.between(raster.crs().id(), "EPSG:4326", Place.file(name)).map(xy, 1);
      assertEquals(longitude, xy[0], NEAR_DEGREES, name);
      assertEquals(latitude, xy[1], NEAR_DEGREES, name);
    }
  }

  /** The text with which GDAL 3.6.2 marks web mercator that isn't given by its code. */
  @Test
  void webMercator_isKnownByItsText() throws IOException {
    String text = "ESRI PE String = PROJCS[\"a\",PROJECTION[\"Mercator_Auxiliary_Sphere\"]]|";
    Path file =
        new TiffFixture(2, 2, 1, 2, 3, 4)
            .placed(0, 20, 10, 10)
            .tag(34735, new int[] {1, 1, 0, 2, 1024, 0, 1, 32767, 3073, 34737, text.length(), 0})
            .tag(34737, text)
            .write(dir.resolve("w.tif"));
    try (Raster raster = Rasters.open(file, new Warnings())) {
      assertEquals("EPSG:3857", raster.crs().id());
    }
  }

  /**
   * Found by mutation: a latitude of origin beyond all sense made the bundle throw at its own
   * message.
   */
  @Test
  void senselessParameters_giveNoPlace() throws IOException {
    Path file =
        file(
            "1024=1 2048=4269 3072=32767 3074=32767 3075=1 3076=9003 3080=-76.5 3081=5.2e21"
                + " 3082=820208.3 3083=0.0 3092=0.9999");
    try (Raster raster = Rasters.open(file, new Warnings())) {
      double[] xy = {823000, 200500};
      CrsLookup.between(raster.crs().id(), "EPSG:4326", Place.file("f")).map(xy, 1);
      assertTrue(Double.isNaN(xy[0]) || Math.abs(xy[0]) <= 360, "" + xy[0]);
    } catch (InputFault refused) {
      assertTrue(refused.getMessage().contains("c.tif"), refused.getMessage());
    }
  }

  /** Heights in feet by their vertical CRS (EPSG register: 6360 NAVD88 in US survey feet). */
  @ParameterizedTest
  @CsvSource({
    "4096=6360, 0.3048006096012192",
    "4096=8228, 0.3048",
    "4096=5773, 1",
    "4099=9003, 0.3048006096012192",
    "4099=9001, 1"
  })
  void heights_haveTheUnitOfTheirCrs(String key, double metres) throws IOException {
    try (Raster raster = Rasters.open(file("1024=1 3072=32632 " + key), new Warnings())) {
      assertEquals(metres, raster.metresPerValue(), 1e-15);
      assertEquals(key.startsWith("4099") || metres != 1, raster.unitStated());
    }
  }

  /** A local plane in US survey feet, as GDAL 3.6.2 writes LOCAL_CS: a unit and no model. */
  @Test
  void localPlane_keepsItsUnit() throws IOException {
    try (Raster raster = Rasters.open(file("1025=1 3076=9003"), new Warnings())) {
      assertEquals(GroundCrs.Kind.NONE, raster.crs().kind());
      assertEquals(1200.0 / 3937, raster.crs().metresPerUnit(), 1e-15);
    }
  }
}
