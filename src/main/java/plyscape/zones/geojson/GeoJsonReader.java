package plyscape.zones.geojson;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Geometry;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.terrain.crs.CrsLookup;
import plyscape.zones.map.ByteOrderMark;
import plyscape.zones.map.FeatureSink;
import plyscape.zones.map.MapFeature;
import plyscape.zones.map.MapFile;
import plyscape.zones.map.MapHead;
import plyscape.zones.map.MapShapes;

/**
 * Reads GeoJSON (RFC 7946), member by member in any order: collections, single features and bare
 * geometries. Coordinates are longitude and latitude on WGS 84 unless the {@code crs} member of the
 * 2008 format names another CRS; a null there means none is known and is taken as absent. Faults of
 * the JSON itself are the user's to mend and say line and column; a feature whose coordinates don't
 * fit its type is kept, with the trouble said.
 */
final class GeoJsonReader {

  private static final String WANTED =
      "wanted GeoJSON: a FeatureCollection, a Feature or a geometry";

  private final String name;
  private final JsonParser parser;
  private final FeatureSink sink;
  private String crs;

  private GeoJsonReader(String name, JsonParser parser, FeatureSink sink) {
    this.sink = sink;
    this.name = name;
    this.parser = parser;
  }

  /** Gives a sink all that a file has; an {@link InputFault} says what keeps it from being read. */
  static MapFile read(Path file, FeatureSink sink) {
    String name = file.toString();
    try (InputStream in = new BufferedInputStream(Files.newInputStream(file), 1 << 16);
        JsonParser parser = new JsonFactory().createParser(ByteOrderMark.skip(in))) {
      GeoJsonReader reader = new GeoJsonReader(name, parser, sink);
      reader.readTop();
      String crs = reader.crs == null ? CrsLookup.WGS_84 : reader.crs;
      return sink.toMap(crs, reader.crs != null);
    } catch (JsonProcessingException e) {
      JsonLocation at = e.getLocation();
      Place place =
          at == null ? Place.file(name) : Place.at(name, at.getLineNr(), at.getColumnNr());
      String other = otherFormat(file);
      throw other.isEmpty()
          ? new InputFault(
              place, "not JSON: " + firstLine(e.getOriginalMessage()), "mend the file there", e)
          : new InputFault(
              Place.file(name),
              other + ", which isn't read",
              "save it as GeoJSON or GeoPackage with any map program",
              e);
    } catch (IOException e) {
      throw InputFault.unreadable(name, e);
    }
  }

  /** What a file that isn't JSON seems to be, by how it begins; "" when that isn't known. */
  private static String otherFormat(Path file) {
    MapHead head = MapHead.of(file);
    if (!head.rootElement().isEmpty()) {
      return "XML with a root element <" + head.rootElement() + ">";
    }
    return head.startsWith(new byte[] {'P', 'K', 3, 4}) ? "a zip archive without a map" : "";
  }

  private static String firstLine(String message) {
    int end = message.indexOf('\n');
    return end < 0 ? message : message.substring(0, end);
  }

  private void readTop() throws IOException {
    if (parser.nextToken() != JsonToken.START_OBJECT) {
      throw fault("found " + (parser.currentToken() == null ? "an empty file" : "no JSON object"));
    }
    Members top = members(true);
    if ("FeatureCollection".equals(top.type)) {
      if (!top.hasFeatures) {
        throw fault("a FeatureCollection without \"features\"");
      }
    } else if ("Feature".equals(top.type)) {
      add(top);
    } else if (GeoJsonGeometry.isType(top.type)) {
      Members feature = new Members();
      feature.geometry = top;
      add(feature);
    } else {
      throw fault(top.type == null ? "no \"type\"" : "\"type\" is \"" + top.type + "\"");
    }
    JsonToken after = parser.nextToken();
    if (after != null) {
      throw fault("something after the end of the JSON object");
    }
  }

  /** The members of one object that mean something in GeoJSON. */
  private static final class Members {
    String type;
    Object coordinates;
    List<Members> geometries;
    Members geometry;
    Map<String, Object> properties = Map.of();
    String id;
    boolean hasFeatures;
  }

  /** Reads from the start of an object to its end. */
  private Members members(boolean top) throws IOException {
    Members out = new Members();
    while (parser.nextToken() == JsonToken.FIELD_NAME) {
      String key = parser.currentName();
      JsonToken value = parser.nextToken();
      switch (key) {
        case "type" -> out.type = value.isScalarValue() ? parser.getText() : null;
        case "coordinates" -> out.coordinates = JsonValues.coordinates(parser, sink);
        case "geometries" -> out.geometries = value == JsonToken.START_ARRAY ? objects() : null;
        case "geometry" ->
            out.geometry = value == JsonToken.START_OBJECT ? members(false) : skipped();
        case "properties" ->
            out.properties =
                value == JsonToken.START_OBJECT ? JsonValues.object(parser) : noProperties();
        case "id" ->
            out.id =
                value.isScalarValue() && value != JsonToken.VALUE_NULL ? parser.getText() : id();
        case "features" -> {
          if (!top || value != JsonToken.START_ARRAY) {
            parser.skipChildren();
          } else {
            out.hasFeatures = true;
            readFeatures();
          }
        }
        case "crs" -> {
          if (top && value == JsonToken.START_OBJECT) {
            crs = GeoJsonCrs.code(JsonValues.object(parser), place());
          } else {
            parser.skipChildren();
          }
        }
        default -> parser.skipChildren();
      }
    }
    return out;
  }

  private Members skipped() throws IOException {
    parser.skipChildren();
    return null;
  }

  private Map<String, Object> noProperties() throws IOException {
    parser.skipChildren();
    return Map.of();
  }

  private String id() throws IOException {
    parser.skipChildren();
    return null;
  }

  private List<Members> objects() throws IOException {
    List<Members> out = new ArrayList<>();
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      if (parser.currentToken() == JsonToken.START_OBJECT) {
        out.add(members(false));
      } else {
        parser.skipChildren();
      }
    }
    return out;
  }

  private void readFeatures() throws IOException {
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      if (parser.currentToken() != JsonToken.START_OBJECT) {
        throw fault("feature " + (sink.seen() + 1) + " is no object");
      }
      Members feature = members(false);
      if (GeoJsonGeometry.isType(feature.type)) {
        // Some writers list bare geometries; what is meant is plain.
        Members wrapped = new Members();
        wrapped.geometry = feature;
        feature = wrapped;
      }
      add(feature);
    }
  }

  private void add(Members feature) {
    String trouble = "";
    Geometry geometry = null;
    if (feature.geometry != null) {
      try {
        geometry = geometry(feature.geometry, 0);
      } catch (IllegalArgumentException e) {
        trouble = e.getMessage();
      }
    }
    sink.add(new MapFeature(label(feature), feature.properties, geometry, trouble));
  }

  private String label(Members feature) {
    if (feature.id != null && !feature.id.isBlank()) {
      return feature.id;
    }
    Object said = feature.properties.get("name");
    return said instanceof String text && !text.isBlank() ? text : "feature " + (sink.seen() + 1);
  }

  private static Geometry geometry(Members members, int depth) {
    if (depth > 32) {
      throw new IllegalArgumentException("geometry collections nested too deep");
    }
    if ("GeometryCollection".equals(members.type)) {
      List<Geometry> parts = new ArrayList<>();
      for (Members part : members.geometries == null ? List.<Members>of() : members.geometries) {
        parts.add(geometry(part, depth + 1));
      }
      return MapShapes.collection(parts);
    }
    return GeoJsonGeometry.of(members.type, members.coordinates);
  }

  private Place place() {
    JsonLocation at = parser.currentTokenLocation();
    return Place.at(name, at.getLineNr(), at.getColumnNr());
  }

  private InputFault fault(String found) {
    return new InputFault(place(), found, WANTED);
  }
}
