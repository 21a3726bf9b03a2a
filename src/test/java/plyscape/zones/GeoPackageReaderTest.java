package plyscape.zones;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.Statement;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.WKBWriter;
import org.locationtech.jts.io.WKTReader;
import plyscape.fault.InputFault;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.GroundFrame;
import plyscape.job.ZoneSpec;
import plyscape.job.ZoneSpecs;
import plyscape.zones.map.MapQuery;

/**
 * Files are made here from the standard's own table definitions (OGC 12-128r18, annex C) and blob
 * layout (2.1.3).
 */
class GeoPackageReaderTest {

  private static final GroundFrame FRAME =
      new GroundFrame(
          "EPSG:32632", new Box(412000, 5601000, 413000, 5602000), new Box(0, 0, 100, 100), 1);

  @TempDir Path dir;
  private Path file;
  private final Warnings warnings = new Warnings();

  @BeforeEach
  void makeFile() throws Exception {
    file = dir.resolve("fields & woods é.gpkg");
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement s = c.createStatement()) {
      s.execute(
          "CREATE TABLE gpkg_spatial_ref_sys (srs_name TEXT NOT NULL, srs_id INTEGER NOT NULL"
              + " PRIMARY KEY, organization TEXT NOT NULL, organization_coordsys_id INTEGER NOT"
              + " NULL, definition TEXT NOT NULL, description TEXT)");
      s.execute(
          "CREATE TABLE gpkg_contents (table_name TEXT NOT NULL PRIMARY KEY, data_type TEXT NOT"
              + " NULL, identifier TEXT, description TEXT, last_change TEXT, min_x DOUBLE, min_y"
              + " DOUBLE, max_x DOUBLE, max_y DOUBLE, srs_id INTEGER)");
      s.execute(
          "CREATE TABLE gpkg_geometry_columns (table_name TEXT NOT NULL, column_name TEXT NOT NULL,"
              + " geometry_type_name TEXT NOT NULL, srs_id INTEGER NOT NULL, z TINYINT NOT NULL, m"
              + " TINYINT NOT NULL)");
      s.execute(
          "INSERT INTO gpkg_spatial_ref_sys VALUES ('UTM 32', 32632, 'EPSG', 32632, 'undefined',"
              + " '')");
      table(
          c,
          "fields",
          "POLYGON",
          "POLYGON((412000 5601000,412200 5601000,412200 5601200,412000 5601200,412000 5601000))",
          3);
      table(c, "odd \"lanes\"", "LINESTRING", "LINESTRING(412100 5601500,412900 5601500)", 1);
    }
  }

  private void table(Connection c, String name, String type, String wkt, int level)
      throws Exception {
    String quoted = '"' + name.replace("\"", "\"\"") + '"';
    try (Statement s = c.createStatement();
        PreparedStatement contents =
            c.prepareStatement(
                "INSERT INTO gpkg_contents(table_name, data_type, srs_id) VALUES (?, 'features',"
                    + " 32632)");
        PreparedStatement columns =
            c.prepareStatement(
                "INSERT INTO gpkg_geometry_columns VALUES (?, 'geom', ?, 32632, 0, 0)")) {
      s.execute(
          "CREATE TABLE "
              + quoted
              + " (fid INTEGER PRIMARY KEY, geom BLOB, level INTEGER, kind TEXT)");
      contents.setString(1, name);
      contents.execute();
      columns.setString(1, name);
      columns.setString(2, type);
      columns.execute();
      try (PreparedStatement row =
          c.prepareStatement("INSERT INTO " + quoted + " VALUES (NULL, ?, ?, 'x')")) {
        row.setBytes(1, blob(new WKTReader().read(wkt), level % 2 == 1));
        row.setInt(2, level);
        row.execute();
        row.setBytes(1, null);
        row.execute();
        row.setBytes(1, "no blob".getBytes(StandardCharsets.US_ASCII));
        row.execute();
      }
    }
  }

  /** Header with an xy envelope, little or big endian, then WKB. */
  private static byte[] blob(Geometry geometry, boolean little) {
    byte[] wkb = new WKBWriter(2).write(geometry);
    ByteBuffer out = ByteBuffer.allocate(8 + 32 + wkb.length);
    out.order(little ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
    out.put((byte) 'G')
        .put((byte) 'P')
        .put((byte) 0)
        .put((byte) (2 | (little ? 1 : 0)))
        .putInt(32632);
    var e = geometry.getEnvelopeInternal();
    out.putDouble(e.getMinX())
        .putDouble(e.getMaxX())
        .putDouble(e.getMinY())
        .putDouble(e.getMaxY())
        .put(wkb);
    return out.array();
  }

  private Zone read(TreeMap<String, List<Object>> where, Double width) {
    ZoneSpec spec = ZoneSpecs.of("test", file, where, 1, null, ZoneSpecs.mm(width));
    return ZoneReader.read(List.of(spec), FRAME, warnings).get(0);
  }

  @Test
  void allTables_orOneByLayer() {
    Zone all = read(new TreeMap<>(), 2.0);
    double strip = 80 * 2 + Math.PI;
    assertEquals(400 + strip, all.area().getArea(), 0.01 * strip);
    assertEquals(2, all.features());
    assertEquals(
        List.of(
            new Zone.Skipped("fields 2", "no geometry"),
            new Zone.Skipped("fields 3", "no GeoPackage geometry"),
            new Zone.Skipped("odd \"lanes\" 2", "no geometry"),
            new Zone.Skipped("odd \"lanes\" 3", "no GeoPackage geometry")),
        all.skipped());
    TreeMap<String, List<Object>> where = new TreeMap<>();
    where.put("layer", List.of("fields"));
    where.put("level", List.of(3.0));
    assertEquals(400, read(where, null).area().getArea(), 1e-6);
  }

  /**
   * A table in longitude and latitude beside those in UTM, its geometry column last; the pond's
   * area by GDAL 3.6.2 (edges brought to EPSG:32632 at every 1e-5 degrees): 47267.49 m2. And a
   * curve of ISO 13249-3 (type 8), which the standard lets in as an extension.
   */
  @Test
  void tablesOfTwoCrs_andCurves() throws Exception {
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement s = c.createStatement()) {
      s.execute("INSERT INTO gpkg_spatial_ref_sys VALUES ('WGS 84', 4326, 'EPSG', 4326, 'x', '')");
      table(
          c,
          "ponds",
          "POLYGON",
          "POLYGON((7.7605 50.557,7.7635 50.557,7.7635 50.559,7.7605 50.559,7.7605 50.557))",
          3);
      s.execute("UPDATE gpkg_geometry_columns SET srs_id = 4326 WHERE table_name = 'ponds'");
      try (PreparedStatement row = c.prepareStatement("UPDATE ponds SET geom = ? WHERE fid = 2")) {
        byte[] curve = blob(new WKTReader().read("LINESTRING(7 50,8 51)"), true);
        curve[8 + 32 + 4] = 8; // high byte first: the type's last byte
        row.setBytes(1, curve);
        row.execute();
      }
    }
    TreeMap<String, List<Object>> where = new TreeMap<>();
    where.put("layer", List.of("ponds"));
    Zone ponds = read(where, null);
    assertEquals(472.6749, ponds.area().getArea(), 1e-4 * 472.6749);
    assertTrue(ponds.skipped().get(0).why().contains("curved"), ponds.skipped().toString());
    where.put("layer", List.of("fields", "ponds"));
    assertEquals(400 + 472.6749, read(where, null).area().getArea(), 1e-4 * 472.6749);
  }

  @Test
  void layer_picksATable_andOtherNamesAreFaults() {
    MapQuery fields = new MapQuery("fields", Set.of(), properties -> true, crs -> null);
    assertEquals(3, MapOpener.read(file, fields).features().size());
    MapQuery wrong = new MapQuery("fileds", Set.of(), properties -> true, crs -> null);
    InputFault fault = assertThrows(InputFault.class, () -> MapOpener.read(file, wrong));
    assertTrue(fault.getMessage().contains("did you mean \"fields\"?"), fault.getMessage());
  }

  /** A recursion that goes on for ever and never yields a row. */
  @Test
  void viewWithoutEnd_isBrokenOff() throws Exception {
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement s = c.createStatement()) {
      s.execute(
          "CREATE VIEW fields2 AS WITH RECURSIVE r(n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM r)"
              + " SELECT n AS fid, NULL AS geom FROM r WHERE n < 0");
      s.execute(
          "UPDATE gpkg_geometry_columns SET table_name = 'fields2' WHERE table_name = 'fields'");
      s.execute("UPDATE gpkg_contents SET table_name = 'fields2' WHERE table_name = 'fields'");
    }
    InputFault fault =
        assertThrows(
            InputFault.class,
            () ->
                MapOpener.read(
                    file, new MapQuery("fields2", Set.of(), properties -> false, crs -> null)));
    assertTrue(fault.getMessage().contains("doesn't come to an end"), fault.getMessage());
  }

  @Test
  void nothingIsWrittenBesideTheFile() throws Exception {
    read(new TreeMap<>(), 2.0);
    try (var files = Files.list(dir)) {
      assertEquals(List.of(file), files.toList());
    }
  }

  @Test
  void otherDatabases_areFaults() throws Exception {
    Path other = dir.resolve("other.gpkg");
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + other);
        Statement s = c.createStatement()) {
      s.execute("CREATE TABLE t (a)");
    }
    assertTrue(
        assertThrows(InputFault.class, () -> MapOpener.read(other, MapQuery.everything()))
            .getMessage()
            .contains("GeoPackage"));
    Path broken = dir.resolve("broken.gpkg");
    Files.writeString(broken, "SQLite format 3\0and then nothing of the kind");
    assertThrows(InputFault.class, () -> MapOpener.read(broken, MapQuery.everything()));
  }
}
