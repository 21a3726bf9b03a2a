package plyscape.zones.geopackage;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import org.locationtech.jts.geom.Geometry;
import org.sqlite.SQLiteErrorCode;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.terrain.crs.CrsLookup;
import plyscape.text.NearestName;
import plyscape.zones.map.FeatureSink;
import plyscape.zones.map.MapFeature;
import plyscape.zones.map.MapFile;
import plyscape.zones.map.MapLimits;
import plyscape.zones.map.MapQuery;

/**
 * Reads all feature tables of a GeoPackage (OGC 12-128r18, an SQLite database), in the order of
 * their names, or one of them. Each feature has the property {@code layer}, its table's name,
 * unless it has one of its own; so {@code where} can pick a table too. The file is opened read-only
 * and nothing is written beside it.
 */
final class GeoPackageReader {

  /** CRS numbers that the standard sets aside for "unknown, plane" and "unknown, on the globe". */
  private static final int UNKNOWN_PLANE = -1;

  private static final int UNKNOWN_GLOBE = 0;

  private static final String TABLES =
      """
      SELECT g.table_name, g.column_name, g.srs_id,
             s.organization, s.organization_coordsys_id, s.definition, m.type
      FROM gpkg_geometry_columns g JOIN gpkg_contents c ON c.table_name = g.table_name
      LEFT JOIN gpkg_spatial_ref_sys s ON s.srs_id = g.srs_id
      LEFT JOIN sqlite_master m ON m.name = g.table_name AND m.type IN ('table', 'view')
      WHERE c.data_type = 'features' ORDER BY g.table_name
      """;

  private final String name;
  private final FeatureSink sink;
  private final MapLimits rows;

  private GeoPackageReader(String name, MapQuery query) {
    this.name = name;
    sink = new FeatureSink(name, query);
    rows = MapLimits.of(name);
  }

  /** What is asked for; an {@link InputFault} says what keeps it from being read. */
  static MapFile read(Path file, MapQuery query) {
    // An URI, so that letters with a meaning to the database may be in the path; immutable keeps it
    // from making files.
    String uri = file.toAbsolutePath().toUri().toString().replace("file:///", "file:/");
    try (Connection connection =
        new org.sqlite.JDBC()
            .connect("jdbc:sqlite:" + uri + "?mode=ro&immutable=1", new Properties())) {
      return new GeoPackageReader(file.toString(), query).read(connection, query.layer());
    } catch (SQLException e) {
      boolean stopped = e.getErrorCode() == SQLiteErrorCode.SQLITE_INTERRUPT.code;
      throw new InputFault(
          Place.file(file.toString()),
          stopped
              ? "a table of it is a view whose query doesn't come to an end"
              : "can't be read as a GeoPackage: " + e.getMessage(),
          stopped
              ? "export the view's features as a table, or name another table as the layer"
              : "export it anew",
          e);
    }
  }

  private record Table(String name, String column, String crs, boolean stated, boolean view) {}

  private MapFile read(Connection connection, String layer) throws SQLException {
    QueryBudget budget = QueryBudget.on(connection);
    List<Table> all = tables(connection);
    if (all.isEmpty()) {
      throw new InputFault(
          Place.file(name),
          "a GeoPackage without feature tables",
          "wanted points, lines or polygons");
    }
    List<Table> tables =
        all.stream().filter(t -> layer.isEmpty() || t.name().equals(layer)).toList();
    if (tables.isEmpty()) {
      throw new InputFault(
          Place.file(name),
          "no layer \"" + layer + "\"",
          NearestName.hint(layer, all.stream().map(Table::name).toList()));
    }
    String crs = tables.get(0).crs();
    for (Table table : tables) {
      read(connection, table, table.crs().equals(crs) ? "" : table.crs(), budget);
    }
    return sink.toMap(crs, tables.get(0).stated());
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
                number != UNKNOWN_PLANE && number != UNKNOWN_GLOBE,
                "view".equals(row.getString(7))));
      }
    }
    return out;
  }

  private void read(Connection connection, Table table, String crs, QueryBudget budget)
      throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row =
            statement.executeQuery(
                table.view()
                    ? "SELECT NULL, * FROM " + quoted(table.name())
                    : "SELECT rowid AS \"rowid \", * FROM "
                        + quoted(table.name())
                        + " ORDER BY rowid")) {
      ResultSetMetaData columns = row.getMetaData();
      for (int number = 1; row.next(); number++) {
        budget.refill();
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
        long id = row.getLong(1); // a view has none
        add(table.name() + " " + (row.wasNull() ? number : id), properties, blob, crs);
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
    rows.feature();
    if (!sink.wants(properties)) {
      return;
    }
    String trouble = "";
    Geometry geometry = null;
    if (blob != null) {
      try {
        geometry = GeoPackageBlob.read(blob);
        sink.points(geometry == null ? 0 : geometry.getNumPoints());
      } catch (IllegalArgumentException e) {
        trouble = e.getMessage();
      }
    }
    sink.keep(new MapFeature(label, properties, geometry, trouble, crs));
  }
}
