package plyscape.zones.gpx;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import plyscape.fault.InputFault;
import plyscape.terrain.crs.CrsLookup;
import plyscape.zones.map.FeatureSink;
import plyscape.zones.map.MapFile;
import plyscape.zones.map.MapFormat;
import plyscape.zones.map.MapHead;
import plyscape.zones.map.MapQuery;
import plyscape.zones.xml.XmlReader;

/** GPX. */
public final class GpxFormat implements MapFormat {

  @Override
  public boolean accepts(MapHead head) {
    return head.rootElement().equals("gpx");
  }

  @Override
  public MapFile read(Path file, MapQuery query) {
    FeatureSink sink = new FeatureSink(file.toString(), query);
    try (XmlReader xml = new XmlReader(file.toString(), Files.newInputStream(file))) {
      new GpxReader(xml, sink, query.layer()).read();
      return sink.toMap(CrsLookup.WGS_84, true);
    } catch (IOException e) {
      throw InputFault.unreadable(file.toString(), e);
    }
  }
}
