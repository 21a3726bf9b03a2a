package plyscape.terrain;

import java.util.Locale;

/** ESRI ASCII grids for tests: cells of 10 m from (0, 0), elevations with two decimals. */
public final class AscText {

  private AscText() {}

  /** Ground by column from the west and row from the north, m. */
  public interface Ground {

    /** The elevation of a cell. */
    double at(int column, int row);
  }

  /** The file's text. */
  public static String of(int columns, int rows, Ground ground) {
    StringBuilder text = new StringBuilder("ncols " + columns + "\nnrows " + rows);
    text.append("\nxllcorner 0\nyllcorner 0\ncellsize 10\n");
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        text.append(String.format(Locale.ROOT, "%.2f ", ground.at(column, row)));
      }
      text.append('\n');
    }
    return text.toString();
  }
}
