package plyscape.sample;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.zip.DataFormatException;
import java.util.zip.Deflater;
import java.util.zip.Inflater;

/**
 * Writes a north-up float32 GeoTIFF, little endian, one DEFLATE strip per 50 rows, PixelIsArea, and
 * reads its own strips back. Tag numbers: TIFF 6.0 and OGC 19-008r4 (GeoTIFF 1.1).
 */
final class FloatTiff {

  private static final int ROWS_PER_STRIP = 50;
  private static final int SHORT = 3;
  private static final int LONG = 4;
  private static final int DOUBLE = 12;
  private static final int ASCII = 2;

  private FloatTiff() {}

  /** The file's bytes; {@code values} row by row from the north. */
  static byte[] write(
      float[] values, int columns, double minX, double maxY, double cellM, int epsg) {
    int rows = values.length / columns;
    int strips = (rows + ROWS_PER_STRIP - 1) / ROWS_PER_STRIP;
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    int[] offsets = new int[strips];
    int[] counts = new int[strips];
    for (int s = 0; s < strips; s++) {
      int from = s * ROWS_PER_STRIP * columns;
      int to = Math.min(from + ROWS_PER_STRIP * columns, values.length);
      byte[] packed = deflate(values, from, to);
      offsets[s] = 8 + body.size();
      counts[s] = packed.length;
      body.writeBytes(packed);
      if (body.size() % 2 == 1) {
        body.write(0);
      }
    }
    int directory = 8 + body.size();
    int entries = 15;
    ByteBuffer tags = buffer(2 + entries * 12 + 4);
    ByteBuffer extra = buffer(100_000);
    int extraAt = directory + tags.capacity();
    tags.putShort((short) entries);
    tag(tags, 256, SHORT, 1, columns);
    tag(tags, 257, SHORT, 1, rows);
    tag(tags, 258, SHORT, 1, 32);
    tag(tags, 259, SHORT, 1, 8); // DEFLATE
    tag(tags, 262, SHORT, 1, 1);
    tag(tags, 273, LONG, strips, extraAt + extra.position());
    for (int offset : offsets) {
      extra.putInt(offset);
    }
    tag(tags, 277, SHORT, 1, 1);
    tag(tags, 278, SHORT, 1, ROWS_PER_STRIP);
    tag(tags, 279, LONG, strips, extraAt + extra.position());
    for (int count : counts) {
      extra.putInt(count);
    }
    tag(tags, 284, SHORT, 1, 1);
    tag(tags, 339, SHORT, 1, 3); // floating point
    tag(tags, 33550, DOUBLE, 3, extraAt + extra.position());
    extra.putDouble(cellM).putDouble(cellM).putDouble(0);
    tag(tags, 33922, DOUBLE, 6, extraAt + extra.position());
    extra.putDouble(0).putDouble(0).putDouble(0).putDouble(minX).putDouble(maxY).putDouble(0);
    short[] keys = {1, 1, 0, 3, 1024, 0, 1, 1, 1025, 0, 1, 1, 3072, 0, 1, (short) epsg};
    tag(tags, 34735, SHORT, keys.length, extraAt + extra.position());
    for (short key : keys) {
      extra.putShort(key);
    }
    byte[] nodata = "-9999\0".getBytes(StandardCharsets.US_ASCII);
    tag(tags, 42113, ASCII, nodata.length, extraAt + extra.position());
    extra.put(nodata);
    tags.putInt(0);

    ByteBuffer out = buffer(8 + body.size() + tags.capacity() + extra.position());
    out.put((byte) 'I').put((byte) 'I').putShort((short) 42).putInt(directory);
    out.put(body.toByteArray()).put(tags.array()).put(extra.array(), 0, extra.position());
    return out.array();
  }

  /**
   * The values of a file that {@link #write} made, unpacked; compared rather than bytes, as packers
   * differ.
   */
  static float[] values(byte[] file) throws DataFormatException {
    ByteBuffer in = ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN);
    int at = in.getInt(4);
    int columns = 0;
    int rows = 0;
    int strips = 0;
    int offsets = 0;
    for (int i = 0, n = in.getShort(at); i < n; i++) {
      int entry = at + 2 + 12 * i;
      switch (in.getShort(entry) & 0xffff) {
        case 256 -> columns = in.getInt(entry + 8);
        case 257 -> rows = in.getInt(entry + 8);
        case 273 -> {
          strips = in.getInt(entry + 4);
          offsets = in.getInt(entry + 8);
        }
        default -> {}
      }
    }
    ByteBuffer all = buffer(columns * rows * 4);
    for (int s = 0; s < strips; s++) {
      Inflater inflater = new Inflater();
      int start = in.getInt(offsets + 4 * s);
      inflater.setInput(file, start, file.length - start);
      int got;
      byte[] chunk = new byte[columns * ROWS_PER_STRIP * 4];
      while (!inflater.finished() && (got = inflater.inflate(chunk)) > 0) {
        all.put(chunk, 0, got);
      }
      inflater.end();
    }
    float[] values = new float[columns * rows];
    all.flip();
    all.asFloatBuffer().get(values);
    return values;
  }

  private static ByteBuffer buffer(int size) {
    return ByteBuffer.allocate(size).order(ByteOrder.LITTLE_ENDIAN);
  }

  private static void tag(ByteBuffer tags, int number, int type, int count, int value) {
    tags.putShort((short) number).putShort((short) type).putInt(count).putInt(value);
  }

  private static byte[] deflate(float[] values, int from, int to) {
    ByteBuffer raw = buffer((to - from) * 4);
    for (int i = from; i < to; i++) {
      raw.putFloat(values[i]);
    }
    Deflater deflater = new Deflater(9);
    deflater.setInput(raw.array());
    deflater.finish();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    byte[] chunk = new byte[65536];
    while (!deflater.finished()) {
      out.write(chunk, 0, deflater.deflate(chunk));
    }
    deflater.end();
    return out.toByteArray();
  }
}
