package plyscape.terrain.tiff;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.util.Arrays;
import java.util.Objects;
import java.util.stream.IntStream;
import plyscape.files.InputCache;
import plyscape.text.Template;

/**
 * Reads one sample of each cell of a TIFF block by block, straight into elevations. The library's
 * own cell reader isn't used for what this one can do: of the 250 layouts that GDAL 3.6.2 writes,
 * it garbled in silence bytes with LZW and predictor 2, and floats with predictor 3 in files of
 * high byte first. Blocks are unpacked by several threads; each fills its own cells, so the outcome
 * doesn't depend on how many.
 */
final class TiffBlocks {

  private static final int MOST_BLOCK_BYTES = 1 << 30;
  private static final int MOST_SAMPLES = 64;

  private final FileChannel channel;
  private final InputCache.Source shared;
  private final ByteOrder order;
  private final TiffCells cells;
  private final TiffPacking packing;
  private final int predictor;
  private final int columns;
  private final int rows;
  private final int sample;
  private final int perCell;
  private final int bits;
  private final int firstBlock;
  private final int blockWide;
  private final int blockHigh;
  private final boolean tiled;
  private final long[] offsets;
  private final long[] counts;

  private TiffBlocks(
      FileChannel channel, TiffTags tags, TiffCells cells, int sample, InputCache.Source shared) {
    this.channel = channel;
    this.shared = shared;
    this.order = tags.order();
    this.cells = cells;
    this.packing = TiffPacking.of(tags.number(TiffTags.COMPRESSION, 1));
    this.predictor = tags.number(TiffTags.PREDICTOR, 1);
    this.columns = tags.number(TiffTags.WIDTH, 0);
    this.rows = tags.number(TiffTags.HEIGHT, 0);
    this.bits = Math.min(8, tags.number(TiffTags.BITS_PER_SAMPLE, 1));
    this.tiled = tags.has(TiffTags.TILE_OFFSETS);
    this.blockWide = tiled ? tags.number(TiffTags.TILE_WIDTH, columns) : columns;
    int rowsPerStrip = tags.number(TiffTags.ROWS_PER_STRIP, rows);
    this.blockHigh =
        tiled
            ? tags.number(TiffTags.TILE_HEIGHT, rows)
            : rowsPerStrip <= 0 ? rows : Math.min(rowsPerStrip, rows);
    this.offsets = tags.longs(tiled ? TiffTags.TILE_OFFSETS : TiffTags.STRIP_OFFSETS);
    this.counts = tags.longs(tiled ? TiffTags.TILE_COUNTS : TiffTags.STRIP_COUNTS);
    // Samples of a cell stand side by side, or each kind in blocks of its own, one kind after the
    // other.
    boolean apart = tags.number(TiffTags.PLANAR, 1) == 2;
    this.perCell = apart ? 1 : tags.number(TiffTags.SAMPLES_PER_PIXEL, 1);
    this.sample = apart ? 0 : sample;
    this.firstBlock = apart ? sample * blocks() : 0;
  }

  /**
   * The cells of a file, or null when they are packed in a way that isn't known here.
   *
   * @param sample which of the samples of each cell, from 0
   * @param shared the file, for keeping unpacked blocks for other jobs
   * @throws IOException when the file's tables don't fit together
   */
  static TiffBlocks of(
      FileChannel channel, TiffTags tags, TiffCells cells, int sample, InputCache.Source shared)
      throws IOException {
    int predictor = tags.number(TiffTags.PREDICTOR, 1);
    if (TiffPacking.of(tags.number(TiffTags.COMPRESSION, 1)) == null
        || tags.number(TiffTags.FILL_ORDER, 1) != 1
        || predictor < 1
        || predictor > 3
        || (predictor == 3 && !cells.type().name().startsWith("FLOAT"))
        || (predictor > 1 && tags.number(TiffTags.BITS_PER_SAMPLE, 1) < 8)) {
      return null;
    }
    TiffBlocks blocks = new TiffBlocks(channel, tags, cells, sample, shared);
    if (!blocks.sound()) {
      throw new IOException("its table of blocks doesn't fit its size");
    }
    return blocks;
  }

  private boolean sound() {
    if (blockWide < 1 || blockHigh < 1 || perCell < 1 || perCell > MOST_SAMPLES) {
      return false;
    }
    long needed = (long) firstBlock + blocks();
    return offsets.length >= needed && counts.length >= needed;
  }

  /** Blocks of one kind of sample; 0 when the table can't be right. */
  private int blocks() {
    if (blockWide < 1 || blockHigh < 1) {
      return 0;
    }
    long n = (long) across() * ((rows + blockHigh - 1) / blockHigh);
    return (int) Math.min(n, Integer.MAX_VALUE / MOST_SAMPLES);
  }

  private int across() {
    return (columns + blockWide - 1) / blockWide;
  }

  /** Rows of a block. */
  int blockHigh() {
    return Math.min(blockHigh, rows);
  }

  /** Elevations of a window, NaN for void. */
  double[] read(int column, int row, int wide, int high) throws IOException {
    double[] out = new double[Math.multiplyExact(wide, high)];
    int c0 = column / blockWide;
    int c1 = (column + wide - 1) / blockWide;
    int r0 = row / blockHigh;
    int r1 = (row + high - 1) / blockHigh;
    int perRow = c1 - c0 + 1;
    Window window = new Window(column, row, wide, high);
    // Of several broken blocks always the first is reported, whatever the threads did.
    IOException broken =
        IntStream.range(0, perRow * (r1 - r0 + 1))
            .parallel()
            .mapToObj(i -> fault(c0 + i % perRow, r0 + i / perRow, window, out))
            .filter(Objects::nonNull)
            .findFirst()
            .orElse(null);
    if (broken != null) {
      throw broken;
    }
    return out;
  }

  private record Window(int column, int row, int wide, int high) {}

  /** Puts a block's cells where they belong; what is wrong with the block, named, or null. */
  private IOException fault(int blockColumn, int blockRow, Window window, double[] out) {
    try {
      put(blockColumn, blockRow, window, out);
      return null;
    } catch (IOException | RuntimeException e) {
      String why = e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
      return new IOException(name(blockColumn, blockRow) + ": " + why, e);
    }
  }

  /** A block for people, by the cells that it holds, counted from 0 at the upper left. */
  private String name(int blockColumn, int blockRow) {
    int top = blockRow * blockHigh;
    String rowsHeld = "rows " + top + " to " + (Math.min(top + blockHigh, rows) - 1);
    if (!tiled) {
      return "strip " + blockRow + " (" + rowsHeld + ")";
    }
    int left = blockColumn * blockWide;
    return Template.fill(
        "tile %s (columns %s to %s, %s)",
        blockRow * across() + blockColumn, left, Math.min(left + blockWide, columns) - 1, rowsHeld);
  }

  /** Puts the cells of a block that lie in the window where they belong. */
  private void put(int blockColumn, int blockRow, Window w, double[] out) throws IOException {
    int left = blockColumn * blockWide;
    int top = blockRow * blockHigh;
    int c0 = Math.max(w.column, left);
    int c1 = Math.min(w.column + w.wide, Math.min(left + blockWide, columns));
    int r0 = Math.max(w.row, top);
    int r1 = Math.min(w.row + w.high, Math.min(top + blockHigh, rows));
    int index = firstBlock + blockRow * across() + blockColumn;
    if (counts[index] == 0) {
      // A block that was never written: void, or 0 without a nodata value, as its writers' library
      // reads it.
      for (int r = r0; r < r1; r++) {
        int at = (r - w.row) * w.wide - w.column;
        Arrays.fill(out, at + c0, at + c1, cells.unwritten());
      }
      return;
    }
    // Unpacked rows of an unpacked block can be read alone, however large the block is.
    boolean alone = packing == TiffPacking.NONE;
    int firstRow = alone ? r0 - top : 0;
    int blockRows = alone ? r1 - r0 : tiled ? blockHigh : Math.min(blockHigh, rows - top);
    int size = cells.type().bytes();
    int inRow = blockWide * perCell;
    ByteBuffer buffer = alone ? samples(index, firstRow, blockRows) : shared(index, blockRows);
    for (int r = r0; r < r1; r++) {
      int from = ((r - top - firstRow) * inRow + (c0 - left) * perCell + sample) * size;
      int to = (r - w.row) * w.wide + c0 - w.column;
      cells.put(buffer, from, perCell * size, c1 - c0, out, to);
    }
  }

  private ByteBuffer samples(int index, int firstRow, int blockRows) throws IOException {
    byte[] bytes = block(index, firstRow, blockRows);
    int inRow = blockWide * perCell;
    return new TiffPredictor(bytes, cells.type().bytes(), inRow, perCell).undo(predictor, order);
  }

  /** A whole block, as another job may have unpacked it before. */
  private ByteBuffer shared(int index, int blockRows) throws IOException {
    try {
      return shared.get(
          "block at " + offsets[index],
          () -> {
            try {
              return samples(index, 0, blockRows);
            } catch (IOException e) {
              throw new UncheckedIOException(e);
            }
          },
          ByteBuffer::capacity);
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  private byte[] block(int index, int firstRow, int blockRows) throws IOException {
    long rowBytes =
        bits == 8
            ? (long) blockWide * perCell * cells.type().bytes()
            : ((long) blockWide * perCell * bits + 7) / 8;
    long size = rowBytes * blockRows;
    long skip = packing == TiffPacking.NONE ? rowBytes * firstRow : 0;
    long packed = packing == TiffPacking.NONE ? size : counts[index];
    if (size > MOST_BLOCK_BYTES || packed > MOST_BLOCK_BYTES) {
      throw new IOException(
          "its " + size + " bytes are too many to unpack at once; rewrite the file in tiles");
    }
    if (offsets[index] < 8 || offsets[index] + skip + packed > channel.size()) {
      throw new IOException("the file ends before it does");
    }
    ByteBuffer bytes = ByteBuffer.allocate((int) packed);
    while (bytes.hasRemaining()) {
      if (channel.read(bytes, offsets[index] + skip + bytes.position()) < 0) {
        throw new IOException("the file ends before it does");
      }
    }
    byte[] unpacked = packing.unpack(bytes.array(), (int) size);
    return bits == 8 ? unpacked : spread(unpacked, (int) rowBytes, blockRows);
  }

  /** Samples of 1, 2 or 4 bits, the first one's in the byte's high end, as bytes. */
  private byte[] spread(byte[] packed, int rowBytes, int blockRows) {
    int inRow = blockWide * perCell;
    byte[] out = new byte[Math.multiplyExact(inRow, blockRows)];
    for (int row = 0; row < blockRows; row++) {
      for (int i = 0; i < inRow; i++) {
        int at = i * bits;
        int shift = 8 - bits - at % 8;
        out[row * inRow + i] = (byte) (packed[row * rowBytes + at / 8] >> shift & (1 << bits) - 1);
      }
    }
    return out;
  }
}
