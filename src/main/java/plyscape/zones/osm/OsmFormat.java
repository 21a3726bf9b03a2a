package plyscape.zones.osm;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import plyscape.fault.InputFault;
import plyscape.zones.map.FeatureSink;
import plyscape.zones.map.MapFile;
import plyscape.zones.map.MapFormat;
import plyscape.zones.map.MapHead;
import plyscape.zones.map.MapQuery;

/** OpenStreetMap's two formats for extracts. */
public final class OsmFormat implements MapFormat {

  /** The type of the first block, field 1 of its header; four bytes of length stand before it. */
  private static final byte[] HEADER = "\n\tOSMHeader".getBytes(StandardCharsets.US_ASCII);

  private static final int LENGTH_BYTES = 4;

  @Override
  public boolean accepts(MapHead head) {
    return packed(head) || head.rootElement().equals("osm");
  }

  private static boolean packed(MapHead head) {
    byte[] bytes = head.bytes();
    int end = LENGTH_BYTES + HEADER.length;
    return head.endsWith(".pbf")
        || bytes.length >= end && Arrays.equals(bytes, LENGTH_BYTES, end, HEADER, 0, HEADER.length);
  }

  /** Of a country only what lies near is held. */
  @Override
  public boolean wholly() {
    return false;
  }

  @Override
  public MapFile read(Path file, MapQuery query) {
    String name = file.toString();
    try (OsmSource source = packed(MapHead.of(file)) ? new PbfSource(file) : new XmlSource(file)) {
      return new OsmReader(source, new FeatureSink(name, query), query).read();
    } catch (IOException e) {
      throw InputFault.unreadable(name, e);
    }
  }
}
