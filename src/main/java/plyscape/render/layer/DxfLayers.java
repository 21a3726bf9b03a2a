package plyscape.render.layer;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import plyscape.files.PlanFiles;
import plyscape.layup.PlyDepth;
import plyscape.plan.Landscape;
import plyscape.text.Numbers;

/**
 * The layers as DXF of release 12 in ASCII, one file a ply: closed polylines on the layers EXPOSED
 * and POCKET, coordinates in panel mm, Y up, rounded to 0.001. R12 has no units; the header's
 * comment says mm. No names from inputs go into the file but the ply's slug.
 */
public final class DxfLayers {

  private DxfLayers() {}

  /** The files, top ply first. */
  public static List<LayerFile> write(Landscape plan) {
    List<LayerFile> files = new ArrayList<>();
    for (Map.Entry<Integer, MultiPolygon> layer : plan.tiling().exposed().entrySet()) {
      PlyDepth depth = plan.depths().of(layer.getKey());
      String name = PlanFiles.layerName(depth.ply().number(), depth.ply().name());
      StringBuilder out = new StringBuilder();
      tag(out, 999, "plyscape, ply " + name + ", millimetres, Y up");
      tag(out, 0, "SECTION");
      tag(out, 2, "HEADER");
      tag(out, 9, "$ACADVER");
      tag(out, 1, "AC1009");
      tag(out, 0, "ENDSEC");
      tag(out, 0, "SECTION");
      tag(out, 2, "TABLES");
      tag(out, 0, "TABLE");
      tag(out, 2, "LAYER");
      tag(out, 70, "2");
      layer(out, "EXPOSED", 3);
      layer(out, "POCKET", 8);
      tag(out, 0, "ENDTAB");
      tag(out, 0, "ENDSEC");
      tag(out, 0, "SECTION");
      tag(out, 2, "ENTITIES");
      rings(out, "EXPOSED", layer.getValue());
      rings(out, "POCKET", plan.tiling().pockets().get(layer.getKey()));
      tag(out, 0, "ENDSEC");
      tag(out, 0, "EOF");
      files.add(new LayerFile(name + ".dxf", out.toString()));
    }
    return files;
  }

  private static void layer(StringBuilder out, String name, int colour) {
    tag(out, 0, "LAYER");
    tag(out, 2, name);
    tag(out, 70, "0");
    tag(out, 62, Integer.toString(colour));
    tag(out, 6, "CONTINUOUS");
  }

  private static void rings(StringBuilder out, String layer, MultiPolygon area) {
    for (int i = 0; i < area.getNumGeometries(); i++) {
      Polygon polygon = (Polygon) area.getGeometryN(i);
      ring(out, layer, polygon.getExteriorRing());
      for (int j = 0; j < polygon.getNumInteriorRing(); j++) {
        ring(out, layer, polygon.getInteriorRingN(j));
      }
    }
  }

  private static void ring(StringBuilder out, String layer, LineString ring) {
    tag(out, 0, "POLYLINE");
    tag(out, 8, layer);
    tag(out, 66, "1"); // vertices follow
    tag(out, 10, "0");
    tag(out, 20, "0");
    tag(out, 30, "0");
    tag(out, 70, "1"); // closed
    Coordinate[] points = ring.getCoordinates();
    for (int i = 0; i + 1 < points.length; i++) {
      tag(out, 0, "VERTEX");
      tag(out, 8, layer);
      tag(out, 10, Numbers.trimmed(points[i].x, 3));
      tag(out, 20, Numbers.trimmed(points[i].y, 3));
      tag(out, 30, "0");
    }
    tag(out, 0, "SEQEND");
    tag(out, 8, layer);
  }

  private static void tag(StringBuilder out, int code, String value) {
    out.append(code).append('\n').append(value).append('\n');
  }
}
