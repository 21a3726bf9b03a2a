package plyscape.terrain.format;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import plyscape.fault.InputFault;
import plyscape.fault.Limit;
import plyscape.fault.Place;
import plyscape.terrain.crs.CrsLookup;
import plyscape.terrain.crs.GroundCrs;
import plyscape.terrain.crs.ProjectionFile;

/**
 * The ground points of a LAS file, versions 1.0 to 1.4 (ASPRS, LAS specification 1.4 R15),
 * uncompressed. Records are stepped over by the length that the header gives, as they may have
 * extra bytes.
 */
final class LasPoints {

  private static final int GROUND = 2;
  private static final int MOST_HEADER_BYTES = 4096;
  private static final int RECORD_HEADER_BYTES = 54;

  /** What stands before the points is looked through as far as this for the CRS. */
  private static final int MOST_BEFORE_BYTES = 10_000_000;

  /** Least bytes of a point by its format, 0 to 10. */
  private static final int[] LEAST_BYTES = {20, 28, 26, 34, 57, 63, 30, 36, 38, 59, 67};

  private final Path file;
  private final long all;
  private final GroundCrs crs;
  private double[][] xyz = new double[3][1 << 12];
  private int count;

  private LasPoints(Path file, long all, GroundCrs crs) {
    this.file = file;
    this.all = all;
    this.crs = crs;
  }

  /** Reads a whole file. */
  static LasPoints read(Path file) throws IOException {
    try (InputStream in = new BufferedInputStream(Files.newInputStream(file), 1 << 16)) {
      in.mark(MOST_HEADER_BYTES);
      byte[] start = in.readNBytes(375);
      ByteBuffer h = ByteBuffer.wrap(Arrays.copyOf(start, 375)).order(ByteOrder.LITTLE_ENDIAN);
      int format = h.get(104) & 0xff;
      int bytes = Short.toUnsignedInt(h.getShort(105));
      if (start.length < 227) {
        throw fault(file, "ends within its header: it was cut off", "fetch it anew");
      }
      if ((format & 0xc0) != 0) {
        throw fault(file, "packed points (LAZ), which aren't read", "unpack it to LAS");
      }
      if (format >= LEAST_BYTES.length || bytes < LEAST_BYTES[format]) {
        throw fault(
            file, "points of format " + format + " in " + bytes + " bytes", "export it anew");
      }
      boolean many = h.get(25) >= 4 && h.getShort(94) >= 375;
      long all = many ? h.getLong(247) : Integer.toUnsignedLong(h.getInt(107));
      in.reset();
      long offset = Integer.toUnsignedLong(h.getInt(96));
      long size = Files.size(file);
      if (all < 0 || offset > size || all > (size - offset) / bytes) {
        throw fault(
            file,
            "its header says " + all + " points, which " + size + " bytes can't hold",
            "check that the file is whole");
      }
      byte[] before = in.readNBytes((int) Math.min(offset, MOST_BEFORE_BYTES));
      in.skipNBytes(offset - before.length);
      LasPoints points = new LasPoints(file, all, crs(before, h, file));
      points.readAll(in, h, format, bytes);
      return points;
    }
  }

  private void readAll(InputStream in, ByteBuffer h, int format, int bytes) throws IOException {
    byte[] record = new byte[bytes];
    ByteBuffer p = ByteBuffer.wrap(record).order(ByteOrder.LITTLE_ENDIAN);
    for (long i = 0; i < all; i++) {
      if (in.readNBytes(record, 0, bytes) < bytes) {
        throw fault(file, "ends within point " + (i + 1) + ": it was cut off", "fetch it anew");
      }
      int kind = format < 6 ? record[15] & 0x1f : record[16] & 0xff;
      if (kind == GROUND) {
        add(p, h);
      }
    }
    if (count == 0) {
      throw fault(
          file, "no ground points (class 2) among " + all, "classify the cloud's ground first");
    }
  }

  private void add(ByteBuffer p, ByteBuffer h) {
    if (count == xyz[0].length) {
      if (count > Limit.PIXELS.value() / 2) {
        throw fault(file, "more than " + count + " ground points", Limit.PIXELS.help());
      }
      for (int axis = 0; axis < 3; axis++) {
        xyz[axis] = Arrays.copyOf(xyz[axis], 2 * count);
      }
    }
    for (int axis = 0; axis < 3; axis++) {
      double value = p.getInt(4 * axis) * h.getDouble(131 + 8 * axis) + h.getDouble(155 + 8 * axis);
      if (!Double.isFinite(value)) {
        throw fault(file, "a point without a place", "export it anew");
      }
      xyz[axis][count] = value;
    }
    count++;
  }

  /** The CRS of the records before the points: spelled out, or a code among GeoTIFF keys. */
  private static GroundCrs crs(byte[] before, ByteBuffer header, Path file) {
    Place place = Place.file(file.toString());
    ByteBuffer b = ByteBuffer.wrap(before).order(ByteOrder.LITTLE_ENDIAN);
    int at = Short.toUnsignedInt(header.getShort(94));
    long records = Integer.toUnsignedLong(header.getInt(100));
    for (long i = 0; i < records && at + RECORD_HEADER_BYTES <= before.length; i++) {
      int id = Short.toUnsignedInt(b.getShort(at + 18));
      int length = Short.toUnsignedInt(b.getShort(at + 20));
      at += RECORD_HEADER_BYTES;
      if (at + length > before.length) {
        break;
      }
      if (id == 2112) {
        String wkt = new String(before, at, length, StandardCharsets.UTF_8).replace("\0", "");
        String found = ProjectionFile.id(wkt);
        return found.isEmpty() ? GroundCrs.NONE : CrsLookup.describe(found, place);
      }
      if (id == 34735) {
        for (int key = at + 8; key + 8 <= at + length; key += 8) {
          int name = Short.toUnsignedInt(b.getShort(key));
          int code = Short.toUnsignedInt(b.getShort(key + 6));
          if (name == 3072 && code < 32767) {
            return CrsLookup.describe("EPSG:" + code, place);
          }
        }
      }
      at += length;
    }
    return GroundCrs.NONE;
  }

  private static InputFault fault(Path file, String found, String wanted) {
    return new InputFault(Place.file(file.toString()), found, wanted);
  }

  /** How many points the file has. */
  long all() {
    return all;
  }

  /** How many of them are ground. */
  int count() {
    return count;
  }

  GroundCrs crs() {
    return crs;
  }

  double x(int point) {
    return xyz[0][point];
  }

  double y(int point) {
    return xyz[1][point];
  }

  double z(int point) {
    return xyz[2][point];
  }

  double minX() {
    return Arrays.stream(xyz[0], 0, count).min().orElseThrow();
  }

  double maxX() {
    return Arrays.stream(xyz[0], 0, count).max().orElseThrow();
  }

  double minY() {
    return Arrays.stream(xyz[1], 0, count).min().orElseThrow();
  }

  double maxY() {
    return Arrays.stream(xyz[1], 0, count).max().orElseThrow();
  }
}
