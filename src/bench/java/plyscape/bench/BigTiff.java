package plyscape.bench;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.stream.IntStream;
import java.util.zip.Deflater;

/**
 * Writes a large GeoTIFF: float32, tiles of 256, Deflate, square cells in UTM zone 32, upper left
 * corner at {@link #MIN_X}, {@link #MAX_Y}, BigTIFF.
 */
public final class BigTiff {

  /** Western edge, m. */
  public static final int MIN_X = 400_000;

  /** Northern edge, m. */
  public static final int MAX_Y = 5_600_000;

  private static final int TILE = 256;
  private static final int TAGS = 15;

  /** Elevations, m; asked by several threads at once. */
  public interface Ground {

    /** The elevation of a cell, column from the west and row from the north. */
    double at(int column, int row);
  }

  private BigTiff() {}

  /** Rolling hills of about 280 to 720 m, as wide and many whatever the cells along a side. */
  public static Ground hills(int side) {
    double[][] waves = new double[4][side];
    for (int i = 0; i < side; i++) {
      double u = (double) i / side;
      waves[0][i] = 200 * Math.cos(5 * u);
      waves[1][i] = Math.sin(7 * u);
      waves[2][i] = 20 * Math.sin(45 * u);
      waves[3][i] = Math.sin(60 * u);
    }
    return (c, r) -> 500 + waves[0][r] * waves[1][c] + waves[2][r] * waves[3][c];
  }

  /** Writes {@code side} x {@code side} cells of {@code cellM} metres. */
  public static void write(Path file, int side, double cellM, Ground ground) throws IOException {
    int across = (side + TILE - 1) / TILE;
    long[] offsets = new long[across * across];
    long[] counts = new long[across * across];
    try (FileChannel out =
        FileChannel.open(
            file,
            StandardOpenOption.CREATE,
            StandardOpenOption.TRUNCATE_EXISTING,
            StandardOpenOption.WRITE)) {
      long at = 16;
      for (int row = 0; row < across; row++) {
        int r = row;
        byte[][] packed =
            IntStream.range(0, across)
                .parallel()
                .mapToObj(c -> tile(c, r, side, ground))
                .toArray(byte[][]::new);
        for (int column = 0; column < across; column++) {
          offsets[row * across + column] = at;
          counts[row * across + column] = packed[column].length;
          out.write(ByteBuffer.wrap(packed[column]), at);
          at += packed[column].length;
        }
      }
      out.write(directory(at, side, cellM, offsets, counts), at);
      ByteBuffer head = ByteBuffer.allocate(16).order(ByteOrder.LITTLE_ENDIAN);
      head.put((byte) 'I')
          .put((byte) 'I')
          .putShort((short) 43)
          .putShort((short) 8)
          .putShort((short) 0)
          .putLong(at);
      out.write(head.flip(), 0);
    }
  }

  private static byte[] tile(int column, int row, int side, Ground ground) {
    ByteBuffer samples = ByteBuffer.allocate(4 * TILE * TILE).order(ByteOrder.LITTLE_ENDIAN);
    for (int r = row * TILE; r < (row + 1) * TILE; r++) {
      for (int c = column * TILE; c < (column + 1) * TILE; c++) {
        samples.putFloat((float) ground.at(Math.min(c, side - 1), Math.min(r, side - 1)));
      }
    }
    Deflater deflater = new Deflater(1);
    deflater.setInput(samples.array());
    deflater.finish();
    byte[] out = new byte[samples.capacity() + 4096];
    int length = deflater.deflate(out);
    deflater.end();
    return java.util.Arrays.copyOf(out, length);
  }

  private static ByteBuffer directory(
      long at, int side, double cellM, long[] offsets, long[] counts) {
    long extra = at + 8 + 20L * TAGS + 8;
    ByteBuffer b =
        ByteBuffer.allocate(8 + 20 * TAGS + 8 + 16 * offsets.length + 200)
            .order(ByteOrder.LITTLE_ENDIAN);
    b.putLong(TAGS);
    entry(b, 256, 4, 1, side);
    entry(b, 257, 4, 1, side);
    entry(b, 258, 3, 1, 32);
    entry(b, 259, 3, 1, 8);
    entry(b, 262, 3, 1, 1);
    entry(b, 277, 3, 1, 1);
    entry(b, 322, 3, 1, TILE);
    entry(b, 323, 3, 1, TILE);
    entry(b, 324, 16, offsets.length, extra);
    entry(b, 325, 16, counts.length, extra + 8L * offsets.length);
    entry(b, 339, 3, 1, 3);
    long after = extra + 16L * offsets.length;
    entry(b, 33550, 12, 3, after);
    entry(b, 33922, 12, 6, after + 24);
    entry(b, 34735, 3, 16, after + 72);
    entry(b, 42113, 2, 6, 0);
    b.position(b.position() - 8);
    b.put("-9999\0".getBytes(java.nio.charset.StandardCharsets.US_ASCII)).putShort((short) 0);
    b.putLong(0);
    for (long offset : offsets) {
      b.putLong(offset);
    }
    for (long count : counts) {
      b.putLong(count);
    }
    for (double number : new double[] {cellM, cellM, 0, 0, 0, 0, MIN_X, MAX_Y, 0}) {
      b.putDouble(number);
    }
    for (int key : new int[] {1, 1, 0, 3, 1024, 0, 1, 1, 1025, 0, 1, 1, 3072, 0, 1, 32632}) {
      b.putShort((short) key);
    }
    return b.flip();
  }

  private static void entry(ByteBuffer b, int tag, int type, long count, long value) {
    b.putShort((short) tag).putShort((short) type).putLong(count).putLong(value);
  }
}
