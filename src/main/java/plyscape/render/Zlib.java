package plyscape.render;

import java.io.ByteArrayOutputStream;
import java.util.List;
import java.util.stream.IntStream;
import java.util.zip.Adler32;
import java.util.zip.Deflater;

/**
 * Packs bytes as one zlib stream (RFC 1950), in strips on all processors: each strip is deflated
 * (RFC 1951) with the 32 kB before it as its dictionary and ends on a byte, so that the strips just
 * follow each other. The same bytes on any number of processors.
 */
final class Zlib {

  private static final int STRIP = 1 << 19;

  /** As far back as deflate can refer. */
  private static final int WINDOW = 1 << 15;

  private Zlib() {}

  /** The stream. */
  static byte[] pack(byte[] raw) {
    int strips = Math.max(1, (raw.length + STRIP - 1) / STRIP);
    List<byte[]> packed =
        IntStream.range(0, strips)
            .parallel()
            .mapToObj(strip -> strip(raw, strip * STRIP, strip + 1 == strips))
            .toList();
    ByteArrayOutputStream out = new ByteArrayOutputStream(raw.length / 8);
    out.write(0x78); // deflate, window of 32 kB
    out.write(0x9c); // usual level, check bits
    packed.forEach(out::writeBytes);
    Adler32 sum = new Adler32();
    sum.update(raw);
    for (int shift = 24; shift >= 0; shift -= 8) {
      out.write((int) (sum.getValue() >> shift));
    }
    return out.toByteArray();
  }

  private static byte[] strip(byte[] raw, int from, boolean last) {
    Deflater deflater = new Deflater(6, true);
    int before = Math.min(from, WINDOW);
    if (before > 0) {
      deflater.setDictionary(raw, from - before, before);
    }
    deflater.setInput(raw, from, Math.min(STRIP, raw.length - from));
    if (last) {
      deflater.finish();
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream(STRIP / 8);
    byte[] part = new byte[65536];
    int flush = last ? Deflater.NO_FLUSH : Deflater.SYNC_FLUSH;
    int count;
    do {
      count = deflater.deflate(part, 0, part.length, flush);
      out.write(part, 0, count);
    } while (last ? !deflater.finished() : count == part.length);
    deflater.end();
    return out.toByteArray();
  }
}
