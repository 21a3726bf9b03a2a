package plyscape.zones.geojson;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import plyscape.zones.map.MapShapes;

/** Geometries from GeoJSON's types and coordinates. */
final class GeoJsonGeometry {

  private static final GeometryFactory FACTORY = MapShapes.FACTORY;

  private static final Set<String> TYPES =
      Set.of(
          "Point",
          "MultiPoint",
          "LineString",
          "MultiLineString",
          "Polygon",
          "MultiPolygon",
          "GeometryCollection");

  private GeoJsonGeometry() {}

  static boolean isType(String type) {
    return type != null && TYPES.contains(type);
  }

  /** The geometry; an IllegalArgumentException says what doesn't fit. */
  static Geometry of(String type, Object coordinates) {
    if (!isType(type)) {
      throw new IllegalArgumentException(
          type == null ? "geometry without a type" : "unknown geometry type " + type);
    }
    if (coordinates == null) {
      throw new IllegalArgumentException(type + " without coordinates");
    }
    if (coordinates instanceof List<?> list && list.isEmpty()) {
      return FACTORY.createGeometryCollection();
    }
    return switch (type) {
      case "Point" -> FACTORY.createPoint(position(coordinates, type));
      case "MultiPoint" -> FACTORY.createMultiPointFromCoords(positions(coordinates, type));
      case "LineString" -> line(coordinates, type);
      case "MultiLineString" ->
          FACTORY.createMultiLineString(
              list(coordinates, type).stream().map(c -> line(c, type)).toArray(LineString[]::new));
      case "Polygon" -> polygon(coordinates, type);
      default ->
          FACTORY.createMultiPolygon(
              list(coordinates, type).stream().map(c -> polygon(c, type)).toArray(Polygon[]::new));
    };
  }

  private static List<?> list(Object coordinates, String type) {
    if (coordinates instanceof List<?> list) {
      return list;
    }
    throw new IllegalArgumentException(
        "coordinates don't fit a "
            + type
            + (coordinates instanceof String what ? ": " + what : ""));
  }

  private static Coordinate position(Object coordinates, String type) {
    if (coordinates instanceof Coordinate c) {
      return c;
    }
    throw new IllegalArgumentException(
        "coordinates don't fit a "
            + type
            + (coordinates instanceof String what ? ": " + what : ""));
  }

  private static Coordinate[] positions(Object coordinates, String type) {
    return list(coordinates, type).stream().map(c -> position(c, type)).toArray(Coordinate[]::new);
  }

  private static LineString line(Object coordinates, String type) {
    return MapShapes.line(positions(coordinates, type));
  }

  private static Polygon polygon(Object coordinates, String type) {
    List<Coordinate[]> rings = new ArrayList<>();
    for (Object ring : list(coordinates, type)) {
      rings.add(positions(ring, type));
    }
    return MapShapes.polygon(rings);
  }
}
