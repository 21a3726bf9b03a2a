package plyscape.zones;

/** Small GeoJSON texts (RFC 7946) for tests. */
final class MapText {

  private MapText() {}

  static String square(double x, double y, double side) {
    return "{\"type\":\"Polygon\",\"coordinates\":[[["
        + x
        + ","
        + y
        + "],["
        + (x + side)
        + ","
        + y
        + "],["
        + (x + side)
        + ","
        + (y + side)
        + "],["
        + x
        + ","
        + (y + side)
        + "],["
        + x
        + ","
        + y
        + "]]]}";
  }

  static String feature(String properties, String geometry) {
    return "{\"type\":\"Feature\",\"properties\":" + properties + ",\"geometry\":" + geometry + "}";
  }

  static String collection(String... features) {
    return "{\"type\":\"FeatureCollection\",\"features\":[" + String.join(",", features) + "]}";
  }
}
