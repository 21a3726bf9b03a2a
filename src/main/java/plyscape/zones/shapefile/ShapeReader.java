package plyscape.zones.shapefile;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.LinkedHashMap;
import java.util.Map;
import org.locationtech.jts.geom.Geometry;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.zones.map.FeatureSink;
import plyscape.zones.map.MapFeature;

/** Goes through shapes and rows of the table together; the n-th row is the n-th shape's. */
final class ShapeReader {

  private static final int HEADER_BYTES = 100;
  private static final int RECORD_HEADER_BYTES = 8;

  /** Lengths are counted in words of two bytes. */
  private static final long WORD = 2;

  /** A shape of two thousand million bytes doesn't fit an array; nor any panel. */
  private static final long MOST_BYTES = 1_000_000_000;

  private final ShapeFiles files;
  private final FeatureSink sink;
  private final String layer;
  private final String crs;

  /**
   * Prepares.
   *
   * @param layer property {@code layer} of its features, or "" for none
   * @param crs of its features where it isn't the map's, or ""
   */
  ShapeReader(ShapeFiles files, FeatureSink sink, String layer, String crs) {
    this.files = files;
    this.sink = sink;
    this.layer = layer;
    this.crs = crs;
  }

  /** Reads all shapes. */
  void read() throws IOException {
    try (InputStream shapes = files.open(".shp");
        DbfTable table = DbfTable.open(files)) {
      if (table == null) {
        sink.note("shapefiles without a table (.dbf) beside them");
      }
      byte[] header = shapes.readNBytes(HEADER_BYTES);
      if (header.length < HEADER_BYTES) {
        throw cut("header");
      }
      long length = WORD * ByteBuffer.wrap(header).getInt(24);
      long at = HEADER_BYTES;
      for (int number = 1; ; number++) {
        byte[] head = shapes.readNBytes(RECORD_HEADER_BYTES);
        if (head.length == 0) {
          break;
        }
        if (head.length < RECORD_HEADER_BYTES) {
          throw cut("record " + number);
        }
        long bytes = WORD * ByteBuffer.wrap(head).getInt(4);
        if (bytes < 4 || bytes > MOST_BYTES) {
          throw fault("record " + number + " of " + bytes + " bytes");
        }
        byte[] record = shapes.readNBytes((int) bytes);
        if (record.length < bytes) {
          throw cut("record " + number);
        }
        at += RECORD_HEADER_BYTES + bytes;
        add(number, record, table);
      }
      if (at < length) {
        throw cut("shapes");
      }
    }
  }

  private void add(int number, byte[] record, DbfTable table) throws IOException {
    Map<String, Object> properties = table == null ? new LinkedHashMap<>() : table.next();
    if (properties == null) {
      return; // marked as deleted
    }
    if (!layer.isEmpty()) {
      properties.putIfAbsent("layer", layer);
    }
    if (!sink.wants(properties)) {
      return;
    }
    Geometry geometry = null;
    String trouble = "";
    try {
      geometry = ShapeRecord.geometry(ByteBuffer.wrap(record).order(ByteOrder.LITTLE_ENDIAN));
      sink.points(geometry.getNumPoints());
    } catch (IllegalArgumentException e) {
      trouble = e.getMessage();
    }
    String label = (layer.isEmpty() ? "" : layer + " ") + "record " + number;
    sink.keep(new MapFeature(label, properties, geometry, trouble, crs));
  }

  private InputFault cut(String where) {
    return new InputFault(
        Place.file(files.name()), "ends within its " + where + ": it was cut off", "fetch it anew");
  }

  private InputFault fault(String found) {
    return new InputFault(Place.file(files.name()), "a " + found, "export it anew");
  }
}
