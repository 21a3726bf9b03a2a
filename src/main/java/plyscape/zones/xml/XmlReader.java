package plyscape.zones.xml;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import plyscape.fault.InputFault;
import plyscape.fault.Place;

/** Pulls elements out of an XML file, by local names; prefixes and namespaces are passed over. */
public final class XmlReader implements AutoCloseable {

  /** Deeper nesting than this isn't in any map, and would cost stack. */
  private static final int MOST_LEVELS = 500;

  private final String file;
  private final InputStream in;
  private final XMLStreamReader stream;
  private int depth;

  /**
   * Starts before the root element.
   *
   * @param file name for messages
   * @param in its bytes; closed with this
   */
  public XmlReader(String file, InputStream in) {
    this.file = file;
    this.in = new BufferedInputStream(in, 1 << 16);
    XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    try {
      stream = factory.createXMLStreamReader(this.in);
    } catch (XMLStreamException e) {
      throw fault(e);
    }
  }

  /**
   * Goes to the next element's start within the element whose start was at a depth, over all
   * levels.
   *
   * @param within depth of the element, 0 for the whole file
   * @return its local name, or null when that element has ended
   */
  public String next(int within) {
    try {
      while (stream.hasNext()) {
        int event = stream.next();
        if (event == XMLStreamConstants.START_ELEMENT) {
          if (++depth > MOST_LEVELS) {
            throw fault("elements nested deeper than " + MOST_LEVELS, "wanted a map");
          }
          return stream.getLocalName();
        }
        if (event == XMLStreamConstants.END_ELEMENT && --depth < within) {
          return null;
        }
      }
      return null;
    } catch (XMLStreamException e) {
      throw fault(e);
    }
  }

  /** How many elements are open; 1 just after the root's start. */
  public int depth() {
    return depth;
  }

  /** An attribute of the element that was just started, or null. */
  public String attribute(String name) {
    return stream.getAttributeValue(null, name);
  }

  /** All text of the element that was just started, and of those in it; goes to its end. */
  public String text() {
    int within = depth;
    StringBuilder out = new StringBuilder();
    try {
      while (stream.hasNext()) {
        int event = stream.next();
        if (event == XMLStreamConstants.START_ELEMENT) {
          depth++;
        } else if (event == XMLStreamConstants.CHARACTERS || event == XMLStreamConstants.CDATA) {
          out.append(stream.getTextCharacters(), stream.getTextStart(), stream.getTextLength());
        } else if (event == XMLStreamConstants.END_ELEMENT && --depth < within) {
          break;
        }
      }
      return out.toString().strip();
    } catch (XMLStreamException e) {
      throw fault(e);
    }
  }

  /**
   * A number as XML's schema for decimals has it.
   *
   * @param what for the message if it is none
   * @param text null counts as none
   */
  public double number(String what, String text) {
    try {
      double value = text == null ? Double.NaN : Double.parseDouble(text.strip());
      if (Double.isFinite(value)) {
        return value;
      }
    } catch (NumberFormatException e) {
      // said below
    }
    throw fault(text == null ? "no " + what : what + " \"" + text + "\"", "wanted a number there");
  }

  /** A fault at the current line and column. */
  public InputFault fault(String found, String wanted) {
    return new InputFault(place(), found, wanted);
  }

  private Place place() {
    var at = stream.getLocation();
    return Place.at(file, Math.max(0, at.getLineNumber()), Math.max(0, at.getColumnNumber()));
  }

  private InputFault fault(XMLStreamException e) {
    Place place =
        e.getLocation() == null
            ? Place.file(file)
            : Place.at(
                file,
                Math.max(0, e.getLocation().getLineNumber()),
                Math.max(0, e.getLocation().getColumnNumber()));
    if (e.getNestedException() instanceof IOException io) {
      return new InputFault(place, "can't be read: " + io.getMessage(), "mend the file there", e);
    }
    return new InputFault(
        place, "not well-formed XML: " + words(e.getMessage()), "mend the file there", e);
  }

  /** The parser's message without its own line and column, on one line. */
  private static String words(String message) {
    if (message == null) {
      return "unknown fault";
    }
    int at = message.indexOf("Message: ");
    String plain = at < 0 ? message : message.substring(at + 9);
    return plain.replaceAll("\\s+", " ").strip();
  }

  @Override
  public void close() throws IOException {
    try {
      stream.close();
    } catch (XMLStreamException e) {
      throw fault(e);
    } finally {
      in.close();
    }
  }
}
