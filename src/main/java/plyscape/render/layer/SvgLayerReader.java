package plyscape.render.layer;

import java.io.StringReader;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import javax.xml.stream.Location;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import plyscape.fault.InputFault;
import plyscape.fault.Place;

/**
 * Reads the layers that {@link SvgLayers} wrote back from their text, strictly: what
 * src/contract.md, section 7, doesn't have (another path command, a transform, a view box that
 * isn't the panel) is a fault with its line. No DTD, no entities from outside.
 */
public final class SvgLayerReader {

  /**
   * A layer as read: rings in panel mm, Y up, each closed without repeating its first point, as x,
   * y, x, y ...
   *
   * @param plyNumber the file name's leading number
   * @param widthMm the panel's
   * @param heightMm the panel's
   * @param exposed even-odd rings
   * @param pocket even-odd rings
   */
  public record Layer(
      int plyNumber,
      double widthMm,
      double heightMm,
      List<double[]> exposed,
      List<double[]> pocket) {}

  private final String fileName;
  private final Map<String, List<double[]>> paths = new TreeMap<>();

  /** The panel's, mm; null before the svg element. */
  private double[] size;

  private SvgLayerReader(String fileName) {
    this.fileName = fileName;
  }

  /**
   * Reads one file.
   *
   * @throws InputFault if it isn't a layer as src/contract.md has it
   */
  public static Layer read(String fileName, String text) {
    int plyNumber = plyNumber(fileName);
    SvgLayerReader reader = new SvgLayerReader(fileName);
    reader.elements(text);
    return reader.layer(plyNumber);
  }

  private static int plyNumber(String fileName) {
    int hyphen = fileName.indexOf('-');
    if (hyphen < 1 || !fileName.substring(0, hyphen).matches("[0-9]{1,4}")) {
      throw new InputFault(
          Place.file(fileName),
          "no ply number before the first hyphen of its name",
          "such as 02-wood.svg");
    }
    return Integer.parseInt(fileName.substring(0, hyphen));
  }

  private void elements(String text) {
    XMLInputFactory factory = XMLInputFactory.newInstance();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    try {
      XMLStreamReader xml = factory.createXMLStreamReader(new StringReader(text));
      while (xml.hasNext()) {
        if (xml.next() == XMLStreamConstants.START_ELEMENT) {
          element(place(fileName, xml.getLocation()), xml);
        }
      }
    } catch (XMLStreamException e) {
      throw new InputFault(
          place(fileName, e.getLocation()), "not well-formed XML", "write the plan again", e);
    }
  }

  private void element(Place place, XMLStreamReader xml) {
    if (xml.getAttributeValue(null, "transform") != null) {
      throw new InputFault(place, "a transform", "layers are in panel mm without one");
    }
    if (xml.getLocalName().equals("svg") && size == null) {
      size = size(place, xml);
    } else if (xml.getLocalName().equals("path") && size != null) {
      path(place, xml);
    }
  }

  private void path(Place place, XMLStreamReader xml) {
    String id = xml.getAttributeValue(null, "id");
    String data = xml.getAttributeValue(null, "d");
    if (id == null) {
      return;
    }
    if (paths.put(id, new SvgPathReader(place, data == null ? "" : data, size[1]).rings())
        != null) {
      throw new InputFault(place, "a second path \"" + id + "\"", "one of each is wanted");
    }
  }

  private Layer layer(int plyNumber) {
    if (size == null || !paths.containsKey("exposed") || !paths.containsKey("pocket")) {
      throw new InputFault(
          Place.file(fileName), "no paths exposed and pocket in an svg", "write the plan again");
    }
    return new Layer(plyNumber, size[0], size[1], paths.get("exposed"), paths.get("pocket"));
  }

  private static double[] size(Place place, XMLStreamReader xml) {
    String box = xml.getAttributeValue(null, "viewBox");
    String[] words = box == null ? new String[0] : box.trim().split("[\\s,]+");
    try {
      double width = Double.parseDouble(words[2]);
      double height = Double.parseDouble(words[3]);
      if (words.length == 4
          && Double.parseDouble(words[0]) == 0
          && Double.parseDouble(words[1]) == 0
          && width > 0
          && height > 0
          && mm(xml.getAttributeValue(null, "width")) == width
          && mm(xml.getAttributeValue(null, "height")) == height) {
        return new double[] {width, height};
      }
    } catch (NumberFormatException | ArrayIndexOutOfBoundsException e) {
      throw new InputFault(
          place, "viewBox \"" + box + "\"", "0 0 and the panel's size in mm are wanted", e);
    }
    throw new InputFault(
        place,
        "viewBox \"" + box + "\"",
        "0 0 and the panel's size are wanted, width and height the same in mm");
  }

  private static double mm(String length) {
    return length != null && length.endsWith("mm")
        ? Double.parseDouble(length.substring(0, length.length() - 2))
        : -1;
  }

  private static Place place(String file, Location location) {
    return location == null
        ? Place.file(file)
        : Place.at(file, location.getLineNumber(), location.getColumnNumber());
  }
}
