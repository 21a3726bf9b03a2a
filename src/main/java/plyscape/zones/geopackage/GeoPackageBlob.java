package plyscape.zones.geopackage;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKBReader;
import plyscape.zones.map.MapShapes;

/**
 * Geometries as GeoPackage stores them: a header of magic, version, flags, CRS number and an
 * optional envelope, then well-known binary (OGC 12-128r18, clause 2.1.3).
 */
final class GeoPackageBlob {

  /** Bytes of the envelope by its code in the flags: none, xy, xyz, xym, xyzm. */
  private static final int[] ENVELOPE_BYTES = {0, 32, 48, 48, 64};

  private static final int HEADER_BYTES = 8;

  private GeoPackageBlob() {}

  /** The geometry; an IllegalArgumentException says what is wrong with the blob. */
  static Geometry read(byte[] blob) {
    if (blob.length < HEADER_BYTES || blob[0] != 'G' || blob[1] != 'P') {
      throw new IllegalArgumentException("no GeoPackage geometry");
    }
    int flags = blob[3];
    if ((flags & 0x20) != 0) {
      throw new IllegalArgumentException("an extended geometry type");
    }
    int envelope = flags >> 1 & 7;
    if (envelope >= ENVELOPE_BYTES.length) {
      throw new IllegalArgumentException("unknown envelope code " + envelope);
    }
    int start = HEADER_BYTES + ENVELOPE_BYTES[envelope];
    if (start >= blob.length) {
      throw new IllegalArgumentException("a geometry that is cut short");
    }
    if ((flags & 0x10) != 0) {
      return MapShapes.FACTORY.createGeometryCollection();
    }
    int curve = curve(blob, start);
    if (curve > 0) {
      throw new IllegalArgumentException(
          "a curved geometry (well-known binary type " + curve + "), not straight lines");
    }
    try {
      return new WKBReader(MapShapes.FACTORY).read(Arrays.copyOfRange(blob, start, blob.length));
    } catch (ParseException | RuntimeException e) {
      throw new IllegalArgumentException("a geometry that can't be read: " + e.getMessage(), e);
    }
  }

  /** The type of a geometry that has curves (ISO 13249-3: 8 to 12, without Z and M), or 0. */
  private static int curve(byte[] blob, int start) {
    if (start + 5 > blob.length) {
      return 0;
    }
    ByteBuffer b = ByteBuffer.wrap(blob);
    b.order(blob[start] == 0 ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN);
    int type = (b.getInt(start + 1) & 0xffff) % 1000;
    return type >= 8 && type <= 12 ? type : 0;
  }
}
