package plyscape.zones.kml;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeSet;
import org.locationtech.jts.geom.Geometry;
import plyscape.fault.InputFault;
import plyscape.text.NearestName;
import plyscape.zones.map.FeatureSink;
import plyscape.zones.map.MapFeature;
import plyscape.zones.xml.XmlReader;

/** Reads the placemarks of a KML file. */
final class KmlReader {

  /** A folder that is being read. */
  private static final class Folder {
    final int depth;
    String name = "";

    Folder(int depth) {
      this.depth = depth;
    }
  }

  private final XmlReader xml;
  private final FeatureSink sink;
  private final KmlGeometry geometries;
  private final String layer;
  private final Deque<Folder> folders = new ArrayDeque<>();
  private final TreeSet<String> layers = new TreeSet<>();

  KmlReader(XmlReader xml, FeatureSink sink, String layer) {
    this.xml = xml;
    this.sink = sink;
    this.layer = layer;
    this.geometries = new KmlGeometry(xml, sink);
  }

  /** Reads all of the file. */
  void read() {
    for (String name = xml.next(0); name != null; name = xml.next(0)) {
      while (!folders.isEmpty() && folders.peek().depth >= xml.depth()) {
        folders.pop();
      }
      switch (name) {
        case "Document", "Folder" -> folders.push(new Folder(xml.depth()));
        case "name" -> {
          if (!folders.isEmpty() && xml.depth() == folders.peek().depth + 1) {
            folders.peek().name = xml.text();
          }
        }
        case "NetworkLink" -> sink.note("links to other files, which aren't followed");
        case "Placemark" -> placemark();
        default -> {}
      }
    }
    if (!layer.isEmpty() && !layers.contains(layer)) {
      throw noLayer();
    }
  }

  private InputFault noLayer() {
    return xml.fault("no folder \"" + layer + "\"", NearestName.hint(layer, layers));
  }

  private void placemark() {
    String id = xml.attribute("id");
    Map<String, Object> properties = new LinkedHashMap<>();
    Geometry geometry = null;
    String trouble = "";
    int within = xml.depth();
    for (String name = xml.next(within); name != null; name = xml.next(within)) {
      switch (name) {
        case "name", "description" -> {
          if (xml.depth() == within + 1) {
            properties.put(name, xml.text());
          }
        }
        case "Data" -> data(properties);
        case "SimpleData" -> put(properties, xml.attribute("name"), xml.text());
        case "Model" -> trouble = "a model, not a shape";
        default -> {
          if (KmlGeometry.isGeometry(name)) {
            geometry = geometries.read(name);
          }
        }
      }
    }
    String folder = folders.isEmpty() ? "" : folders.peek().name;
    if (!folder.isEmpty()) {
      properties.putIfAbsent("layer", folder);
      layers.add(folder);
    }
    if (layer.isEmpty() || layer.equals(folder)) {
      sink.add(new MapFeature(label(id, properties), properties, geometry, trouble));
    }
  }

  private void data(Map<String, Object> properties) {
    String key = xml.attribute("name");
    int within = xml.depth();
    for (String name = xml.next(within); name != null; name = xml.next(within)) {
      if (name.equals("value")) {
        put(properties, key, xml.text());
      }
    }
  }

  private static void put(Map<String, Object> properties, String key, String value) {
    if (key != null && !value.isEmpty()) {
      properties.put(key, value);
    }
  }

  private String label(String id, Map<String, Object> properties) {
    Object name = properties.get("name");
    if (name != null && !name.equals("")) {
      return (String) name;
    }
    return id != null && !id.isBlank() ? id : "placemark " + (sink.seen() + 1);
  }
}
