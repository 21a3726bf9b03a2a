package plyscape.render;

import plyscape.text.Numbers;

/**
 * A picture of where a cut panel isn't as planned, one pixel a cell, north up, and below it what
 * the colours mean, with areas: gouges red, wood left standing blue, what no cutter reaches violet,
 * what is allowed along walls grey; behind them the planned plies, paled.
 */
public final class DifferencePicture {

  /** Kinds of cells, in the order of the codes handed in. */
  private static final int[] COLOURS = {-1, 0xd40000, 0x0050e0, 0x9a50c8, 0x8a8a8a};

  /** What they mean, in the same order. */
  private static final String[] WORDS = {
    "as planned: the plies, paled",
    "cut too deep",
    "left too high, though a cutter reaches it",
    "left too high, out of reach of every cutter",
    "off within what is allowed along walls"
  };

  /** Room for the legend's longest line. */
  private static final int LEAST_WIDTH_PX = 420;

  /** Share of white over the plies, so that the differences stand out. */
  private static final double PALE = 0.72;

  private DifferencePicture() {}

  /**
   * What came out, cell by cell, rows from the south.
   *
   * @param columns cells a row
   * @param cellMm for the picture's true size
   * @param verdicts of each cell: 0 as planned, 1 gouged, 2 left uncut, 3 unreachable, 4 along a
   *     wall
   * @param plyIndex of each cell: index into colours, -1 where the panel stays uncut
   */
  public record Cells(int columns, int rows, double cellMm, byte[] verdicts, short[] plyIndex) {}

  /**
   * Draws.
   *
   * @param colours of the plies, 0xRRGGBB
   * @param uncutColour of the border
   */
  public static byte[] png(Cells cells, int[] colours, int uncutColour) {
    int line = Math.min(Math.max(cells.columns() / 36, 16), 44);
    Canvas canvas =
        new Canvas(
            Math.max(cells.columns(), LEAST_WIDTH_PX),
            cells.rows() + line * (COLOURS.length + 1),
            0xffffff);
    long[] counts = new long[COLOURS.length];
    for (int row = 0; row < cells.rows(); row++) {
      for (int column = 0; column < cells.columns(); column++) {
        int cell = row * cells.columns() + column;
        counts[cells.verdicts()[cell]]++;
        int ply = cells.plyIndex()[cell];
        int colour = COLOURS[cells.verdicts()[cell]];
        canvas.set(
            column,
            cells.rows() - 1 - row,
            colour >= 0
                ? colour
                : Colours.mix(ply < 0 ? uncutColour : colours[ply], 0xffffff, PALE));
      }
    }
    legend(canvas, cells.rows(), line, counts, cells.cellMm());
    return Png.write(canvas, (int) Math.round(1000 / cells.cellMm()));
  }

  /** What the colours mean, with areas, a line each. */
  private static void legend(Canvas canvas, int rows, int line, long[] counts, double cellMm) {
    for (int kind = 0; kind < COLOURS.length; kind++) {
      int top = rows + line / 2 + kind * line;
      int side = line * 2 / 3;
      canvas.fill(line / 2, top, side, side, COLOURS[kind] < 0 ? 0xe6e0d2 : COLOURS[kind]);
      canvas.frame(line / 2, top, side, side, Colours.INK);
      canvas.text(
          line / 2 + line,
          top + side,
          side,
          Colours.INK,
          WORDS[kind] + ", " + Numbers.fixed(counts[kind] * cellMm * cellMm, 1) + " mm2");
    }
  }
}
