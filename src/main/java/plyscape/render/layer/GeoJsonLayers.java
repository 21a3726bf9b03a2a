package plyscape.render.layer;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import plyscape.files.PlanFiles;
import plyscape.layup.PlyDepth;
import plyscape.plan.Landscape;
import plyscape.text.Template;

/**
 * The layers as GeoJSON, one file a ply with two features, {@code exposed} and {@code pocket}.
 * Structure, closed rings and the right-hand rule after RFC 7946; the coordinates are panel mm with
 * Y up, by arrangement and not longitude and latitude, which a member {@code units} says. Rounded
 * to 0.001.
 */
public final class GeoJsonLayers {

  private GeoJsonLayers() {}

  /** The files, top ply first. */
  public static List<LayerFile> write(Landscape plan) {
    List<LayerFile> files = new ArrayList<>();
    for (Map.Entry<Integer, MultiPolygon> layer : plan.tiling().exposed().entrySet()) {
      PlyDepth depth = plan.depths().of(layer.getKey());
      StringBuilder out =
          new StringBuilder(
              "{\"type\": \"FeatureCollection\", \"units\": \"mm on the panel, Y up\","
                  + " \"features\": [\n");
      feature(out, "exposed", depth, layer.getValue());
      out.append(",\n");
      feature(out, "pocket", depth, plan.tiling().pockets().get(layer.getKey()));
      files.add(
          new LayerFile(
              PlanFiles.layerName(depth.ply().number(), depth.ply().name()) + ".geojson",
              out.append("\n]}\n").toString()));
    }
    return files;
  }

  private static void feature(StringBuilder out, String id, PlyDepth depth, MultiPolygon area) {
    out.append(
        Template.fill(
            "{\"type\": \"Feature\", \"id\": \"%s\", \"properties\": {\"ply\": %s, \"name\": %s,"
                + " \"colour\": \"%s\", \"target_mm\": %.6t}, \"geometry\": {\"type\":"
                + " \"MultiPolygon\", \"coordinates\": [",
            id,
            depth.ply().number(),
            quoted(depth.ply().name()),
            depth.ply().colour(),
            depth.targetMm()));
    for (int i = 0; i < area.getNumGeometries(); i++) {
      Polygon polygon = (Polygon) area.getGeometryN(i);
      out.append(i > 0 ? ",\n[" : "[");
      ring(out, polygon.getExteriorRing(), true);
      for (int j = 0; j < polygon.getNumInteriorRing(); j++) {
        ring(out.append(", "), polygon.getInteriorRingN(j), false);
      }
      out.append(']');
    }
    out.append("]}}");
  }

  private static void ring(StringBuilder out, LineString ring, boolean counterClockwise) {
    Coordinate[] points = ring.getCoordinates();
    boolean reverse = Orientation.isCCW(points) != counterClockwise;
    out.append('[');
    for (int i = 0; i < points.length; i++) {
      Coordinate point = points[reverse ? points.length - 1 - i : i];
      out.append(Template.fill("%s%.3t, %.3t]", i > 0 ? ", [" : "[", point.x, point.y));
    }
    out.append(']');
  }

  /** A JSON string (RFC 8259, section 7). */
  private static String quoted(String text) {
    StringBuilder out = new StringBuilder("\"");
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '"' || c == '\\') {
        out.append('\\').append(c);
      } else if (c < 0x20
          || c == 0x7f
          || Character.isSurrogate(c)
          || c == '\u2028'
          || c == '\u2029') {
        out.append(String.format(java.util.Locale.ROOT, "\\u%04x", (int) c));
      } else {
        out.append(c);
      }
    }
    return out.append('"').toString();
  }
}
