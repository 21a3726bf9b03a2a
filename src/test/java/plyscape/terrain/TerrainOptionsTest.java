package plyscape.terrain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.InputFault;
import plyscape.fault.JobFault;
import plyscape.fault.Warning;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.job.GroundCover;
import plyscape.job.Job;
import plyscape.job.TerrainOptions;
import plyscape.job.TerrainOptions.Centre;
import plyscape.job.TerrainOptions.Encoding;
import plyscape.job.TerrainOptions.Unit;
import plyscape.job.TerrainSpec;
import plyscape.terrain.crs.CrsLookup;
import plyscape.terrain.raster.Affine;
import plyscape.terrain.tiff.TiffFixture;

/**
 * The rarer ways to take a terrain: CRS, units, scale, centre, mosaics, turned and very wide
 * rasters.
 */
class TerrainOptionsTest {

  private static final Job.PanelSpec PANEL = new Job.PanelSpec(240, 240, 6);

  @TempDir Path dir;

  private final Warnings warnings = new Warnings();

  /** A job's terrain, key by key. */
  private final class Taken {
    private final Path file;
    private Box crop;
    private String cropCrs = "";
    private List<Path> more = List.of();
    private String crs = "";
    private Unit unit = Unit.FROM_FILE;
    private Double cell;
    private Double nodata;
    private Centre centre;
    private Double groundWidth;
    private Double scale;

    Taken(Path file) {
      this.file = file;
    }

    Terrain read() {
      TerrainOptions options =
          new TerrainOptions(
              more,
              new TerrainOptions.RasterSpec(crs, unit, nodata, Encoding.AUTO, cell),
              new TerrainOptions.PlaceSpec(centre, groundWidth, scale),
              null,
              GroundCover.NONE);
      return TerrainReader.read(
          new TerrainSpec(
              file, crop, cropCrs, List.of(1, 2), TerrainSpec.NamedBands.SCALE, 0, options),
          PANEL,
          1.5,
          warnings);
    }
  }

  private List<String> codes() {
    return warnings.list().stream().map(Warning::code).toList();
  }

  /** A plane {@code 100 + x-step * column + y-step * row from the south}. */
  private Path asc(
      String name,
      int columns,
      int rows,
      double west,
      double south,
      double cell,
      double perColumn,
      double perRow)
      throws IOException {
    StringBuilder out =
        new StringBuilder(
            String.format(
                Locale.ROOT,
                "ncols %d\nnrows %d\nxllcorner %.12f\nyllcorner %.12f\ncellsize %.15f\n",
                columns,
                rows,
                west,
                south,
                cell));
    for (int row = rows - 1; row >= 0; row--) {
      for (int column = 0; column < columns; column++) {
        out.append(100 + perColumn * column + perRow * row).append(' ');
      }
    }
    return Files.writeString(dir.resolve(name), out.toString());
  }

  @Test
  void unit_convertsElevations() throws IOException {
    Taken t = new Taken(asc("t.asc", 10, 10, 0, 0, 100, 1, 0));
    t.unit = Unit.FT;
    assertEquals(30.48, t.read().zminM(), 1e-12);
    t.unit = Unit.US_FT;
    assertEquals(100 * 1200.0 / 3937, t.read().zminM(), 1e-12);
    t.unit = Unit.CM;
    assertEquals(1, t.read().zminM(), 1e-12);
  }

  /** A file that doesn't say what its voids are: that is seen, and the job can tell. */
  @Test
  void nodata_canBeTold() throws IOException {
    Path file = asc("t.asc", 10, 10, 0, 0, 1000, 1, 0);
    Files.writeString(file, Files.readString(file).replace("105.0", "-32768"));
    Taken t = new Taken(file);
    assertEquals(-32768, t.read().zminM(), 0);
    assertTrue(warnings.list().stream().anyMatch(w -> w.message().contains("terrain.nodata")));
    t.nodata = -32768.0;
    assertEquals(100, t.read().zminM(), 0);
    assertEquals(10, t.read().voidsFilled());
    Files.writeString(file, Files.readString(file).replace("-32768", "3.4e38"));
    assertEquals(10, new Taken(file).read().voidsFilled());
  }

  @Test
  void unlikelyRelief_isSaid() throws IOException {
    new Taken(asc("steep.asc", 10, 10, 0, 0, 10, 20, 0)).read();
    // 180 m of relief on 10 cells of 10 m.
    assertTrue(warnings.list().get(1).message().contains("180.0 m is 1.8 times"), codes() + "");
    assertTrue(codes().contains("steep-relief"), codes().toString());
    new Taken(asc("high.asc", 10, 10, 0, 0, 10000, 2000, 0)).read();
    assertTrue(codes().contains("elevation-range"), codes().toString());
  }

  /** A starter job's CRS left in over a GeoTIFF of another would move the ground in silence. */
  @Test
  void anotherCrsThanTheFiles_isTakenAndTold() throws IOException {
    Path file =
        new TiffFixture(3, 3, 1, 2, 3, 4, 5, 6, 7, 8, 9)
            .placed(500000, 5200000, 30, 30)
            .crs(32632, true, false)
            .write(dir.resolve("utm.tif"));
    Taken same = new Taken(file);
    same.crs = "EPSG:32632";
    same.read();
    assertFalse(codes().contains("crs-overridden"), codes().toString());
    Taken other = new Taken(file);
    other.crs = "EPSG:32633";
    assertEquals("EPSG:32633", other.read().crs());
    assertTrue(codes().contains("crs-overridden"), codes().toString());
  }

  @Test
  void degreesWithoutCrs_areRefusedAndTakenWithOne() throws IOException {
    Path file = asc("deg.asc", 40, 30, -2.8, 55.5, 1 / 1200.0, 3, 2);
    InputFault fault = assertThrows(InputFault.class, () -> new Taken(file).read());
    assertTrue(fault.getMessage().contains("EPSG:4326"), fault.getMessage());
    Taken t = new Taken(file);
    t.crs = "EPSG:4326";
    assertEquals("EPSG:32630", t.read().crs());
  }

  /** Small local ground must not be taken for degrees. */
  /** A crop in metres, as a map program shows them, over a raster in degrees. */
  @Test
  void cropInMetresOverDegrees_asksForItsCrs() throws IOException {
    Taken t = new Taken(asc("degrees.asc", 20, 20, 9, 50, 0.001, 1, 0));
    t.crs = "EPSG:4326";
    t.crop = new Box(500200, 5538700, 501200, 5539700);
    InputFault fault = assertThrows(InputFault.class, t::read);
    assertTrue(
        fault.getMessage().contains("500200, 5538700, 501200, 5539700, which can't be degrees"),
        fault.getMessage());
    t.cropCrs = "EPSG:32632";
    assertEquals(1000, t.read().frame().ground().width(), 1e-6);
  }

  @Test
  void localPlanes_arentDegrees() throws IOException {
    assertEquals(
        10, new Taken(asc("local.asc", 10, 10, 0, 0, 0.05, 1, 0)).read().zmaxM() - 99, 1e-9);
    assertEquals(109, new Taken(asc("metres.asc", 10, 10, 20, 30, 1, 1, 0)).read().zmaxM(), 1e-9);
  }

  @Test
  void scale_setsTheCarvedSize() throws IOException {
    Taken t = new Taken(asc("t.asc", 50, 40, 1000, 2000, 100, 1, 0));
    t.scale = 25000.0;
    // 5 km and 4 km at 1:25000 are 200 and 160 mm, centred on 240 x 240.
    assertEquals(new Box(20, 40, 220, 200), t.read().frame().panel());
    t.scale = 20000.0;
    JobFault fault = assertThrows(JobFault.class, t::read);
    assertTrue(fault.getMessage().contains("1:21930"), fault.getMessage());
  }

  @Test
  void centre_takesABoxOfThePanelsShape() throws IOException {
    Taken t = new Taken(asc("t.asc", 50, 40, 1000, 2000, 100, 1, 0));
    t.centre = new Centre(3500, 4000);
    t.groundWidth = 2280.0;
    assertEquals(new Box(2360, 2860, 4640, 5140), t.read().frame().ground());
    t.groundWidth = null;
    t.scale = 10000.0;
    assertEquals(new Box(2360, 2860, 4640, 5140), t.read().frame().ground());
    assertEquals(new Box(6, 6, 234, 234), t.read().frame().panel());
  }

  @Test
  void mosaic_joinsTilesThatShareACellRow() throws IOException {
    // Columns 0..9 and 9..18 of one plane, as tiles of points on the degree lines share one.
    Taken t = new Taken(asc("west.asc", 10, 10, 0, 0, 10, 1, 2));
    Path east = asc("east.asc", 10, 10, 90, 0, 10, 1, 2);
    Files.writeString(east, Files.readString(east).replaceAll("(?m)^100.*", ""));
    Path eastAgain = asc("east2.asc", 10, 10, 90, 0, 10, 1, 2);
    t.more = List.of(eastAgain);
    Terrain joined = t.read();
    assertEquals(new Box(0, 0, 190, 100), joined.frame().ground());
    assertEquals(19, joined.elevationM().frame().columns());
    // The first raster gives the shared column.
    assertEquals(109, joined.elevationM().at(9, 0), 0);
    assertEquals(101, joined.elevationM().at(10, 0), 0);
    assertEquals(0, joined.voidsFilled());
  }

  @Test
  void mosaic_samplesTilesOnOtherCells() throws IOException {
    Taken t = new Taken(asc("west.asc", 10, 10, 0, 0, 10, 1, 0));
    // The same plane on cells of 5 m: 0.5 a column; column 0 is centred at 92.5, which is 8.75
    // columns of the first.
    t.more = List.of(asc("fine.asc", 40, 20, 90, 0, 5, 0.5, 0));
    Terrain joined = t.read();
    assertEquals(29, joined.elevationM().frame().columns());
    assertEquals(109, joined.elevationM().at(9, 5), 1e-9);
    // Centre of column 15 is at 155: 65 m into the fine raster, 12.5 of its columns from its first
    // centre.
    assertEquals(100 + 0.5 * 12.5, joined.elevationM().at(15, 5), 1e-9);
  }

  @Test
  void mosaicOfTwoCrs_isRefused() throws IOException {
    Taken t = new Taken(asc("a.asc", 10, 10, 0, 0, 10, 1, 0));
    Path other = asc("b.asc", 10, 10, 100, 0, 10, 1, 0);
    Files.writeString(
        dir.resolve("b.prj"),
        "PROJCS[\"x\",GEOGCS[\"g\",DATUM[\"d\",SPHEROID[\"WGS84\",6378137,298.257223563]],PRIMEM[\"Greenwich\",0],"
            + "UNIT[\"degree\",0.0174532925199433]],PROJECTION[\"Transverse_Mercator\"],PARAMETER[\"central_meridian\",9],"
            + "PARAMETER[\"latitude_of_origin\",0],PARAMETER[\"scale_factor\",1],PARAMETER[\"false_easting\",0],"
            + "PARAMETER[\"false_northing\",0],UNIT[\"metre\",1]]");
    t.more = List.of(other);
    assertThrows(InputFault.class, t::read);
  }

  /** A grid turned by 30 degrees: the plane comes out as it lies on the ground. */
  @Test
  void turnedGrid_isResampledNorthUp() throws IOException {
    double cos = Math.cos(Math.toRadians(30)) * 10;
    double sin = 5;
    int n = 60;
    double[] values = new double[n * n];
    Affine a = new Affine(1000, cos, sin, 2000, sin, -cos);
    for (int i = 0; i < values.length; i++) {
      values[i] = 0.1 * a.x(i % n + 0.5, i / n + 0.5) + 0.2 * a.y(i % n + 0.5, i / n + 0.5);
    }
    double[] matrix = {cos, sin, 0, 1000, sin, -cos, 0, 2000, 0, 0, 0, 0, 0, 0, 0, 1};
    Path file =
        new TiffFixture(n, n, values)
            .type("float64")
            .tag(34264, matrix)
            .crs(32632, true, false)
            .write(dir.resolve("r.tif"));
    Terrain t = new Taken(file).read();
    assertTrue(codes().contains("turned-raster"));
    double x = a.x(30, 30);
    double y = a.y(30, 30);
    assertEquals(
        0.1 * x + 0.2 * y, t.elevationM().bilinear(t.frame().panelX(x), t.frame().panelY(y)), 1e-9);
    assertEquals(1000, t.frame().ground().minX(), 1e-9);
    assertEquals(1000 + n * (cos + sin), t.frame().ground().maxX(), 1e-9);
  }

  /** Cells of 20 by 10 m keep their shape. */
  @Test
  void unequalCells_keepTheGroundsShape() throws IOException {
    Path file =
        new TiffFixture(10, 10, new double[100])
            .placed(0, 100, 20, 10)
            .crs(32632, true, false)
            .write(dir.resolve("u.tif"));
    Box panel = new Taken(file).read().frame().panel();
    assertEquals(2, panel.width() / panel.height(), 1e-9);
  }

  /**
   * A map in US survey feet, EPSG:2263: metres of a cell and of the panel scale follow; the unit of
   * elevations isn't told, which is said.
   */
  @Test
  void mapInFeet_isMeasuredInMetres() throws IOException {
    Path file =
        new TiffFixture(10, 10, new double[100])
            .placed(1000000, 200000, 100, 100)
            .crs(2263, true, false)
            .write(dir.resolve("feet.tif"));
    Terrain t = new Taken(file).read();
    assertEquals(100 * 1200.0 / 3937, t.cellM(), 1e-9);
    assertTrue(codes().contains("map-unit"));
  }

  /**
   * Web tiles: cells stay as they are, metres are those of the ground. At 60 N a unit of EPSG:3857
   * is about half a metre (cos 60; 0.50126 along X and 0.50042 along Y on the ellipsoid).
   */
  @Test
  void webMercator_keepsItsCellsAndHasTrueSizes() throws IOException {
    double north = 6378137 * Math.log(Math.tan(Math.PI / 4 + Math.toRadians(60) / 2));
    double[] values = new double[200 * 200];
    for (int i = 0; i < values.length; i++) {
      values[i] = i % 200;
    }
    Path file =
        new TiffFixture(200, 200, values)
            .placed(1_000_000, north + 2000, 20, 20)
            .crs(3857, true, false)
            .write(dir.resolve("web.tif"));
    Taken t = new Taken(file);
    t.centre = new Centre(1_002_000, north);
    t.groundWidth = 1000.0;
    Terrain read = t.read();
    assertTrue(codes().contains("map-scale"), codes().toString());
    assertEquals("EPSG:3857", read.crs());
    assertEquals(1000.0 / 228, read.frame().metresPerMm(), 1e-9);
    assertEquals(1000 / 0.50084, read.frame().ground().width(), 0.2);
    assertEquals(20 * 0.50084, read.cellM(), 1e-3);
    t.groundWidth = null;
    t.scale = 5000.0;
    assertEquals(5, t.read().frame().metresPerMm(), 1e-9);
  }

  /** Degrees times a constant, in metres (EPSG:4087): shape is kept only on another plane. */
  @Test
  void stretchedPlane_isTakenToUtm() throws IOException {
    Path file =
        new TiffFixture(50, 50, new double[2500])
            .placed(1_113_194.9, 6_679_169.4, 100, 100)
            .crs(4087, true, false)
            .write(dir.resolve("flat.tif"));
    Terrain read = new Taken(file).read();
    assertTrue(codes().contains("reprojected"), codes().toString());
    assertEquals("EPSG:32632", read.crs());
    // 10 E, 60 N: 5000 m along the parallel of the plane are half as many on the ground.
    assertEquals(2.0, read.frame().ground().height() / read.frame().ground().width(), 0.05);
  }

  /** Longitudes of 0 to 360 and a raster too wide for one zone: the crop decides. */
  @Test
  void worldRaster_isCutToTheCrop() throws IOException {
    Taken t = new Taken(asc("world.asc", 360, 180, 0, -90, 1, 1, 1));
    t.crs = "EPSG:4326";
    assertThrows(JobFault.class, t::read);
    t.crop = new Box(284, 40, 290, 46);
    Terrain cut = t.read();
    assertEquals("EPSG:32618", cut.crs());
    // 287 E is 73 W, column 286.5 of the plane; 43 N is row 132.5.
    double[] xy = {-73, 43};
    CrsLookup.between("EPSG:4326", "EPSG:32618", new plyscape.fault.Place("", 0, 0, "")).map(xy, 1);
    double got = cut.elevationM().bilinear(cut.frame().panelX(xy[0]), cut.frame().panelY(xy[1]));
    assertEquals(100 + 286.5 + 132.5, got, 0.05);
  }

  @Test
  void cell_placesARasterThatDoesntSay() throws IOException {
    Path png = dir.resolve("p.png");
    javax.imageio.ImageIO.write(
        new java.awt.image.BufferedImage(20, 10, java.awt.image.BufferedImage.TYPE_BYTE_GRAY),
        "png",
        png.toFile());
    Taken t = new Taken(png);
    t.cell = 30.0;
    assertEquals(new Box(0, 0, 600, 300), t.read().frame().ground());
    Taken placed = new Taken(asc("t.asc", 10, 10, 0, 0, 10, 1, 0));
    placed.cell = 30.0;
    assertThrows(InputFault.class, placed::read);
  }
}
