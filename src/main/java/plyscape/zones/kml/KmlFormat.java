package plyscape.zones.kml;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import plyscape.fault.InputFault;
import plyscape.terrain.crs.CrsLookup;
import plyscape.zones.map.FeatureSink;
import plyscape.zones.map.MapFile;
import plyscape.zones.map.MapFormat;
import plyscape.zones.map.MapHead;
import plyscape.zones.map.MapQuery;
import plyscape.zones.map.ZippedMap;
import plyscape.zones.xml.XmlReader;

/** KML and KMZ. */
public final class KmlFormat implements MapFormat {

  @Override
  public boolean accepts(MapHead head) {
    return head.rootElement().equals("kml")
        || ZippedMap.is(head) && !ZippedMap.names(head.file(), ".kml").isEmpty();
  }

  @Override
  public MapFile read(Path file, MapQuery query) {
    if (!ZippedMap.is(MapHead.of(file))) {
      try {
        return read(file.toString(), Files.newInputStream(file), query);
      } catch (IOException e) {
        throw InputFault.unreadable(file.toString(), e);
      }
    }
    // The first in the archive is the map; others are what it links to.
    try (ZippedMap zip = new ZippedMap(file)) {
      return read(file.toString(), zip.open(ZippedMap.names(file, ".kml").get(0)), query);
    } catch (IOException e) {
      throw ZippedMap.fault(file, e);
    }
  }

  private static MapFile read(String name, InputStream in, MapQuery query) throws IOException {
    FeatureSink sink = new FeatureSink(name, query);
    try (XmlReader xml = new XmlReader(name, in)) {
      new KmlReader(xml, sink, query.layer()).read();
      return sink.toMap(CrsLookup.WGS_84, true);
    }
  }
}
