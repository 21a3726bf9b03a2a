package plyscape.terrain.tiff;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * Undoes what a TIFF's writer did to make rows pack better: differences of samples (predictor 2,
 * TIFF 6.0 section 14), or differences of the bytes of floats, sorted by weight (predictor 3,
 * Adobe's TIFF Technical Note 3). The note puts the weightiest bytes first; in files of high byte
 * first the writer that nearly all such files come from puts them last (GDAL 3.6.2, seen in its
 * output), and so they are read.
 */
final class TiffPredictor {

  private final byte[] bytes;
  private final int size;
  private final int columns;
  private final int perCell;

  /**
   * Over the rows of a block.
   *
   * @param bytes unpacked, changed in place
   * @param size bytes of a sample
   * @param columns samples of a row, all that belong to a cell counted
   * @param perCell samples of a cell that stand side by side
   */
  TiffPredictor(byte[] bytes, int size, int columns, int perCell) {
    this.bytes = bytes;
    this.size = size;
    this.columns = columns;
    this.perCell = perCell;
  }

  /**
   * The samples of the block.
   *
   * @param order byte order of the file
   */
  ByteBuffer undo(int predictor, ByteOrder order) {
    ByteBuffer buffer = ByteBuffer.wrap(bytes).order(order);
    int row = columns * size;
    if (predictor == 2) {
      for (int start = 0; start < bytes.length; start += row) {
        for (int sample = 0; sample < perCell; sample++) {
          addUp(buffer, start + sample * size);
        }
      }
    } else if (predictor == 3) {
      byte[] spare = new byte[row];
      for (int start = 0; start < bytes.length; start += row) {
        gather(start, spare);
      }
      return buffer.order(
          order == ByteOrder.BIG_ENDIAN ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
    }
    return buffer;
  }

  private void addUp(ByteBuffer b, int from) {
    long sum = 0;
    for (int i = 0, at = from; i < columns / perCell; i++, at += perCell * size) {
      switch (size) {
        case 1 -> b.put(at, (byte) (sum += b.get(at)));
        case 2 -> b.putShort(at, (short) (sum += b.getShort(at)));
        case 4 -> b.putInt(at, (int) (sum += b.getInt(at)));
        default -> b.putLong(at, sum += b.getLong(at));
      }
    }
  }

  private void gather(int from, byte[] spare) {
    for (int i = perCell; i < columns * size; i++) {
      bytes[from + i] += bytes[from + i - perCell];
    }
    System.arraycopy(bytes, from, spare, 0, columns * size);
    for (int i = 0; i < columns; i++) {
      for (int k = 0; k < size; k++) {
        bytes[from + i * size + k] = spare[k * columns + i];
      }
    }
  }
}
