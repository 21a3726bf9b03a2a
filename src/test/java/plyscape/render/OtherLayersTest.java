package plyscape.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;
import plyscape.render.layer.DxfLayers;
import plyscape.render.layer.GeoJsonLayers;
import plyscape.render.layer.LayerFile;

/**
 * Sheet, GeoJSON and DXF hold the same areas as the plan: meadow 3836, barley 1200, brick 64, deep
 * blue 1200 mm2.
 */
class OtherLayersTest {

  private static final double[] AREAS = {3836, 1200, 64, 1200};

  @Test
  void geoJson_closedRingsByTheRightHandRule_withTheAreas() throws Exception {
    List<LayerFile> files = GeoJsonLayers.write(HandPlan.landscape("a\"\\\n\u0001<é"));
    assertEquals("02-barley.geojson", files.get(1).name());
    for (int i = 0; i < files.size(); i++) {
      JsonNode root = new ObjectMapper().readTree(files.get(i).text());
      JsonNode exposed = root.get("features").get(0);
      assertEquals("exposed", exposed.get("id").asText());
      assertEquals(i + 1, exposed.get("properties").get("ply").asInt());
      double area = 0;
      for (JsonNode polygon : exposed.get("geometry").get("coordinates")) {
        for (int r = 0; r < polygon.size(); r++) {
          JsonNode ring = polygon.get(r);
          assertEquals(ring.get(0), ring.get(ring.size() - 1), "closed, RFC 7946 section 3.1.6");
          double signed = signedArea(ring);
          assertTrue(
              r == 0 ? signed > 0 : signed < 0,
              "shells counterclockwise, holes clockwise, same section");
          area += signed;
        }
      }
      assertEquals(AREAS[i], area, 1e-9);
    }
    JsonNode first = new ObjectMapper().readTree(files.get(0).text());
    assertEquals(
        "a\"\\\n\u0001<é", first.get("features").get(0).get("properties").get("name").asText());
  }

  /**
   * Group codes and the POLYLINE, VERTEX, SEQEND structure as the published DXF reference for R12
   * has them.
   */
  @Test
  void dxf_closedPolylines_withTheAreas() {
    List<LayerFile> files = DxfLayers.write(HandPlan.landscape());
    for (int i = 0; i < files.size(); i++) {
      String[] lines = files.get(i).text().split("\n");
      assertEquals("EOF", lines[lines.length - 1]);
      List<Double> areas = new ArrayList<>();
      List<double[]> ring = new ArrayList<>();
      String entity = "";
      String layer = "";
      for (int k = 0; k + 1 < lines.length; k += 2) {
        int code = Integer.parseInt(lines[k]);
        if (code == 0) {
          entity = lines[k + 1];
          if (entity.equals("SEQEND") && layer.equals("EXPOSED")) {
            areas.add(Math.abs(shoelace(ring)));
          }
          if (entity.equals("SEQEND")) {
            ring.clear();
          }
        } else if (code == 8) {
          layer = lines[k + 1];
        } else if (entity.equals("VERTEX") && code == 10) {
          ring.add(new double[] {Double.parseDouble(lines[k + 1]), 0});
        } else if (entity.equals("VERTEX") && code == 20) {
          ring.get(ring.size() - 1)[1] = Double.parseDouble(lines[k + 1]);
        }
      }
      // Unsigned: holes count too, so take them off by hand: meadow 6300 - 1600 - 1200 and 400 -
      // 64, barley 1600 - 400.
      double sum = areas.stream().mapToDouble(a -> a).sum();
      double[] all = {6300 + 1600 + 1200 + 400 + 64, 1600 + 400, 64, 1200};
      assertEquals(all[i], sum, 1e-9);
    }
  }

  @Test
  void sheet_hasMarksAtThePanelsCornersAndAScaleBar() throws Exception {
    Document sheet =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new InputSource(new StringReader(SvgSheet.write(HandPlan.landscape("<&>")))));
    List<String> centres = new ArrayList<>();
    for (int i = 0; i < sheet.getElementsByTagName("circle").getLength(); i++) {
      Element circle = (Element) sheet.getElementsByTagName("circle").item(i);
      centres.add(circle.getAttribute("cx") + "," + circle.getAttribute("cy"));
    }
    assertEquals(List.of("20,20", "120,20", "20,100", "120,100"), centres);
    assertTrue(sheet.getDocumentElement().getAttribute("viewBox").startsWith("0 0 220 "));
    assertEquals("220mm", sheet.getDocumentElement().getAttribute("width"));
    Element bar =
        (Element)
            ((Element) sheet.getElementsByTagName("g").item(6))
                .getElementsByTagName("rect")
                .item(0);
    assertEquals("20", bar.getAttribute("width"));
    assertEquals(
        "<&>", ((Element) sheet.getElementsByTagName("g").item(1)).getAttribute("data-name"));
  }

  private static double signedArea(JsonNode ring) {
    List<double[]> points = new ArrayList<>();
    for (int i = 0; i + 1 < ring.size(); i++) {
      points.add(new double[] {ring.get(i).get(0).asDouble(), ring.get(i).get(1).asDouble()});
    }
    return shoelace(points);
  }

  private static double shoelace(List<double[]> ring) {
    double twice = 0;
    for (int i = 0; i < ring.size(); i++) {
      double[] a = ring.get(i);
      double[] b = ring.get((i + 1) % ring.size());
      twice += a[0] * b[1] - b[0] * a[1];
    }
    return twice / 2;
  }
}
