package plyscape.region;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.bands.Bands;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.grid.Grid;
import plyscape.grid.GroundFrame;
import plyscape.grid.UtmZone;
import plyscape.job.ZoneSpec;
import plyscape.job.ZoneSpecs;
import plyscape.terrain.RasterSource;
import plyscape.terrain.Terrain;
import plyscape.terrain.VoidCells;
import plyscape.zones.Town;
import plyscape.zones.Zone;
import plyscape.zones.ZoneReader;

/** What is hard on the tiling: it must still tile and nest, lose nothing uncounted, and end. */
class HardGroundTest {

  private static final Box BOX = new Box(6, 6, 66, 66);

  @TempDir Path dir;

  private static void check(String what, int cells, DoubleBinaryOperator elevation) {
    Terrain terrain = Ground.of(BOX, cells, cells, elevation);
    Tiling tiling =
        TilingBuilder.build(
            terrain,
            Ground.equal(terrain, 6),
            List.of(),
            new TilingRules(6, 1.5, 1, null),
            new Warnings());
    TilingChecks.check(tiling, what);
    TilingChecks.checkNesting(tiling, what);
  }

  private static int cell(double mm, int cells) {
    return (int) Math.floor((mm - 6) / 60 * cells);
  }

  @Test
  void checkerboard_comb_spiral_slivers_islets_tile() {
    check("checkerboard", 60, (x, y) -> (cell(x, 60) + cell(y, 60)) % 2 * 100);
    check("comb", 60, (x, y) -> cell(x, 60) % 2 == 0 && y > 20 ? 0 : 100);
    check(
        "spiral",
        150,
        (x, y) -> Math.sin(2 * Math.hypot(x - 36, y - 36) - Math.atan2(y - 36, x - 36)));
    check("slivers", 150, (x, y) -> Math.sin(6 * x + 0.01 * y * y));
    check("islets", 150, Ground.hills(3, 3));
    Random random = new Random(5);
    check("steps", 60, (x, y) -> random.nextInt(2) * 100);
  }

  /**
   * A tenth of the benchmark's town. Every feature is used or listed, and what is used either shows
   * or is counted as given away: shown and given areas add up to what was drawn.
   */
  @Test
  void smallTown_tiles_andNothingGoesUncounted() throws IOException {
    UtmZone zone = new UtmZone(30, true);
    Box ground = new Box(515000, 6155000, 517400, 6157400);
    Path map = dir.resolve("town.geojson");
    Files.writeString(map, Town.geoJson(zone, ground, 100, 200, 7));
    Terrain flat = Ground.of(BOX, 40, 40, Ground.hills(4, 40));
    Terrain terrain =
        new Terrain(
            new RasterSource("made", zone.code(), 60),
            new GroundFrame(zone.code(), ground, BOX, 1),
            new Grid(new CellFrame(6, 6, 1.5, 1.5, 40, 40), flat.elevationM().values()),
            new Terrain.Range(flat.zminM(), flat.zmaxM()),
            VoidCells.NONE,
            null);
    List<ZoneSpec> specs = new ArrayList<>();
    String[] kinds = {"path", "lane", "street", "trunk", "building"};
    double[] widthsM = {10, 40, 70, 90, 1};
    for (int i = 0; i < kinds.length; i++) {
      TreeMap<String, List<Object>> where = new TreeMap<>();
      where.put("kind", List.of(kinds[i]));
      specs.add(ZoneSpecs.of(kinds[i], map, where, 5 + i, null, ZoneSpecs.ground(widthsM[i])));
    }
    Warnings warnings = new Warnings();
    List<Zone> zones = ZoneReader.read(specs, terrain.frame(), warnings);
    int features = zones.stream().mapToInt(z -> z.features() + z.skipped().size()).sum();
    assertEquals(300, features);
    assertTrue(zones.get(4).skipped().stream().anyMatch(s -> s.why().equals("no geometry")));
    assertTrue(warnings.list().stream().anyMatch(w -> w.code().equals("zone-repaired")));

    Bands bands = Ground.equal(terrain, 4);
    Tiling drawn =
        TilingBuilder.build(terrain, bands, zones, new TilingRules(9, 0, 0, null), new Warnings());
    Tiling tiling =
        TilingBuilder.build(terrain, bands, zones, new TilingRules(9, 1.5, 1, null), warnings);
    TilingChecks.check(tiling, "town");
    TilingChecks.checkNesting(tiling, "town");
    assertTrue(warnings.list().stream().anyMatch(w -> w.code().equals("merged")));
    double least = 0.01 * BOX.area();
    for (int ply = 1; ply <= 9; ply++) {
      int own = ply;
      double gone =
          tiling.merged().stream()
              .mapToDouble(
                  m -> m.fromPly() == own ? m.areaMm2() : m.toPly() == own ? -m.areaMm2() : 0)
              .sum();
      assertEquals(area(drawn, ply) - gone, area(tiling, ply), 0.002 * BOX.area(), "ply " + ply);
    }
    // Paths of 10 m are 0.25 mm wide: nothing of them is left, and almost all of it is told.
    double path = area(drawn, 5);
    double told =
        tiling.merged().stream()
            .filter(m -> m.source().equals("path"))
            .mapToDouble(Tiling.Merged::areaMm2)
            .sum();
    assertTrue(path > 0 && path < least * 10);
    assertEquals(path - area(tiling, 5), told, 0.02 * path);
  }

  private static double area(Tiling tiling, int ply) {
    return tiling.exposed().containsKey(ply) ? tiling.exposed().get(ply).getArea() : 0;
  }
}
