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

  private TiffPredictor() {}

  /**
   * The samples of a block.
   *
   * @param bytes unpacked block, changed in place
   * @param size bytes of a sample
   * @param columns samples of a row, all that belong to a cell counted
   * @param perCell samples of a cell that stand side by side
   * @param order byte order of the file
   */
  static ByteBuffer undo(
      int predictor, byte[] bytes, int size, int columns, int perCell, int rows, ByteOrder order) {
    ByteBuffer buffer = ByteBuffer.wrap(bytes).order(order);
    if (predictor == 2) {
      for (int row = 0; row < rows; row++) {
        for (int sample = 0; sample < perCell; sample++) {
          int from = (row * columns + sample) * size;
          addUp(buffer, from, columns / perCell, size, perCell * size);
        }
      }
    } else if (predictor == 3) {
      byte[] spare = new byte[columns * size];
      for (int row = 0; row < rows; row++) {
        gather(bytes, row * columns * size, columns, size, perCell, spare);
      }
      return buffer.order(
          order == ByteOrder.BIG_ENDIAN ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
    }
    return buffer;
  }

  private static void addUp(ByteBuffer b, int from, int columns, int size, int step) {
    long sum = 0;
    for (int i = 0, at = from; i < columns; i++, at += step) {
      switch (size) {
        case 1 -> b.put(at, (byte) (sum += b.get(at)));
        case 2 -> b.putShort(at, (short) (sum += b.getShort(at)));
        case 4 -> b.putInt(at, (int) (sum += b.getInt(at)));
        default -> b.putLong(at, sum += b.getLong(at));
      }
    }
  }

  private static void gather(
      byte[] bytes, int from, int columns, int size, int perCell, byte[] spare) {
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
