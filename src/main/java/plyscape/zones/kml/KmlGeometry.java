package plyscape.zones.kml;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import plyscape.zones.map.FeatureSink;
import plyscape.zones.map.MapShapes;
import plyscape.zones.xml.XmlReader;

/** Reads geometries of KML; heights are passed over. */
final class KmlGeometry {

  private static final Set<String> NAMES =
      Set.of(
          "Point", "LineString", "LinearRing", "Polygon", "MultiGeometry", "Track", "MultiTrack");

  private final XmlReader xml;
  private final FeatureSink sink;

  KmlGeometry(XmlReader xml, FeatureSink sink) {
    this.xml = xml;
    this.sink = sink;
  }

  /** Whether an element is a geometry. */
  static boolean isGeometry(String name) {
    return NAMES.contains(name);
  }

  /** The geometry whose element was just started. */
  Geometry read(String name) {
    return switch (name) {
      case "Point" -> point();
      case "Polygon" -> polygon();
      case "MultiGeometry", "MultiTrack" -> parts();
      case "Track" -> track();
      default -> MapShapes.line(coordinates());
    };
  }

  private Geometry point() {
    Coordinate[] at = coordinates();
    return at.length == 0 ? MapShapes.FACTORY.createPoint() : MapShapes.FACTORY.createPoint(at[0]);
  }

  private Geometry polygon() {
    List<Coordinate[]> rings = new ArrayList<>();
    int within = xml.depth();
    for (String name = xml.next(within); name != null; name = xml.next(within)) {
      if (name.equals("outerBoundaryIs")) {
        rings.add(0, coordinates());
      } else if (name.equals("innerBoundaryIs")) {
        rings.add(coordinates());
      }
    }
    return MapShapes.polygon(rings);
  }

  private Geometry parts() {
    List<Geometry> out = new ArrayList<>();
    int within = xml.depth();
    for (String name = xml.next(within); name != null; name = xml.next(within)) {
      if (isGeometry(name)) {
        out.add(read(name));
      }
    }
    return MapShapes.collection(out);
  }

  /** A track of a walk, in the extension that has a position an element: {@code lon lat height}. */
  private Geometry track() {
    List<Coordinate> out = new ArrayList<>();
    int within = xml.depth();
    for (String name = xml.next(within); name != null; name = xml.next(within)) {
      if (name.equals("coord")) {
        out.add(position(xml.text().split("\\s+")));
      }
    }
    return MapShapes.line(out.toArray(new Coordinate[0]));
  }

  /** All positions within the element that was just started. */
  private Coordinate[] coordinates() {
    List<Coordinate> out = new ArrayList<>();
    int within = xml.depth();
    for (String name = xml.next(within); name != null; name = xml.next(within)) {
      if (name.equals("coordinates")) {
        // Some writers put blanks behind the commas.
        for (String tuple : xml.text().replaceAll("\\s*,\\s*", ",").split("\\s+")) {
          if (!tuple.isEmpty()) {
            out.add(position(tuple.split(",")));
          }
        }
      }
    }
    return out.toArray(new Coordinate[0]);
  }

  private Coordinate position(String[] numbers) {
    if (numbers.length < 2) {
      throw xml.fault("a position \"" + String.join(",", numbers) + "\"", "wanted lon,lat");
    }
    sink.points(1);
    double lon = xml.number("longitude", numbers[0]);
    double lat = xml.number("latitude", numbers[1]);
    return new Coordinate(lon, lat);
  }
}
