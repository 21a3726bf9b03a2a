package plyscape.zones;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/**
 * Geometries from GeoJSON's types and coordinates. Rings that aren't closed are closed; rings with
 * fewer than three points and lines of one point are left out, as nothing can be drawn from them.
 */
final class GeoJsonGeometry {

  static final GeometryFactory FACTORY = new GeometryFactory();

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

  static Geometry collection(List<Geometry> parts) {
    return FACTORY.createGeometryCollection(parts.toArray(new Geometry[0]));
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
    Coordinate[] points = positions(coordinates, type);
    return points.length < 2 ? FACTORY.createLineString() : FACTORY.createLineString(points);
  }

  private static Polygon polygon(Object coordinates, String type) {
    List<LinearRing> rings = new ArrayList<>();
    List<?> list = list(coordinates, type);
    for (int i = 0; i < list.size(); i++) {
      Coordinate[] points = positions(list.get(i), type);
      if (points.length > 0 && !points[0].equals2D(points[points.length - 1])) {
        points = Arrays.copyOf(points, points.length + 1);
        points[points.length - 1] = points[0].copy();
      }
      if (points.length >= 4) {
        rings.add(FACTORY.createLinearRing(points));
      } else if (i == 0) {
        return FACTORY.createPolygon();
      }
    }
    return rings.isEmpty()
        ? FACTORY.createPolygon()
        : FACTORY.createPolygon(
            rings.get(0), rings.subList(1, rings.size()).toArray(new LinearRing[0]));
  }
}
