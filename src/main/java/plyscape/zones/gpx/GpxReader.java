package plyscape.zones.gpx;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import plyscape.zones.map.FeatureSink;
import plyscape.zones.map.MapFeature;
import plyscape.zones.map.MapShapes;
import plyscape.zones.xml.XmlReader;

/** Reads the three kinds of things that a GPX file has. */
final class GpxReader {

  /** Texts of a thing that become properties; what else it has is for other uses. */
  private static final Set<String> TEXTS =
      Set.of("name", "cmt", "desc", "src", "type", "sym", "number", "time");

  private static final Set<String> LAYERS = Set.of("waypoints", "routes", "tracks");

  private final XmlReader xml;
  private final FeatureSink sink;
  private final String layer;

  GpxReader(XmlReader xml, FeatureSink sink, String layer) {
    this.xml = xml;
    this.sink = sink;
    this.layer = layer;
  }

  /** Reads all of the file. */
  void read() {
    if (!layer.isEmpty() && !LAYERS.contains(layer)) {
      throw xml.fault("no layer \"" + layer + "\"", "wanted waypoints, routes or tracks");
    }
    for (String name = xml.next(0); name != null; name = xml.next(0)) {
      if (xml.depth() == 2) {
        switch (name) {
          case "wpt" -> waypoint();
          case "rte" -> lines("routes", "rtept");
          case "trk" -> lines("tracks", "trkpt");
          default -> {}
        }
      }
    }
  }

  private void waypoint() {
    Coordinate at = place();
    Map<String, Object> properties = new LinkedHashMap<>();
    int within = xml.depth();
    for (String name = xml.next(within); name != null; name = xml.next(within)) {
      text(name, within, properties);
    }
    sink.points(1);
    add("waypoints", properties, MapShapes.FACTORY.createPoint(at));
  }

  /** A route or a track: points, in segments or not, with gaps between segments. */
  private void lines(String kind, String point) {
    Map<String, Object> properties = new LinkedHashMap<>();
    List<Coordinate[]> lines = new ArrayList<>();
    List<Coordinate> open = new ArrayList<>();
    int within = xml.depth();
    for (String name = xml.next(within); name != null; name = xml.next(within)) {
      if (name.equals(point)) {
        sink.points(1);
        open.add(place());
      } else if (name.equals("trkseg")) {
        close(open, lines);
      } else {
        text(name, within, properties);
      }
    }
    close(open, lines);
    add(kind, properties, MapShapes.lines(lines));
  }

  private static void close(List<Coordinate> open, List<Coordinate[]> lines) {
    if (open.size() > 1) {
      lines.add(open.toArray(new Coordinate[0]));
    }
    open.clear();
  }

  private void text(String name, int within, Map<String, Object> properties) {
    if (xml.depth() != within + 1) {
      return;
    }
    if (TEXTS.contains(name)) {
      properties.put(name, xml.text());
    } else if (name.equals("ele")) {
      properties.put(name, xml.number("ele", xml.text()));
    }
  }

  private void add(String kind, Map<String, Object> properties, Geometry geometry) {
    properties.put("layer", kind);
    if (!layer.isEmpty() && !layer.equals(kind)) {
      return;
    }
    Object name = properties.get("name");
    String label = name == null || name.equals("") ? kind + " " + (sink.seen() + 1) : (String) name;
    sink.add(new MapFeature(label, properties, geometry, ""));
  }

  private Coordinate place() {
    double lon = xml.number("lon", xml.attribute("lon"));
    double lat = xml.number("lat", xml.attribute("lat"));
    if (!(Math.abs(lon) <= 180) || !(Math.abs(lat) <= 90)) {
      throw xml.fault(
          "a point at lon=" + lon + " lat=" + lat, "wanted degrees, at most 180 and 90");
    }
    return new Coordinate(lon, lat);
  }
}
