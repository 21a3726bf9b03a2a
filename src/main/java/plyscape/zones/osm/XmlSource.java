package plyscape.zones.osm;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.locationtech.jts.geom.Envelope;
import plyscape.zones.xml.XmlReader;

/** An extract in XML 0.6. Elements that are marked as deleted are passed over. */
final class XmlSource implements OsmSource {

  private final Path file;
  private Envelope bounds;
  private boolean moreBounds;

  XmlSource(Path file) {
    this.file = file;
  }

  /** Known after the first visit. A file put together of several extracts has no one extent. */
  @Override
  public Envelope bounds() {
    return moreBounds ? null : bounds;
  }

  @Override
  public void visit(Set<OsmKind> kinds, OsmVisitor visitor) throws IOException {
    bounds = null;
    moreBounds = false;
    try (XmlReader xml = new XmlReader(file.toString(), Files.newInputStream(file))) {
      for (String name = xml.next(0); name != null; name = xml.next(0)) {
        if (xml.depth() == 1 && !name.equals("osm")) {
          throw xml.fault("a root element <" + name + ">", "wanted <osm>");
        }
        boolean there =
            !"delete".equals(xml.attribute("action")) && !"false".equals(xml.attribute("visible"));
        switch (name) {
          case "bounds" -> readBounds(xml);
          case "node" -> {
            if (there && kinds.contains(OsmKind.NODE)) {
              node(xml, visitor);
            }
          }
          case "way" -> {
            if (there && kinds.contains(OsmKind.WAY)) {
              way(xml, visitor);
            }
          }
          case "relation" -> {
            if (there && kinds.contains(OsmKind.RELATION)) {
              relation(xml, visitor);
            }
          }
          default -> {}
        }
      }
    }
  }

  private void readBounds(XmlReader xml) {
    if (xml.attribute("minlat") == null) {
      return; // one of another kind has a "box"
    }
    moreBounds |= bounds != null;
    bounds =
        new Envelope(
            number(xml, "minlon"),
            number(xml, "maxlon"),
            number(xml, "minlat"),
            number(xml, "maxlat"));
  }

  private static void node(XmlReader xml, OsmVisitor visitor) {
    long id = id(xml, "id");
    double lon = number(xml, "lon");
    double lat = number(xml, "lat");
    if (!(Math.abs(lat) <= 90) || !(Math.abs(lon) <= 180)) {
      throw xml.fault("a node at " + lon + ", " + lat, "wanted degrees");
    }
    visitor.node(id, lon, lat, tags(xml));
  }

  private static void way(XmlReader xml, OsmVisitor visitor) {
    long id = id(xml, "id");
    Map<String, Object> tags = new LinkedHashMap<>();
    long[] nodes = new long[16];
    int count = 0;
    int within = xml.depth();
    for (String name = xml.next(within); name != null; name = xml.next(within)) {
      if (name.equals("nd")) {
        nodes = count == nodes.length ? Arrays.copyOf(nodes, 2 * count) : nodes;
        nodes[count++] = id(xml, "ref");
      } else {
        tag(xml, name, tags);
      }
    }
    visitor.way(id, Arrays.copyOf(nodes, count), tags);
  }

  private static void relation(XmlReader xml, OsmVisitor visitor) {
    long id = id(xml, "id");
    Map<String, Object> tags = new LinkedHashMap<>();
    List<OsmMember> members = new ArrayList<>();
    int within = xml.depth();
    for (String name = xml.next(within); name != null; name = xml.next(within)) {
      if (name.equals("member")) {
        String role = xml.attribute("role");
        members.add(new OsmMember(kind(xml), id(xml, "ref"), role == null ? "" : role));
      } else {
        tag(xml, name, tags);
      }
    }
    visitor.relation(id, members, tags);
  }

  private static OsmKind kind(XmlReader xml) {
    String type = String.valueOf(xml.attribute("type"));
    return switch (type) {
      case "node" -> OsmKind.NODE;
      case "way" -> OsmKind.WAY;
      case "relation" -> OsmKind.RELATION;
      default ->
          throw xml.fault("a member of type \"" + type + "\"", "wanted node, way or relation");
    };
  }

  private static Map<String, Object> tags(XmlReader xml) {
    Map<String, Object> tags = null;
    int within = xml.depth();
    for (String name = xml.next(within); name != null; name = xml.next(within)) {
      tags = tags == null ? new LinkedHashMap<>() : tags;
      tag(xml, name, tags);
    }
    return tags == null ? Map.of() : tags;
  }

  private static void tag(XmlReader xml, String name, Map<String, Object> tags) {
    String key = xml.attribute("k");
    String value = xml.attribute("v");
    if (name.equals("tag") && key != null && value != null) {
      tags.put(key, value);
    }
  }

  private static long id(XmlReader xml, String name) {
    String text = xml.attribute(name);
    try {
      long id = Long.parseLong(String.valueOf(text));
      if (Math.abs(id) <= NodeSides.MOST_ID) {
        return id;
      }
    } catch (NumberFormatException e) {
      // said below
    }
    throw xml.fault(
        text == null ? "no " + name : name + "=\"" + text + "\"", "wanted a whole number there");
  }

  private static double number(XmlReader xml, String name) {
    return xml.number(name, xml.attribute(name));
  }

  @Override
  public void close() {}
}
