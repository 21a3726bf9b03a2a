package plyscape.terrain.tiff;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import plyscape.fault.Place;

/**
 * The tags of a TIFF's first image, by number (TIFF 6.0, section 2; BigTIFF's wider table), with
 * defaults for what is absent. Read here since the library keeps the tables of blocks to itself.
 *
 * @param place the file, for messages
 * @param order byte order of the file
 * @param values tag to {@code long[]}, {@code double[]} or {@code String}
 */
record TiffTags(Place place, ByteOrder order, Map<Integer, Object> values) {

  static final int SUBFILE_TYPE = 254;
  static final int WIDTH = 256;
  static final int HEIGHT = 257;
  static final int BITS_PER_SAMPLE = 258;
  static final int COMPRESSION = 259;
  static final int PHOTOMETRIC = 262;
  static final int FILL_ORDER = 266;
  static final int STRIP_OFFSETS = 273;
  static final int SAMPLES_PER_PIXEL = 277;
  static final int ROWS_PER_STRIP = 278;
  static final int STRIP_COUNTS = 279;
  static final int PLANAR = 284;
  static final int PREDICTOR = 317;
  static final int TILE_WIDTH = 322;
  static final int TILE_HEIGHT = 323;
  static final int TILE_OFFSETS = 324;
  static final int TILE_COUNTS = 325;
  static final int EXTRA_SAMPLES = 338;
  static final int SAMPLE_FORMAT = 339;
  static final int PIXEL_SCALE = 33550;
  static final int TIE_POINT = 33922;
  static final int TRANSFORMATION = 34264;
  static final int GEO_KEYS = 34735;
  static final int GEO_DOUBLES = 34736;
  static final int GEO_TEXT = 34737;
  static final int GDAL_METADATA = 42112;
  static final int GDAL_NODATA = 42113;

  /** Bytes of a value of each TIFF type, by its number. */
  private static final int[] WIDTHS = {0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8, 4, 0, 0, 8, 8, 8};

  private static final int ASCII = 2;
  private static final int FLOAT = 11;
  private static final int DOUBLE = 12;

  /** Longest value that is read, bytes: tables of blocks of the largest rasters are a few MB. */
  private static final long MOST_BYTES = 1 << 28;

  /**
   * Reads the tags.
   *
   * @throws IOException when the file isn't a TIFF or ends early
   */
  static TiffTags read(FileChannel channel, Place place) throws IOException {
    return images(channel, place, 1).get(0);
  }

  /**
   * Reads the tags of the file's images, in order: the elevations, and what may follow them, such
   * as overviews and masks.
   *
   * @param most images that are looked at
   */
  static List<TiffTags> images(FileChannel channel, Place place, int most) throws IOException {
    ByteBuffer head =
        bytes(channel, 0, (int) Math.min(16, channel.size()), ByteOrder.LITTLE_ENDIAN);
    head.order(head.get(0) == 'M' ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN);
    boolean big = head.getShort(2) == 43;
    List<TiffTags> out = new ArrayList<>();
    long at = big ? head.getLong(8) : head.getInt(4) & 0xffffffffL;
    Set<Long> seen = new HashSet<>();
    while (out.isEmpty() || at != 0 && out.size() < most && seen.add(at)) {
      out.add(directory(channel, at, head, big, place));
      ByteBuffer count = bytes(channel, at, big ? 8 : 2, head.order());
      long entries = big ? count.getLong(0) : count.getShort(0) & 0xffff;
      long end = at + (big ? 8 + entries * 20 : 2 + entries * 12);
      // Files may end with their last directory's entries.
      boolean ends = end + (big ? 8 : 4) > channel.size();
      ByteBuffer next = ends ? null : bytes(channel, end, big ? 8 : 4, head.order());
      at = ends ? 0 : big ? next.getLong(0) : next.getInt(0) & 0xffffffffL;
    }
    return out;
  }

  private static TiffTags directory(
      FileChannel channel, long at, ByteBuffer head, boolean big, Place place) throws IOException {
    ByteBuffer first = bytes(channel, at, big ? 8 : 2, head.order());
    long count = big ? first.getLong(0) : first.getShort(0) & 0xffff;
    int width = big ? 20 : 12;
    if (count < 1 || count > 4096) {
      throw new IOException("its directory has " + count + " entries");
    }
    ByteBuffer entries = bytes(channel, at + (big ? 8 : 2), (int) count * width, head.order());
    Map<Integer, Object> values = new TreeMap<>();
    for (int i = 0; i < count; i++) {
      int entry = i * width;
      int type = entries.getShort(entry + 2) & 0xffff;
      if (type < WIDTHS.length && WIDTHS[type] > 0) {
        long n = big ? entries.getLong(entry + 4) : entries.getInt(entry + 4) & 0xffffffffL;
        long size = Math.multiplyHigh(n, 8) != 0 || n < 0 ? Long.MAX_VALUE : n * WIDTHS[type];
        if (size > MOST_BYTES) {
          throw new IOException("a tag has " + n + " values");
        }
        int here = entry + (big ? 12 : 8);
        ByteBuffer value =
            size <= (big ? 8 : 4)
                ? entries.slice(here, (int) size).order(head.order())
                : bytes(
                    channel,
                    big ? entries.getLong(here) : entries.getInt(here) & 0xffffffffL,
                    (int) size,
                    head.order());
        values.put(entries.getShort(entry) & 0xffff, value(value, type, (int) n));
      }
    }
    return new TiffTags(place, head.order(), values);
  }

  private static ByteBuffer bytes(FileChannel channel, long at, int size, ByteOrder order)
      throws IOException {
    if (at < 0 || size < 0 || at + size > channel.size()) {
      throw new IOException("it ends early");
    }
    ByteBuffer buffer = ByteBuffer.allocate(size);
    while (buffer.hasRemaining()) {
      if (channel.read(buffer, at + buffer.position()) < 0) {
        throw new IOException("it ends early");
      }
    }
    return buffer.flip().order(order);
  }

  private static Object value(ByteBuffer b, int type, int n) {
    if (type == ASCII) {
      return StandardCharsets.UTF_8.decode(b).toString();
    }
    if (type == FLOAT || type == DOUBLE) {
      double[] out = new double[n];
      for (int i = 0; i < n; i++) {
        out[i] = type == FLOAT ? b.getFloat(4 * i) : b.getDouble(8 * i);
      }
      return out;
    }
    long[] out = new long[n];
    for (int i = 0; i < n; i++) {
      out[i] =
          switch (WIDTHS[type]) {
            case 1 -> b.get(i) & 0xff;
            case 2 -> b.getShort(2 * i) & 0xffff;
            case 4 -> b.getInt(4 * i) & 0xffffffffL;
            default -> b.getLong(8 * i);
          };
    }
    return out;
  }

  /** Whether a tag is there. */
  boolean has(int tag) {
    return values.containsKey(tag);
  }

  /** First number of a tag, at most the largest int. */
  int number(int tag, int otherwise) {
    long[] all = longs(tag);
    return all.length == 0 ? otherwise : (int) Math.min(Integer.MAX_VALUE, all[0]);
  }

  /** All whole numbers of a tag; none when it is absent. */
  long[] longs(int tag) {
    return values.get(tag) instanceof long[] numbers ? numbers : new long[0];
  }

  /** All numbers of a tag; none when it is absent. */
  double[] numbers(int tag) {
    if (values.get(tag) instanceof double[] numbers) {
      return numbers;
    }
    long[] whole = longs(tag);
    double[] out = new double[whole.length];
    for (int i = 0; i < out.length; i++) {
      out[i] = whole[i];
    }
    return out;
  }

  /** Text of a tag up to its first zero byte; "" when it is absent. */
  String text(int tag) {
    if (!(values.get(tag) instanceof String text)) {
      return "";
    }
    int end = text.indexOf('\0');
    return (end < 0 ? text : text.substring(0, end)).strip();
  }
}
