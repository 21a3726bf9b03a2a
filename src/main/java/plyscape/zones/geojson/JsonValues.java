package plyscape.zones.geojson;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import plyscape.zones.map.FeatureSink;

/** JSON values as plain Java values. */
final class JsonValues {

  private JsonValues() {}

  /** The object that the parser stands at the start of; its nulls are left out. */
  static Map<String, Object> object(JsonParser parser) throws IOException {
    Map<String, Object> out = new LinkedHashMap<>();
    while (parser.nextToken() == JsonToken.FIELD_NAME) {
      String key = parser.currentName();
      parser.nextToken();
      Object value = value(parser);
      if (value != null) {
        out.put(key, value);
      }
    }
    return out;
  }

  /** The value that the parser stands at: String, Double, Boolean, List, Map or null. */
  private static Object value(JsonParser parser) throws IOException {
    return switch (parser.currentToken()) {
      case START_OBJECT -> object(parser);
      case START_ARRAY -> {
        List<Object> list = new ArrayList<>();
        while (parser.nextToken() != JsonToken.END_ARRAY) {
          Object value = value(parser);
          if (value != null) {
            list.add(value);
          }
        }
        yield list;
      }
      case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> parser.getDoubleValue();
      case VALUE_TRUE -> true;
      case VALUE_FALSE -> false;
      case VALUE_STRING -> parser.getText();
      default -> null;
    };
  }

  /**
   * Nested arrays of numbers: an array that begins with a number is a {@link Coordinate}, others
   * are lists of what they hold. Whatever else stands there is a String saying what, so that the
   * feature can be reported.
   */
  static Object coordinates(JsonParser parser, FeatureSink sink) throws IOException {
    if (parser.currentToken() != JsonToken.START_ARRAY) {
      String found = parser.currentToken() == JsonToken.VALUE_NULL ? "null" : "no array";
      parser.skipChildren();
      return found;
    }
    JsonToken first = parser.nextToken();
    if (first.isNumeric()) {
      sink.points(1);
      return position(parser);
    }
    List<Object> list = new ArrayList<>();
    while (parser.currentToken() != JsonToken.END_ARRAY) {
      list.add(coordinates(parser, sink));
      parser.nextToken();
    }
    return list;
  }

  private static Object position(JsonParser parser) throws IOException {
    double x = parser.getDoubleValue();
    double y = Double.NaN;
    int n = 0;
    for (JsonToken t = parser.currentToken();
        t != JsonToken.END_ARRAY;
        t = parser.nextToken(), n++) {
      if (n == 1 && t.isNumeric()) {
        y = parser.getDoubleValue();
      } else if (!t.isNumeric()) {
        // Altitude and what else follows may be null in the wild; only x and y count.
        parser.skipChildren();
      }
    }
    return Double.isFinite(x) && Double.isFinite(y)
        ? new Coordinate(x, y)
        : "a position without two numbers";
  }
}
