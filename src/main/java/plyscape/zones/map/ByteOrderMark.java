package plyscape.zones.map;

import java.io.IOException;
import java.io.InputStream;

/** Steps over the UTF-8 byte order mark that some editors put before a file. */
public final class ByteOrderMark {

  private ByteOrderMark() {}

  /** The stream, which must support marks, behind the byte order mark if there is one. */
  public static InputStream skip(InputStream in) throws IOException {
    in.mark(3);
    if (in.read() != 0xEF || in.read() != 0xBB || in.read() != 0xBF) {
      in.reset();
    }
    return in;
  }
}
