package plyscape.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.batik.parser.DefaultPathHandler;
import org.apache.batik.parser.PathParser;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import plyscape.fault.InputFault;
import plyscape.render.layer.LayerFile;
import plyscape.render.layer.SvgLayerReader;
import plyscape.render.layer.SvgLayers;

class SvgLayersTest {

  /** Areas by hand from {@link HandPlan}: carved 6300, ring 1600 - 400, island 64, bar 1200. */
  private static final double[] EXPOSED = {6300 - 1200 - 64 - 1200, 1200, 64, 1200};

  private static final double[] POCKET = {6300, 1200 + 64 + 1200, 64 + 1200, 1200};

  /**
   * The areas as another parser sees them: Apache Batik's path parser on what the JDK's DOM found.
   */
  @Test
  void areas_asBatikReadsThem() throws Exception {
    List<LayerFile> files = SvgLayers.write(HandPlan.landscape());
    assertEquals(
        List.of("01-meadow.svg", "02-barley.svg", "03-brick.svg", "04-deep-blue.svg"),
        files.stream().map(LayerFile::name).toList());
    for (int i = 0; i < files.size(); i++) {
      Document document = dom(files.get(i).text());
      assertEquals("100mm", document.getDocumentElement().getAttribute("width"));
      assertEquals("0 0 100 80", document.getDocumentElement().getAttribute("viewBox"));
      assertEquals(EXPOSED[i], batikArea(path(document, "exposed")), 1e-9);
      assertEquals(POCKET[i], batikArea(path(document, "pocket")), 1e-9);
    }
  }

  @Test
  void everyLayer_carriesThePanelsEdgeUnfilled() throws Exception {
    for (LayerFile layer : SvgLayers.write(HandPlan.landscape())) {
      assertTrue(
          layer
              .text()
              .contains(
                  "<path id=\"outline\" fill=\"none\" stroke=\"#000000\" stroke-width=\"0.1\"\n"
                      + "d=\"M0 0H100V80H0Z\"/>"),
          layer.text());
    }
  }

  @Test
  void readBack_givesRingsInPanelCoordinates() {
    LayerFile bar = SvgLayers.write(HandPlan.landscape()).get(3);
    SvgLayerReader.Layer layer = SvgLayerReader.read(bar.name(), bar.text());
    assertEquals(4, layer.plyNumber());
    assertEquals(100, layer.widthMm());
    assertEquals(80, layer.heightMm());
    assertEquals(1, layer.exposed().size());
    double[] ring = layer.exposed().get(0);
    assertEquals(8, ring.length);
    for (int i = 0; i < 8; i += 2) {
      assertTrue(ring[i] == 70 || ring[i] == 90);
      assertTrue(ring[i + 1] == 10 || ring[i + 1] == 70, "Y is up again");
    }
    assertEquals(1200, Math.abs(shoelace(ring)), 1e-9);
  }

  @Test
  void pathData_onlyTheContractsCommands() {
    for (LayerFile file : SvgLayers.write(HandPlan.landscape())) {
      for (String part : file.text().split("\nd=\"")) {
        if (part.startsWith("M")) {
          String data = part.substring(0, part.indexOf('"'));
          assertTrue(data.matches("[MLHVZ0-9. \n-]+"), data);
        }
      }
      assertFalse(file.text().contains("transform"));
      assertFalse(file.text().contains("\r"));
    }
  }

  @Test
  void namesFromInputs_areEscapedAndMakeSafeFileNames() throws Exception {
    String evil = "../<script>\"&'\u0000\n Ümlaut";
    LayerFile file = SvgLayers.write(HandPlan.landscape(evil)).get(0);
    assertEquals("01-script-umlaut.svg", file.name());
    Document document = dom(file.text());
    assertEquals(
        evil.replace('\u0000', '\ufffd'), path(document, "exposed").getAttribute("data-name"));
    assertEquals(0, document.getElementsByTagName("script").getLength());
    assertEquals("01-unnamed.svg", SvgLayers.write(HandPlan.landscape("語")).get(0).name());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "M0 0L1 1", // open
        "M0 0L1 1Z", // two points
        "M0 0C1 1 2 2 3 3Z", // curve
        "m0 0l1 1l0 1z", // relative
        "0 0L1 1L2 2Z",
        "M0 0L1 xL2 2Z",
        "M0 0L1 1L2 2Z5",
        "M0 0L1 1L2"
      })
  void brokenPaths_areFaultsWithTheirPlace(String data) {
    String text =
        "<svg width=\"9mm\" height=\"9mm\" viewBox=\"0 0 9 9\">\n<path id=\"exposed\" d=\""
            + data
            + "\"/>\n<path id=\"pocket\"/></svg>";
    InputFault fault = assertThrows(InputFault.class, () -> SvgLayerReader.read("02-x.svg", text));
    assertTrue(fault.getMessage().startsWith("02-x.svg:2:"), fault.getMessage());
  }

  @Test
  void brokenFiles_areFaults() {
    String good = SvgLayers.write(HandPlan.landscape()).get(0).text();
    for (String bad :
        List.of(
            "",
            good.substring(0, good.length() - 9),
            good.replace("viewBox=\"0 0 100 80\"", "viewBox=\"0 0 50 40\""),
            good.replace("<path id=\"exposed\"", "<path transform=\"scale(2)\" id=\"exposed\""),
            good.replace("id=\"exposed\"", "id=\"else\""),
            "<!DOCTYPE svg [<!ENTITY x SYSTEM \"file:///etc/hostname\">]><svg>&x;</svg>")) {
      assertThrows(InputFault.class, () -> SvgLayerReader.read("01-a.svg", bad));
    }
    assertThrows(InputFault.class, () -> SvgLayerReader.read("wood.svg", good));
  }

  private static Document dom(String text) throws Exception {
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new InputSource(new StringReader(text)));
  }

  private static Element path(Document document, String id) {
    NodeList paths = document.getElementsByTagName("path");
    for (int i = 0; i < paths.getLength(); i++) {
      Element path = (Element) paths.item(i);
      if (path.getAttribute("id").equals(id)) {
        assertEquals("evenodd", path.getAttribute("fill-rule"));
        return path;
      }
    }
    throw new AssertionError("no path " + id);
  }

  /** Signed areas added up: right for even-odd as shells and holes run opposite ways. */
  private static double batikArea(Element path) {
    List<double[]> areas = new ArrayList<>();
    PathParser parser = new PathParser();
    parser.setPathHandler(
        new DefaultPathHandler() {
          private double startX;
          private double startY;
          private double x;
          private double y;
          private double twice;

          @Override
          public void movetoAbs(float toX, float toY) {
            startX = x = toX;
            startY = y = toY;
            twice = 0;
          }

          @Override
          public void linetoAbs(float toX, float toY) {
            twice += x * toY - toX * y;
            x = toX;
            y = toY;
          }

          @Override
          public void linetoHorizontalAbs(float toX) {
            linetoAbs(toX, (float) y);
          }

          @Override
          public void linetoVerticalAbs(float toY) {
            linetoAbs((float) x, toY);
          }

          @Override
          public void closePath() {
            linetoAbs((float) startX, (float) startY);
            areas.add(new double[] {twice / 2});
          }
        });
    parser.parse(path.getAttribute("d"));
    return Math.abs(areas.stream().mapToDouble(a -> a[0]).sum());
  }

  private static double shoelace(double[] ring) {
    double twice = 0;
    for (int i = 0; i < ring.length; i += 2) {
      int j = (i + 2) % ring.length;
      twice += ring[i] * ring[j + 1] - ring[j] * ring[i + 1];
    }
    return twice / 2;
  }
}
