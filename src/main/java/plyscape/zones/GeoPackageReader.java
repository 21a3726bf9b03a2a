package plyscape.zones;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import org.locationtech.jts.geom.Geometry;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.terrain.CrsLookup;

/**
 * Reads all feature tables of a GeoPackage (OGC 12-128r18, an SQLite database), in the order of
 * their names. Each feature has the property {@code layer}, its table's name, unless it has one of
 * its own; so {@code where} can pick a table. The file is opened read-only and nothing is written
 * beside it.
 */
final class GeoPackageReader {

  private static final byte[] MAGIC = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);

  /** CRS numbers that the standard sets aside for "unknown, plane" and "unknown, on the globe". */
  private static final int UNKNOWN_PLANE = -1;

  private static final int UNKNOWN_GLOBE = 0;

  private static final String TABLES =
      "SELECT g.table_name, g.column_name, g.srs_id, s.organization, s.organization_coordsys_id, s.definition"
          + " FROM gpkg_geometry_columns g JOIN gpkg_contents c ON c.table_name = g.table_name"
          + " LEFT JOIN gpkg_spatial_ref_sys s ON s.srs_id = g.srs_id"
          + " WHERE c.data_type = 'features' ORDER BY g.table_name";

  private final String name;
  private final MapLimits limits;
  private final List<MapFeature> features = new ArrayList<>();

  private GeoPackageReader(String name) {
    this.name = name;
    limits = MapLimits.of(name);
  }

  /** Whether a file is an SQLite database. */
  static boolean accepts(Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      return Arrays.equals(in.readNBytes(MAGIC.length), MAGIC);
    } catch (IOException e) {
      return false;
    }
  }

  /** Everything in the file; an {@link InputFault} says what keeps it from being read. */
  static MapFile read(Path file) {
    // An URI, so that letters with a meaning to the database may be in the path; immutable keeps it
    // from making files.
    String uri = file.toAbsolutePath().toUri().toString().replace("file:///", "file:/");
    try (Connection connection =
        new org.sqlite.JDBC()
            .connect("jdbc:sqlite:" + uri + "?mode=ro&immutable=1", new Properties())) {
      return new GeoPackageReader(file.toString()).read(connection);
    } catch (SQLException e) {
      throw new InputFault(
          Place.file(file.toString()),
          "can't be read as a GeoPackage: " + e.getMessage(),
          "export it anew",
          e);
    }
  }

  private record Table(String name, String column, String crs, boolean stated) {}

  private MapFile read(Connection connection) throws SQLException {
    List<Table> tables = tables(connection);
    if (tables.isEmpty()) {
      throw new InputFault(
          Place.file(name),
          "a GeoPackage without feature tables",
          "wanted points, lines or polygons");
    }
    String crs = tables.get(0).crs();
    for (Table table : tables) {
      read(connection, table, table.crs().equals(crs) ? "" : table.crs());
    }
    return new MapFile(name, crs, tables.get(0).stated(), List.copyOf(features));
  }

  private List<Table> tables(Connection connection) throws SQLException {
    List<Table> out = new ArrayList<>();
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(TABLES)) {
      while (row.next()) {
        int number = row.getInt(3);
        String organization = row.getString(4);
        String definition = row.getString(6);
        String crs = CrsLookup.WGS_84;
        if (number != UNKNOWN_PLANE && number != UNKNOWN_GLOBE) {
          boolean epsg = organization != null && organization.equalsIgnoreCase("EPSG");
          if (!epsg && (definition == null || !definition.contains("["))) {
            throw new InputFault(
                Place.file(name),
                "table " + row.getString(1) + " has the unknown CRS " + number,
                "set it in the file");
          }
          crs = epsg ? "EPSG:" + row.getInt(5) : definition;
        }
        out.add(
            new Table(
                row.getString(1),
                row.getString(2),
                crs,
                number != UNKNOWN_PLANE && number != UNKNOWN_GLOBE));
      }
    }
    return out;
  }

  private void read(Connection connection, Table table, String crs) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row =
            statement.executeQuery(
                "SELECT rowid AS \"rowid \", * FROM " + quoted(table.name()) + " ORDER BY rowid")) {
      ResultSetMetaData columns = row.getMetaData();
      while (row.next()) {
        Map<String, Object> properties = new LinkedHashMap<>();
        byte[] blob = null;
        for (int c = 2; c <= columns.getColumnCount(); c++) {
          if (columns.getColumnName(c).equalsIgnoreCase(table.column())) {
            blob = row.getBytes(c);
          } else {
            put(properties, columns.getColumnName(c), row.getObject(c));
          }
        }
        properties.putIfAbsent("layer", table.name());
        add(table.name() + " " + row.getLong(1), properties, blob, crs);
      }
    }
  }

  private static void put(Map<String, Object> properties, String key, Object value) {
    if (value instanceof Number number) {
      properties.put(key, number.doubleValue());
    } else if (value instanceof String || value instanceof Boolean) {
      properties.put(key, value);
    }
  }

  private static String quoted(String identifier) {
    return '"' + identifier.replace("\"", "\"\"") + '"';
  }

  private void add(String label, Map<String, Object> properties, byte[] blob, String crs) {
    limits.feature();
    String trouble = "";
    Geometry geometry = null;
    if (blob != null) {
      try {
        geometry = GeoPackageBlob.read(blob);
        limits.points(geometry == null ? 0 : geometry.getNumPoints());
      } catch (IllegalArgumentException e) {
        trouble = e.getMessage();
      }
    }
    features.add(new MapFeature(label, properties, geometry, trouble, crs));
  }
}
