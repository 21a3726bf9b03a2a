package plyscape.render;

/**
 * A picture of where a cut panel isn't as planned, one pixel a cell, north up: gouges red, wood
 * left standing blue, what no cutter reaches violet, what is allowed along walls grey; behind them
 * the planned plies, paled.
 */
public final class DifferencePicture {

  /** Kinds of cells, in the order of the codes handed in. */
  private static final int[] COLOURS = {-1, 0xd40000, 0x0050e0, 0x9a50c8, 0x8a8a8a};

  /** Share of white over the plies, so that the differences stand out. */
  private static final double PALE = 0.72;

  private DifferencePicture() {}

  /**
   * Draws.
   *
   * @param columns cells a row
   * @param rows from the south
   * @param cellMm for the picture's true size
   * @param verdicts of each cell: 0 as planned, 1 gouged, 2 left uncut, 3 unreachable, 4 along a
   *     wall
   * @param plyIndex of each cell: index into colours, -1 where the panel stays uncut
   * @param colours of the plies, 0xRRGGBB
   * @param uncutColour of the border
   */
  public static byte[] png(
      int columns,
      int rows,
      double cellMm,
      byte[] verdicts,
      short[] plyIndex,
      int[] colours,
      int uncutColour) {
    Canvas canvas = new Canvas(columns, rows, 0xffffff);
    int[] pixels = canvas.pixels();
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        int cell = row * columns + column;
        int colour = COLOURS[verdicts[cell]];
        if (colour < 0) {
          colour =
              Colours.mix(
                  plyIndex[cell] < 0 ? uncutColour : colours[plyIndex[cell]], 0xffffff, PALE);
        }
        pixels[(rows - 1 - row) * columns + column] = colour;
      }
    }
    return Png.write(canvas, (int) Math.round(1000 / cellMm));
  }
}
