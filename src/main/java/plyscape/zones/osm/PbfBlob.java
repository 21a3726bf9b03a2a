package plyscape.zones.osm;

import crosby.binary.Fileformat;
import java.io.IOException;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/** What a block of a file in the protocol buffer format is wrapped in: nothing, or zlib. */
final class PbfBlob {

  /** The format's own limit of what is unpacked. */
  private static final int MOST_BYTES = 32 * 1024 * 1024;

  private PbfBlob() {}

  /**
   * The bytes that a blob holds.
   *
   * @throws IOException with a message for people, if it can't be unpacked
   */
  static byte[] unpack(byte[] wrapped) throws IOException {
    Fileformat.Blob blob = Fileformat.Blob.parseFrom(wrapped);
    if (blob.hasRaw()) {
      return blob.getRaw().toByteArray();
    }
    if (!blob.hasZlibData()) {
      throw new IOException(
          "it is packed as "
              + blob.getDataCase().name().toLowerCase(java.util.Locale.ROOT).replace("_data", "")
              + ", and only zlib is read");
    }
    if (blob.getRawSize() < 0 || blob.getRawSize() > MOST_BYTES) {
      throw new IOException("it says it has " + blob.getRawSize() + " bytes, more than may be");
    }
    Inflater inflater = new Inflater();
    try {
      inflater.setInput(blob.getZlibData().asReadOnlyByteBuffer());
      byte[] out = new byte[blob.getRawSize()];
      int n = 0;
      while (n < out.length) {
        int more = inflater.inflate(out, n, out.length - n);
        if (more == 0) {
          throw new IOException("it has fewer bytes than it says");
        }
        n += more;
      }
      return out;
    } catch (DataFormatException e) {
      throw new IOException("its packing is broken", e);
    } finally {
      inflater.end();
    }
  }
}
