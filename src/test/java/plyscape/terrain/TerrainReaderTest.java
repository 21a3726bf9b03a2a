package plyscape.terrain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.InputFault;
import plyscape.fault.JobFault;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.job.Job;
import plyscape.job.TerrainOptions;
import plyscape.job.TerrainSpec;

/**
 * The stages of reading, on grids small enough to reckon by hand and on real ground against another
 * reader's numbers.
 */
class TerrainReaderTest {

  private static final Path DATA = Path.of("src/test/resources/plyscape/terrain");
  private static final Job.PanelSpec PANEL = new Job.PanelSpec(240, 240, 6);

  @TempDir Path dir;

  private final Warnings warnings = new Warnings();

  private Terrain read(Path file, Box crop, String crs, double smoothingMm) {
    TerrainSpec spec =
        new TerrainSpec(
            file,
            crop,
            crs,
            List.of(1, 2),
            TerrainSpec.NamedBands.SCALE,
            smoothingMm,
            TerrainOptions.PLAIN);
    return TerrainReader.read(spec, PANEL, 1.5, warnings);
  }

  private Path asc(int columns, int rows, double cell, String values) throws IOException {
    return Files.writeString(
        dir.resolve("t.asc"),
        "ncols "
            + columns
            + "\nnrows "
            + rows
            + "\nxllcorner 0\nyllcorner 0\ncellsize "
            + cell
            + "\n"
            + values);
  }

  /** Plane z = x + 2y over 8 x 6 cells of 10 m. */
  private Path plane() throws IOException {
    StringBuilder out = new StringBuilder();
    for (int row = 5; row >= 0; row--) {
      for (int column = 0; column < 8; column++) {
        out.append(column * 10 + 5 + 2 * (row * 10 + 5)).append(' ');
      }
    }
    return asc(8, 6, 10, out.toString());
  }

  @Test
  void whole_isFittedCentredAndKeepsItsAspect() throws IOException {
    Terrain t = read(plane(), null, "", 0);
    assertEquals(new Box(0, 0, 80, 60), t.frame().ground());
    assertEquals(new Box(6, 34.5, 234, 205.5), t.frame().panel());
    assertEquals(28.5, t.elevationM().frame().cellX(), 1e-12);
    assertEquals(15, t.zminM(), 0);
    assertEquals(185, t.zmaxM(), 0);
    assertEquals(10, t.cellM(), 0);
    assertEquals(0, t.voidsFilled());
    assertEquals("no-crs", warnings.list().get(0).code());
    // South-west cell first.
    assertEquals(15, t.elevationM().at(0, 0), 0);
  }

  /**
   * A crop that cuts cells: values are the plane's at every point of the carved area, its edges
   * included.
   */
  @Test
  void crop_isExactAndBilinearToItsEdge() throws IOException {
    Terrain t = read(plane(), new Box(12, 13, 55, 44), "", 0);
    assertEquals(new Box(12, 13, 55, 44), t.frame().ground());
    for (double x : new double[] {12, 20, 33.3, 55}) {
      for (double y : new double[] {13, 30, 44}) {
        assertEquals(
            x + 2 * y, t.elevationM().bilinear(t.frame().panelX(x), t.frame().panelY(y)), 1e-9);
      }
    }
    // Centres in the crop: x 15..55, y 15..35.
    assertEquals(15 + 30, t.zminM(), 0);
    assertEquals(55 + 70, t.zmaxM(), 0);
  }

  @Test
  void carvedArea_liesOnTheThousandthGrid() throws IOException {
    Box panel = read(plane(), new Box(0, 0, 31, 47), "", 0).frame().panel();
    for (double edge : new double[] {panel.minX(), panel.minY(), panel.maxX(), panel.maxY()}) {
      assertEquals(Math.rint(edge * 1000) / 1000, edge, 0);
    }
    assertEquals(31.0 / 47, panel.width() / panel.height(), 1e-5);
  }

  /**
   * The crop stays exact; what it has beyond the raster is void, filled and doesn't set the range.
   */
  @Test
  void cropBeyondTheTerrain_isFilledAndSaid() throws IOException {
    Terrain t = read(plane(), new Box(-20, 10, 40, 50), "", 0);
    assertEquals(new Box(-20, 10, 40, 50), t.frame().ground());
    assertEquals("crop-outside", warnings.list().get(1).code());
    assertTrue(warnings.list().get(1).message().contains("33.3 %"));
    assertEquals(8, t.voidsFilled());
    // Cells within: 5 to 35 in x, 15 to 45 in y.
    assertEquals(5 + 30, t.zminM(), 0);
    assertEquals(35 + 90, t.zmaxM(), 0);
    // The plane is as it was, and beyond its edge values lie between the edge's.
    double x = t.frame().panelX(25);
    assertEquals(25 + 2 * 25, t.elevationM().bilinear(x, t.frame().panelY(25)), 1e-9);
    double beyond = t.elevationM().bilinear(t.frame().panelX(-18), t.frame().panelY(25));
    assertTrue(beyond >= 5 + 10 && beyond <= 5 + 110, "beyond " + beyond);
  }

  @Test
  void cropBesideTheTerrain_isAFaultWithBothBoxes() throws IOException {
    Path file = plane();
    String message =
        assertThrows(JobFault.class, () -> read(file, new Box(100, 110, 200, 210), "", 0))
            .getMessage();
    assertTrue(message.contains("(100, 110, 200, 210)"), message);
    assertTrue(message.contains("(0, 0, 80, 60)"), message);
    String most =
        assertThrows(JobFault.class, () -> read(file, new Box(-100, 0, 80, 60), "", 0))
            .getMessage();
    assertTrue(most.contains("55.6 %"), most);
    assertThrows(JobFault.class, () -> read(file, new Box(16, 16, 17, 17), "", 0));
  }

  @Test
  void cropInDegreesWithAxesSwapped_isTold() {
    Path file = DATA.resolve("eildon_utm30_60m.tif");
    String message =
        assertThrows(JobFault.class, () -> read(file, new Box(55.56, -2.74, 55.6, -2.7), "4326", 0))
            .getMessage();
    assertTrue(message.contains("EPSG:4326") && message.contains("swapped"), message);
  }

  @Test
  void voids_areFilledSmoothlyAndDontSetTheRange() throws IOException {
    Terrain t = read(asc(3, 3, 10, "10 20 10\n20 -9999 20\n10 20 10"), null, "", 0);
    assertEquals(1, t.voidsFilled());
    assertEquals(20, t.elevationM().at(1, 1), 1e-9);
    Terrain plane = read(asc(5, 1, 1, "0 -9999 -9999 -9999 8"), null, "", 0);
    assertEquals(3, plane.voidsFilled());
    assertEquals(4, plane.elevationM().at(2, 0), 1e-3);
    Path none = asc(2, 2, 1, "-9999 -9999 -9999 -9999");
    assertTrue(
        assertThrows(InputFault.class, () -> read(none, null, "", 0))
            .getMessage()
            .contains("void"));
  }

  /** Against SciPy. */
  @Test
  void smoothing_isAGaussianInPanelMillimetres() throws IOException {
    // 4 x 3 cells on 228 x 171 mm: 57 mm a cell, so 57 mm is a sigma of one cell.
    Terrain t = read(asc(4, 3, 10, "10 20 30 40\n50 60 70 80\n90 100 110 120"), null, "", 57);
    assertEquals(SCIPY[0], t.elevationM().at(0, 2), 1e-9);
    assertEquals(SCIPY[1], t.elevationM().at(2, 1), 1e-9);
    assertEquals(SCIPY[2], t.elevationM().at(3, 0), 1e-9);
    assertEquals(SCIPY[2], t.zmaxM(), 1e-9);
    assertEquals(SCIPY[0], t.zminM(), 1e-9);
  }

  /**
   * Printed by SciPy 1.10.1: {@code
   * scipy.ndimage.gaussian_filter([[10,20,30,40],[50,60,70,80],[90,100,110,120.]], 1,
   * mode='nearest')} at [0,0], [1,2], [2,3].
   */
  private static final double[] SCIPY = {27.99991117181154, 69.4144318033465, 102.00008882818847};

  /** GDAL 3.6.2, gdalinfo -mm and gdalinfo, on the same file. */
  @Test
  void eildonInUtm_agreesWithGdal() {
    Terrain t = read(DATA.resolve("eildon_utm30_60m.tif"), null, "", 0);
    assertEquals("EPSG:32630", t.crs());
    assertEquals(new Box(514800, 6153600, 523200, 6163800), t.frame().ground());
    assertEquals(64.529, t.zminM(), 5e-4);
    assertEquals(399.735, t.zmaxM(), 5e-4);
    assertEquals(60, t.cellM(), 1e-9);
    assertEquals(List.of(), warnings.list());
  }

  /**
   * GDAL 3.6.2: {@code gdalwarp -ot Float32 -et 0 -wo XSCALE=1 -wo YSCALE=1 -t_srs EPSG:32630 -r
   * bilinear}, then gdalinfo -mm and ReadAsArray: 149 x 180 cells of 68.081809533742, origin
   * 513825.322847696, 6165012.550927083, range 59.302..397.493, [90, 70] 187.42377, [30, 100]
   * 118.954094, [179, 148] 122.
   */
  @Test
  void eildonInDegrees_isWarpedAsGdalDoes() {
    Terrain t = read(DATA.resolve("eildon_srtm3_4326.tif"), null, "", 0);
    assertEquals("EPSG:32630", t.crs());
    assertEquals(68.081809533742, t.cellM(), 1e-6);
    assertEquals(513825.322847696, t.frame().ground().minX(), 1e-3);
    assertEquals(6165012.550927083, t.frame().ground().maxY(), 1e-2);
    assertEquals(59.302, t.zminM(), 5e-4);
    assertEquals(397.493, t.zmaxM(), 5e-4);
    int north = t.elevationM().frame().rows() - 1;
    assertEquals(187.42377, t.elevationM().at(70, north - 90), 1e-3);
    assertEquals(118.954094, t.elevationM().at(100, north - 30), 1e-3);
    assertEquals(122, t.elevationM().at(148, north - 179), 1e-3);
    // Corners that no source reaches are filled, but they aren't voids.
    assertFalse(Double.isNaN(t.elevationM().at(0, 0)));
    assertEquals(0, t.voidsFilled());
  }

  /** The crop's corners by GDAL 3.6.2, {@code gdaltransform -s_srs EPSG:4326 -t_srs EPSG:32630}. */
  @Test
  void cropInDegrees_isTheBoxAroundItOnTheGround() {
    Terrain t =
        read(
            DATA.resolve("eildon_utm30_60m.tif"),
            new Box(-2.73, 55.55, -2.68, 55.6),
            "EPSG:4326",
            0);
    assertEquals(517012.794741246, t.frame().ground().minX(), 1e-3);
    assertEquals(6156030.74676836, t.frame().ground().minY(), 1e-3);
    assertEquals(520188.936643014, t.frame().ground().maxX(), 1e-3);
    assertEquals(6161608.58624221, t.frame().ground().maxY(), 1e-3);
  }

  @Test
  void fineCells_areThinnedToAThirdOfTheCutter() throws IOException {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < 2000; i++) {
      out.append(i % 2 == 0 ? "0 " : "10 ");
    }
    // 2000 cells on 228 mm: 0.114 mm each; a third of 1.5 mm holds four of them.
    Terrain t = read(asc(2000, 20, 1, out.toString().repeat(20)), null, "", 0);
    assertEquals(0.456, t.elevationM().frame().cellX(), 1e-9);
    assertEquals(5, t.elevationM().at(250, 2), 1e-9);
    // The range is of the cells as they are.
    assertEquals(10, t.zmaxM(), 0);
    assertEquals(0, t.zminM(), 0);
  }
}
