package plyscape.terrain.tiff;

import java.io.IOException;

/**
 * TIFF's LZW (TIFF 6.0, section 13): codes of 9 to 12 bits, high bit first, one bit longer from one
 * entry before the table needs it; 256 clears the table, 257 ends.
 *
 * <p>An entry is the previous string and the byte after it, which stand one after the other in what
 * is out already: so the table holds where entries begin and how long they are.
 */
final class TiffLzw {

  private static final int CLEAR = 256;
  private static final int END = 257;
  private static final int FIRST = 258;

  private final byte[] packed;
  private final byte[] out;
  private final int[] start = new int[4097];
  private final int[] length = new int[4097];

  /** The entry to come. */
  private int next = FIRST;

  /** Bits of a code. */
  private int bits = 9;

  /** Where the previous string begins in what is out, or -1. */
  private int previous = -1;

  private long buffer;
  private int held;
  private int read;
  private int at;

  TiffLzw(byte[] packed, byte[] out) {
    this.packed = packed;
    this.out = out;
  }

  /**
   * Unpacks until there is no room or nothing left.
   *
   * @return how many bytes came out
   * @throws IOException where the packed bytes are garbled
   */
  int unpack() throws IOException {
    if (packed.length > 1 && packed[0] == 0 && (packed[1] & 1) == 1) {
      throw new IOException("LZW with the low bit first, as of before TIFF 5.0");
    }
    while (at < out.length) {
      int code = code();
      if (code == END) {
        return at;
      }
      if (code == CLEAR) {
        next = FIRST;
        bits = 9;
        previous = -1;
        continue;
      }
      if (code > next || code >= FIRST && previous < 0 || next > 4096) {
        throw new IOException("its packed bytes are garbled");
      }
      int from = at;
      put(code);
      enter(from);
    }
    return at;
  }

  /** The next code; that of the end where too few bits are left. */
  private int code() {
    while (held < bits && read < packed.length) {
      buffer = buffer << 8 | packed[read++] & 0xff;
      held += 8;
    }
    if (held < bits) {
      return END;
    }
    held -= bits;
    return (int) (buffer >> held) & (1 << bits) - 1;
  }

  private void put(int code) {
    if (code < CLEAR) {
      out[at++] = (byte) code;
      return;
    }
    int source = code == next ? previous : start[code];
    int count = code == next ? at - previous + 1 : length[code];
    for (int k = 0; k < count && at < out.length; k++) {
      out[at++] = out[source + k];
    }
  }

  /** Enters the previous string and the first byte of the one that begins at a place. */
  private void enter(int from) {
    if (previous >= 0) {
      start[next] = previous;
      length[next] = from - previous + 1;
      next++;
    }
    previous = from;
    bits = next >= 2047 ? 12 : next >= 1023 ? 11 : next >= 511 ? 10 : 9;
  }
}
