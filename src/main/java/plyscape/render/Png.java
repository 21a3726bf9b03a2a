package plyscape.render;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.stream.IntStream;
import java.util.zip.CRC32;

/**
 * Writes an 8-bit RGB or 16-bit grey PNG (W3C PNG, second edition): one IDAT, each row by the
 * filter (none, sub or up) with the least sum of absolute differences, as the standard's section
 * 12.8 suggests. No time stamp.
 */
final class Png {

  private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'};

  /** Kinds of colour in the head. */
  private static final int GREY = 0;

  private static final int RGB = 2;

  private Png() {}

  /** The file's bytes. {@code pixelsPerMetre} tells programs the true size, 0 leaves it open. */
  static byte[] write(Canvas canvas, int pixelsPerMetre) {
    return file(canvas.width(), canvas.height(), 8, RGB, pixelsPerMetre, filtered(canvas));
  }

  /** A 16-bit grey PNG, each row as the difference from the one above. */
  static byte[] grey16(int columns, int rows, int[] samples) {
    byte[] raw = new byte[Math.multiplyExact(2 * columns + 1, rows)];
    int at = 0;
    for (int row = 0; row < rows; row++) {
      raw[at++] = 2;
      for (int column = 0; column < columns; column++) {
        int here = samples[row * columns + column];
        int above = row == 0 ? 0 : samples[(row - 1) * columns + column];
        raw[at++] = (byte) ((here >> 8) - (above >> 8));
        raw[at++] = (byte) (here - above);
      }
    }
    return file(columns, rows, 16, GREY, 0, raw);
  }

  private static byte[] file(
      int width, int height, int bits, int kind, int pixelsPerMetre, byte[] rows) {
    ByteBuffer head = ByteBuffer.allocate(13).putInt(width).putInt(height);
    head.put((byte) bits).put((byte) kind); // the rest 0: deflate, the usual filters, no interlace
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(SIGNATURE);
    chunk(out, "IHDR", head.array());
    if (pixelsPerMetre > 0) {
      ByteBuffer size = ByteBuffer.allocate(9).putInt(pixelsPerMetre).putInt(pixelsPerMetre);
      chunk(out, "pHYs", size.put((byte) 1).array());
    }
    chunk(out, "IDAT", Zlib.pack(rows));
    chunk(out, "IEND", new byte[0]);
    return out.toByteArray();
  }

  private static byte[] filtered(Canvas canvas) {
    int bytes = canvas.width() * 3;
    byte[] out = new byte[Math.multiplyExact(bytes + 1, canvas.height())];
    IntStream.range(0, canvas.height())
        .parallel()
        .forEach(y -> filter(canvas.pixels(), canvas.width(), y, out, y * (bytes + 1)));
    return out;
  }

  /** Most pixels are as the one beside or above them, which costs a look each. */
  private static void filter(int[] pixels, int width, int y, byte[] out, int start) {
    int base = y * width;
    int[] above = y == 0 ? new int[width] : pixels;
    int up = y == 0 ? 0 : base - width;
    int sums = 0;
    int sumSub = 0;
    int sumUp = 0;
    int left = 0;
    int own = 0;
    for (int x = 0; x < width; x++) {
      int here = pixels[base + x];
      if (here != left) {
        own = size(here, 0);
        sumSub += size(here, left);
      }
      sums += own;
      sumUp += here == above[up + x] ? 0 : size(here, above[up + x]);
      left = here;
    }
    int filter = sumUp <= sumSub && sumUp <= sums ? 2 : sumSub <= sums ? 1 : 0;
    out[start] = (byte) filter;
    left = 0;
    for (int x = 0, at = start + 1; x < width; x++, at += 3) {
      int here = pixels[base + x];
      int before = filter == 2 ? above[up + x] : filter == 1 ? left : 0;
      if (here != before) {
        out[at] = (byte) ((here >> 16) - (before >> 16));
        out[at + 1] = (byte) ((here >> 8) - (before >> 8));
        out[at + 2] = (byte) (here - before);
      }
      left = here;
    }
  }

  /** Sum of the absolute differences of the three colours, each as a signed byte. */
  private static int size(int here, int before) {
    return Math.abs((byte) ((here >> 16) - (before >> 16)))
        + Math.abs((byte) ((here >> 8) - (before >> 8)))
        + Math.abs((byte) (here - before));
  }

  private static void chunk(ByteArrayOutputStream out, String type, byte[] body) {
    byte[] name = type.getBytes(StandardCharsets.US_ASCII);
    CRC32 crc = new CRC32();
    crc.update(name);
    crc.update(body);
    out.writeBytes(ByteBuffer.allocate(4).putInt(body.length).array());
    out.writeBytes(name);
    out.writeBytes(body);
    out.writeBytes(ByteBuffer.allocate(4).putInt((int) crc.getValue()).array());
  }
}
