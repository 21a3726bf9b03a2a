package plyscape.terrain.tiff;

import io.airlift.compress.zstd.ZstdDecompressor;
import java.io.IOException;
import java.util.Arrays;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/**
 * Unpacks the blocks of a TIFF: none, LZW and PackBits after TIFF 6.0 (sections 9 and 13), Deflate,
 * and Zstandard.
 */
enum TiffPacking {
  NONE,
  LZW,
  DEFLATE,
  PACKBITS,
  ZSTD;

  /** The packing of a compression tag, or null when it isn't one of these. */
  static TiffPacking of(int compression) {
    return switch (compression) {
      case 1 -> NONE;
      case 5 -> LZW;
      case 8, 32946 -> DEFLATE;
      case 32773 -> PACKBITS;
      case 50000 -> ZSTD;
      default -> null;
    };
  }

  /** A packing for people: its name, where it is a common one, and its number. */
  static String name(int compression) {
    String name =
        switch (compression) {
          case 1 -> "none";
          case 2, 3, 4 -> "CCITT fax";
          case 5 -> "LZW";
          case 6, 7 -> "JPEG";
          case 8, 32946 -> "Deflate";
          case 32773 -> "PackBits";
          case 34712 -> "JPEG 2000";
          case 34887 -> "LERC";
          case 34925 -> "LZMA";
          case 50000 -> "Zstandard";
          case 50001 -> "WebP";
          case 50002, 52546 -> "JPEG XL";
          default -> "an unknown one";
        };
    return name + " (" + compression + ")";
  }

  /**
   * Unpacks a block.
   *
   * @param size bytes that must come out
   * @throws IOException when fewer come out or the packed bytes are garbled
   */
  byte[] unpack(byte[] packed, int size) throws IOException {
    try {
      int got;
      byte[] out = new byte[size];
      switch (this) {
        case NONE -> {
          return packed.length >= size ? packed : early(packed.length, size);
        }
        case LZW -> got = new TiffLzw(packed, out).unpack();
        case DEFLATE -> got = inflate(packed, out);
        case PACKBITS -> got = packBits(packed, out);
        default -> got = zstd(packed, out);
      }
      return got == size ? out : early(got, size);
    } catch (IndexOutOfBoundsException | DataFormatException | IllegalArgumentException e) {
      throw new IOException("its packed bytes are garbled", e);
    } catch (RuntimeException e) {
      if (this == ZSTD) {
        throw new IOException("its packed bytes are garbled", e);
      }
      throw e;
    }
  }

  private static byte[] early(int got, int size) throws IOException {
    throw new IOException("it has " + got + " bytes where " + size + " are due");
  }

  private static int inflate(byte[] packed, byte[] out) throws DataFormatException {
    Inflater inflater = new Inflater();
    try {
      inflater.setInput(packed);
      int at = 0;
      while (at < out.length && !inflater.finished()) {
        int got = inflater.inflate(out, at, out.length - at);
        if (got == 0 && (inflater.needsInput() || inflater.needsDictionary())) {
          break;
        }
        at += got;
      }
      return at;
    } finally {
      inflater.end();
    }
  }

  private static int packBits(byte[] packed, byte[] out) {
    int at = 0;
    int i = 0;
    while (i < packed.length && at < out.length) {
      int n = packed[i++];
      if (n >= 0) {
        int length = Math.min(n + 1, out.length - at);
        System.arraycopy(packed, i, out, at, length);
        i += n + 1;
        at += length;
      } else if (n != -128) {
        int length = Math.min(1 - n, out.length - at);
        Arrays.fill(out, at, at + length, packed[i++]);
        at += length;
      }
    }
    return at;
  }

  private static int zstd(byte[] packed, byte[] out) {
    return new ZstdDecompressor().decompress(packed, 0, packed.length, out, 0, out.length);
  }
}
