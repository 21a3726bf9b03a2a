package plyscape.planner;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import java.util.function.ToIntBiFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.InputFault;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.GroundFrame;
import plyscape.job.LineWidth;
import plyscape.job.MapPick;
import plyscape.job.ZoneSpec;
import plyscape.job.ZoneSpecs;
import plyscape.terrain.ClassReader;
import plyscape.zones.Zone;
import plyscape.zones.ZoneReader;

/** Rasters of classes as zones, from file to area on the panel, against areas by formula. */
class LandCoverTest {

  private static final Box PANEL = new Box(5, 5, 105, 105);

  /** 1 km on 100 mm: 1 mm2 is 100 m2. */
  private static final GroundFrame PLAIN = new GroundFrame("", new Box(0, 0, 1000, 1000), PANEL, 1);

  private static final GroundFrame UTM =
      new GroundFrame("EPSG:32638", new Box(440000, 3680000, 450000, 3690000), PANEL, 1);

  @TempDir Path dir;
  private final Warnings warnings = new Warnings();

  /** An ESRI ASCII grid with classes by column and row from the south-west. */
  private Path raster(
      int columns,
      int rows,
      double west,
      double south,
      double cell,
      ToIntBiFunction<Integer, Integer> kind)
      throws IOException {
    StringBuilder text = new StringBuilder();
    text.append(
        String.format(
            Locale.ROOT,
            "ncols %d%nnrows %d%nxllcorner %.9f%nyllcorner %.9f%ncellsize %.9f%nnodata_value 0%n",
            columns,
            rows,
            west,
            south,
            cell));
    for (int r = rows - 1; r >= 0; r--) {
      for (int c = 0; c < columns; c++) {
        text.append(kind.applyAsInt(c, r)).append(' ');
      }
      text.append('\n');
    }
    Path file = dir.resolve("cover.asc");
    Files.writeString(file, text);
    return file;
  }

  private Zone zone(Path file, GroundFrame frame, Double... values) {
    ZoneSpec spec =
        new ZoneSpec(
            "cover",
            new MapPick(file, "", new TreeMap<>()),
            2,
            null,
            LineWidth.NONE,
            List.of(values),
            ZoneSpec.Keep.MERGE);
    return ZoneReader.read(
            List.of(spec), frame, f -> ClassReader.read(f, frame, warnings), 0, warnings)
        .get(0);
  }

  private static int rings(int column, int row, double cell) {
    double far = Math.hypot((column + 0.5) * cell - 500, (row + 0.5) * cell - 500);
    return far < 200 ? 41 : far < 300 ? 42 : far < 400 ? 11 : 0;
  }

  /** Disk and rings: pi r^2. Cells are 5 m, so counts of cells are near it (Gauss' circle). */
  @Test
  void disksAndRings_haveTheirAreas() throws IOException {
    Path file = raster(240, 240, -100, -100, 5, (c, r) -> rings(c - 20, r - 20, 5));
    assertEquals(Math.PI * 400, zone(file, PLAIN, 41.0).area().getArea(), 0.005 * Math.PI * 400);
    assertEquals(
        Math.PI * 900, zone(file, PLAIN, 41.0, 42.0).area().getArea(), 0.005 * Math.PI * 900);
    Zone ring = zone(file, PLAIN, 11.0);
    assertEquals(Math.PI * 700, ring.area().getArea(), 0.005 * Math.PI * 700);
    assertTrue(ring.area().isValid());
    assertEquals(1, ring.features());
    // Two zones of one raster neither overlap nor leave a gap.
    double both = zone(file, PLAIN, 41.0).area().union(zone(file, PLAIN, 42.0).area()).getArea();
    assertEquals(zone(file, PLAIN, 41.0, 42.0).area().getArea(), both, 1e-6);
  }

  @Test
  void whatLiesBeyondTheCarvedArea_isClipped() throws IOException {
    Path file = raster(30, 30, -1000, -1000, 100, (c, r) -> r < 15 ? 7 : 8);
    assertEquals(100 * 50, zone(file, PLAIN, 7.0).area().getArea(), 1e-6);
    assertEquals(100 * 100, zone(file, PLAIN, 7.0, 8.0).area().getArea(), 1e-6);
  }

  /**
   * A block of 0.05 degrees a side, in degrees while the terrain is in UTM. Area between two
   * parallels on the ellipsoid by Snyder 1987, Map Projections, eq. 3-12 (q) with WGS 84's a and
   * e2; times UTM's scale 0.9996 squared.
   */
  @Test
  void degrees_areProjected() throws IOException {
    Path file =
        raster(
            100,
            100,
            44.35,
            33.25,
            0.001,
            (c, r) -> c >= 25 && c < 75 && r >= 25 && r < 75 ? 5 : 1);
    Files.writeString(
        dir.resolve("cover.prj"),
        "GEOGCS[\"WGS 84\",DATUM[\"WGS_1984\",SPHEROID[\"WGS"
            + " 84\",6378137,298.257223563]],PRIMEM[\"Greenwich\",0],"
            + "UNIT[\"degree\",0.0174532925199433]]");
    double a = 6378137;
    double metres2 = a * a * Math.toRadians(0.05) * (q(33.325) - q(33.275)) / 2 * 0.9996 * 0.9996;
    double mm2 = metres2 / 1e4;
    assertEquals(mm2, zone(file, UTM, 5.0).area().getArea(), 0.005 * mm2);
  }

  private static double q(double latitude) {
    double e2 = 0.00669437999014;
    double e = Math.sqrt(e2);
    double s = Math.sin(Math.toRadians(latitude));
    return (1 - e2) * (s / (1 - e2 * s * s) - Math.log((1 - e * s) / (1 + e * s)) / (2 * e));
  }

  @Test
  void valuesThatDontOccur_areSaid_withThoseThatDo() throws IOException {
    Path file = raster(10, 10, 0, 0, 100, (c, r) -> c < 5 ? 11 : 21);
    Zone zone = zone(file, PLAIN, 41.0);
    assertTrue(zone.area().isEmpty());
    assertTrue(zone.skipped().get(0).why().contains("it has 11, 21"), zone.skipped().toString());
  }

  @Test
  void rasterBesideTheTerrain_isSaid() throws IOException {
    Path file = raster(10, 10, 5000, 0, 100, (c, r) -> 11);
    assertTrue(zone(file, PLAIN, 11.0).area().isEmpty());
    assertTrue(warnings.list().stream().anyMatch(w -> w.code().equals("zone-outside")));
  }

  @Test
  void rasterWithoutValues_saysWhatIsMissing() throws IOException {
    Path file = raster(10, 10, 0, 0, 100, (c, r) -> 11);
    ZoneSpec spec = ZoneSpecs.of("cover", file, new TreeMap<>(), 2, null, LineWidth.NONE);
    InputFault fault =
        assertThrows(InputFault.class, () -> ZoneReader.read(List.of(spec), PLAIN, warnings));
    assertTrue(fault.getMessage().contains("no values"), fault.getMessage());
  }
}
