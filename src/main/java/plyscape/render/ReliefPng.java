package plyscape.render;

import plyscape.region.FaceField;

/**
 * The relief that sculpted faces follow as a 16-bit grey PNG, north up: a sample is the number of
 * steps over the base elevation, so that it reads back exactly.
 */
public final class ReliefPng {

  private ReliefPng() {}

  /** The file's bytes. */
  public static byte[] of(FaceField faces) {
    int columns = faces.relief().frame().columns();
    int rows = faces.relief().frame().rows();
    int[] samples = new int[columns * rows];
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        double over = faces.relief().at(column, rows - 1 - row) - faces.baseM();
        samples[row * columns + column] =
            faces.stepM() > 0 ? (int) Math.rint(over / faces.stepM()) : 0;
      }
    }
    return Png.grey16(columns, rows, samples);
  }
}
