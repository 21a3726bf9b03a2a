package plyscape.terrain.crs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.job.Job;
import plyscape.job.TerrainOptions;
import plyscape.job.TerrainSpec;
import plyscape.terrain.Rasters;
import plyscape.terrain.Terrain;
import plyscape.terrain.TerrainReader;
import plyscape.terrain.raster.Raster;

/**
 * Points from one CRS to another as {@code gdaltransform} of GDAL 3.6.2 with PROJ 9.1.1 gives them:
 * with datum shifts, and on a sphere, where by way of the Earth's centre a latitude of 45 degrees
 * would come out 0.19 degrees, 21 km, farther north.
 */
class CrsMapsTest {

  /** A sinusoidal projection on a sphere of 6371007.181 m, as GDAL writes it in WKT 1. */
  private static final String SINUSOIDAL =
      "PROJCS[\"unknown\",GEOGCS[\"unknown\",DATUM[\"unknown\",SPHEROID[\"unknown\",6371007.181,0]],"
          + "PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433]],PROJECTION[\"Sinusoidal\"],"
          + "PARAMETER[\"longitude_of_center\",0],PARAMETER[\"false_easting\",0],"
          + "PARAMETER[\"false_northing\",0],UNIT[\"metre\",1],AXIS[\"Easting\",EAST],"
          + "AXIS[\"Northing\",NORTH]]";

  @TempDir Path dir;

  private static double[] mapped(String from, String to, double x, double y) {
    double[] xy = {x, y};
    CrsLookup.between(from, to, Place.file("f")).map(xy, 1);
    return xy;
  }

  @ParameterizedTest
  @CsvSource({
    "-100000, 300000, -0.900318550283952, 2.69796177677934",
    "786267.752870815, 5003777.33894935, 10, 45"
  })
  void projectedSphere_keepsItsLatitudes(double x, double y, double longitude, double latitude) {
    double[] degrees = mapped(SINUSOIDAL, "EPSG:4326", x, y);
    assertEquals(longitude, degrees[0], 1e-9);
    assertEquals(latitude, degrees[1], 1e-9);
    double[] back = mapped("EPSG:4326", SINUSOIDAL, longitude, latitude);
    assertEquals(x, back[0], 1e-3);
    assertEquals(y, back[1], 1e-3);
  }

  @Test
  void degreesOnASphere_goToUtmAsThoseOfWgs84() {
    double[] utm = mapped("EPSG:4047", "EPSG:32632", 10, 45);
    assertEquals(578815.302916711, utm[0], 1e-3);
    assertEquals(4983436.7683493, utm[1], 1e-3);
  }

  /**
   * Datum shift: OSGB36 degrees (EPSG:4277), 1 W 52 N, by GDAL 3.6.2 with PROJ 9.1.1 and no grids:
   * {@code gdaltransform -s_srs EPSG:4277 -t_srs EPSG:32630}. Both use a shift of seven parameters,
   * good to some metres; without it the place would be about 100 m off.
   */
  @Test
  void datumShift_isApplied() {
    double[] xy = mapped("EPSG:4277", "EPSG:32630", -1, 52);
    assertEquals(637188.2609, xy[0], 3);
    assertEquals(5762972.8148, xy[1], 3);
  }

  /**
   * A CRS spelled out in keys, Bessel ellipsoid with a shift of seven parameters; 2.7 W 55.6 N by
   * GDAL 3.6.2: {@code gdaltransform -s_srs EPSG:4326 -t_srs "+proj=tmerc +lat_0=55 +lon_0=-2.5
   * +k=0.9999 +x_0=1000 +y_0=2000 +ellps=bessel +towgs84=598.1,73.7,418.2,0.202,0.045,-2.455,6.7"}.
   */
  @Test
  void crsInKeys_keepsItsDatumShift() throws IOException {
    Path file = Path.of("src/test/resources/plyscape/terrain/bessel-shift.tif");
    try (Raster raster = Rasters.open(file, new Warnings())) {
      double[] xy = mapped("EPSG:4326", raster.crs().id(), -2.7, 55.6);
      assertEquals(-11657.49005, xy[0], 0.01);
      assertEquals(68994.83174, xy[1], 0.01);
      assertEquals("unnamed Transverse_Mercator", CrsLookup.label(raster.crs().id()));
    }
  }

  private static String codes(String crs) {
    Warnings warnings = new Warnings();
    CrsLookup.tellSphere(crs, Place.file("f"), "f.tif", warnings);
    return warnings.list().stream().map(w -> w.code()).collect(Collectors.joining(" "));
  }

  @Test
  void sphere_isTold() {
    assertEquals("crs-sphere", codes(SINUSOIDAL));
    assertEquals("crs-sphere", codes("EPSG:4047"));
  }

  /** Web mercator's formula is a sphere's, but its latitudes are WGS 84's by definition. */
  @ParameterizedTest
  @ValueSource(strings = {"EPSG:4326", "EPSG:32632", "EPSG:3857", "EPSG:27700", "EPSG:4258", ""})
  void ellipsoids_arent(String crs) {
    assertEquals("", codes(crs));
  }

  /** From file to terrain: a crop in degrees falls where the sphere's own degrees say. */
  @Test
  void cropInDegrees_fallsOnTheSphere_andItIsTold() throws IOException {
    // Cells of 100 m about 0 E, 45 N, where a sinusoidal map keeps its shape.
    double north = 6371007.181 * Math.toRadians(45);
    StringBuilder grid =
        new StringBuilder("ncols 60\nnrows 60\nxllcenter -2950\n")
            .append("yllcenter ")
            .append(north - 2950)
            .append("\ncellsize 100\n");
    for (int i = 0; i < 3600; i++) {
      grid.append(100 + i / 60).append(i % 60 == 59 ? '\n' : ' ');
    }
    Path file = Files.writeString(dir.resolve("s.asc"), grid);
    Files.writeString(dir.resolve("s.prj"), SINUSOIDAL);
    Warnings warnings = new Warnings();
    Box crop = new Box(-0.01, 44.99, 0.01, 45.01);
    Terrain terrain =
        TerrainReader.read(
            new TerrainSpec(
                file,
                crop,
                "EPSG:4326",
                List.of(1, 2),
                TerrainSpec.NamedBands.SCALE,
                0,
                TerrainOptions.PLAIN),
            new Job.PanelSpec(240, 240, 6),
            1.5,
            warnings);
    assertTrue(
        warnings.list().stream().anyMatch(w -> w.code().equals("crs-sphere")), warnings.toString());
    // 0.02 degrees of the sphere's meridian about the middle of the raster.
    double metres = 6371007.181 * Math.toRadians(0.01);
    assertEquals(north - metres, terrain.frame().ground().minY(), 0.01);
    assertEquals(north + metres, terrain.frame().ground().maxY(), 0.01);
  }

  /**
   * A text of a .prj that names a datum without a shift: places as GDAL 3.6.2 with PROJ 9.1.1 has
   * them for EPSG:27700 (562680.912, 6177970.805), not 120 m off.
   */
  @Test
  void datumWithoutAShift_getsTheRegisters() {
    String prj =
        "PROJCS[\"British_National_Grid\",GEOGCS[\"GCS_OSGB_1936\",DATUM[\"D_OSGB_1936\",SPHEROID["
            + "\"Airy_1830\",6377563.396,299.3249646]],PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\","
            + "0.0174532925199433]],PROJECTION[\"Transverse_Mercator\"],PARAMETER[\"False_Easting\","
            + "400000.0],PARAMETER[\"False_Northing\",-100000.0],PARAMETER[\"Central_Meridian\",-2.0],"
            + "PARAMETER[\"Scale_Factor\",0.9996012717],PARAMETER[\"Latitude_Of_Origin\",49.0],"
            + "UNIT[\"Meter\",1.0]]";
    double[] xy = {400_000, 650_000};
    CrsLookup.between(prj, "EPSG:32630", Place.file("roads.prj")).map(xy, 1);
    assertEquals(562_680.912, xy[0], 0.1);
    assertEquals(6_177_970.805, xy[1], 0.1);
  }

  /** At 47 N 100 W the shift without a grid is 14.8 m off what PROJ 9.1.1 gives with its grid. */
  @Test
  void shiftWithoutItsGrid_isKnownToBeOff() {
    Place place = Place.file("roads.shp");
    assertEquals(15, CrsLookup.shiftErrorM("EPSG:26714", "EPSG:32614", place), 0);
    assertEquals(0, CrsLookup.shiftErrorM("EPSG:26714", "EPSG:26715", place), 0);
    assertEquals(0, CrsLookup.shiftErrorM("EPSG:4326", "EPSG:32614", place), 0);
  }
}
