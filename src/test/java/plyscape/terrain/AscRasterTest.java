package plyscape.terrain;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import plyscape.fault.InputFault;
import plyscape.fault.Warnings;
import plyscape.terrain.crs.GroundCrs;
import plyscape.terrain.raster.Raster;

/** The ESRI ASCII grid; keywords after references.md, section 3 (format text). */
class AscRasterTest extends RasterTestBase {

  private static final String VALUES = "10 20 30 40\n50 60 -9999 80\n90 100 110 120\n";

  @Override
  Path write(Path dir) throws IOException {
    return text(
        "ncols 4\nnrows 3\nxllcorner 1000\nyllcorner 2000\ncellsize 10\nNODATA_value -9999\n"
            + VALUES);
  }

  @Override
  double[] westNorthCell() {
    return new double[] {1000, 2030, 10};
  }

  private Path text(String text) throws IOException {
    return Files.writeString(dir.resolve("ground.asc"), text);
  }

  private static Raster open(Path file) {
    return Rasters.open(file, new Warnings());
  }

  @Test
  void llcenter_liesHalfACellIn() throws IOException {
    try (Raster raster =
        open(text("NCOLS 4\nNROWS 3\nXLLCENTER 1005\nYLLCENTER 2005\nCELLSIZE 10\n" + VALUES))) {
      assertEquals(1000, raster.toGround().x(0, 0), 1e-9);
      assertEquals(2030, raster.toGround().y(0, 0), 1e-9);
    }
  }

  @Test
  void lineBreaksAndNodata_areFree() throws IOException {
    String oneLine = "10 20 30 40 50 60 -1 80\r\n90\t100 1.1e2 +120";
    try (Raster raster =
        open(
            text(
                "ncols 4 nrows 3 xllcorner 0 yllcorner 0 cellsize 10 nodata_value -1 "
                    + oneLine))) {
      assertArrayEquals(GROUND, raster.read(0, 0, 4, 3), 0);
    }
  }

  @Test
  void nanWords_areVoid() throws IOException {
    try (Raster raster =
        open(text("ncols 3\nnrows 1\nxllcorner 0\nyllcorner 0\ncellsize 1\nnan -INF 5"))) {
      assertArrayEquals(new double[] {Double.NaN, Double.NaN, 5}, raster.read(0, 0, 3, 1), 0);
    }
  }

  @Test
  void decimals_areReadToTheLastBit() throws IOException {
    String[] numbers = {
      "0.1", "-12.345", "123456.789012345", "8848.86", "1e-3", "0.30000000000000004"
    };
    try (Raster raster =
        open(
            text(
                "ncols 6\nnrows 1\nxllcorner 0\nyllcorner 0\ncellsize 1\n"
                    + String.join(" ", numbers)))) {
      double[] got = raster.read(0, 0, 6, 1);
      for (int i = 0; i < got.length; i++) {
        assertEquals(Double.parseDouble(numbers[i]), got[i], 0);
      }
    }
  }

  @Test
  void unequalCells_keepBothSizes() throws IOException {
    try (Raster raster =
        open(text("ncols 4\nnrows 3\nxllcorner 0\nyllcorner 0\ndx 10\ndy 20\n" + VALUES))) {
      assertEquals(40, raster.toGround().x(4, 0), 1e-9);
      assertEquals(60, raster.toGround().y(0, 0), 1e-9);
    }
  }

  @Test
  void badNumber_hasItsLineAndColumn() throws IOException {
    Path file = text("ncols 2\nnrows 2\nxllcorner 0\nyllcorner 0\ncellsize 1\n1 2\n3 x4\n");
    InputFault fault = assertThrows(InputFault.class, () -> open(file));
    assertEquals(7, fault.place().line());
    assertEquals(3, fault.place().column());
    assertTrue(fault.getMessage().contains("x4"), fault.getMessage());
  }

  @Test
  void tooManyValues_areAFault() throws IOException {
    Path file = text("ncols 2\nnrows 1\nxllcorner 0\nyllcorner 0\ncellsize 1\n1 2 3\n");
    assertTrue(assertThrows(InputFault.class, () -> open(file)).getMessage().contains("2 x 1"));
  }

  @Test
  void prjBesideIt_givesTheCrs() throws IOException {
    Path file = write(dir);
    Files.writeString(
        dir.resolve("ground.prj"),
        "GEOGCS[\"GCS_WGS_1984\",DATUM[\"D_WGS_1984\",SPHEROID[\"WGS_1984\",6378137.0,298.257223563]],"
            + "PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]]");
    try (Raster raster = open(file)) {
      assertEquals(GroundCrs.Kind.GEOGRAPHIC, raster.crs().kind());
    }
  }

  /**
   * CRS texts as they lie beside grids: WKT 1 and WKT 2 with a code (as GDAL 3.6.2 writes them), a
   * well-known name without one, the older lines of keyword and value, and a bare code.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "PROJCS[\"WGS 84 / UTM zone 32N\",AUTHORITY[\"EPSG\",\"32632\"]]|EPSG:32632",
        "PROJCRS[\"x\",BASEGEOGCRS[\"WGS 84\",ID[\"EPSG\",4326]],ID[\"EPSG\",25833]]|EPSG:25833",
        "PROJCS[\"WGS_1984_UTM_Zone_17S\",GEOGCS[\"g\"],UNIT[\"Meter\",1.0]]|EPSG:32717",
        "PROJCS[\"NAD_1983_UTM_Zone_13N\",GEOGCS[\"g\"],UNIT[\"Meter\",1.0]]|EPSG:26913",
        "Projection UTM;Zone 32;Datum WGS84;Units METERS;Parameters|EPSG:32632",
        "Projection    UTM;Zone -19;Datum WGS84;Units METERS|EPSG:32719",
        "Projection GEOGRAPHIC;Datum WGS84;Units DD|EPSG:4326",
        "EPSG:27700|EPSG:27700",
        "Projection STATEPLANE;Fipszone 3104;Datum NAD83|''"
      })
  void prj_isUnderstoodInItsForms(String text, String id) throws IOException {
    Path file = write(dir);
    Files.writeString(dir.resolve("ground.prj"), text.replace(";", "\n"));
    Warnings warnings = new Warnings();
    try (Raster raster = Rasters.open(file, warnings)) {
      assertEquals(id, raster.crs().id());
      assertEquals(id.isEmpty() ? 1 : 0, warnings.list().size());
    }
  }

  /** Quirks of text: CR line ends, a byte order mark, decimal commas, values beyond a sane head. */
  @Test
  void textQuirks() throws IOException {
    String head = "ncols 4\nnrows 3\nxllcorner 0\nyllcorner 0\ncellsize 10\n";
    for (String whole :
        new String[] {(head + VALUES).replace('\n', '\r'), "\uFEFF" + head + VALUES}) {
      try (Raster raster = open(text(whole))) {
        assertArrayEquals(GROUND, raster.read(0, 0, 4, 3), 0);
      }
    }
    Path comma = text(head + VALUES.replace("30", "30,5"));
    InputFault fault = assertThrows(InputFault.class, () -> open(comma));
    assertTrue(fault.getMessage().contains("'30,5'"), fault.getMessage());
    assertTrue(fault.getMessage().contains("point"), fault.getMessage());
    Path huge = text(head.replace("4", "2000000000").replace("nrows 3", "nrows 2000000000") + "1");
    assertTrue(
        assertThrows(plyscape.fault.Fault.class, () -> open(huge))
            .getMessage()
            .contains("2000000000 x 2000000000"));
  }

  @Test
  void aHeadWithoutAPlace_isAFault() throws IOException {
    String whole = Files.readString(write(dir));
    for (String line : whole.lines().filter(l -> l.matches("(?i)(xll|yll|cellsize).*")).toList()) {
      Path file =
          Files.writeString(
              dir.resolve("nowhere.asc"), whole.replace(line, line.split("\\s+")[0] + " nan"));
      InputFault fault = assertThrows(InputFault.class, () -> Rasters.open(file, new Warnings()));
      assertTrue(fault.getMessage().contains("is NaN"), fault.getMessage());
    }
  }
}
