package plyscape.render;

import plyscape.grid.Box;
import plyscape.plan.Landscape;
import plyscape.text.Numbers;

/**
 * The whole finished panel as a block seen from the south-west: what {@link BlockView} draws, with
 * a line that says how.
 */
public final class BlockPicture {

  /**
   * Heights are doubled: plies of a millimetre on a panel of a quarter metre are thin lines
   * otherwise.
   */
  static final double STRETCH = 2;

  private static final int WIDTH_PX = 1400;
  private static final int MARGIN = 30;

  private BlockPicture() {}

  /** A PNG file. */
  public static byte[] png(Landscape plan) {
    Box panel = new Box(0, 0, plan.job().panel().widthMm(), plan.job().panel().heightMm());
    Canvas block = new BlockView(plan, panel, STRETCH).draw(WIDTH_PX);
    Canvas canvas =
        new Canvas(block.width() + 2 * MARGIN, block.height() + 2 * MARGIN + 24, Colours.PAPER);
    canvas.paste(block, MARGIN, MARGIN);
    canvas.text(
        MARGIN,
        canvas.height() - 18,
        10,
        Colours.FAINT,
        plan.job().title()
            + ": seen from the south-west, heights x "
            + Numbers.trimmed(STRETCH, 1));
    return Png.write(canvas, 0);
  }

  /**
   * The square of the given side, on the carved area, with the most different plies in it, of those
   * the one with the most change; all squares on a lattice of an eighth of the side are looked at.
   */
  static Box liveliest(Landscape plan, double sideMm) {
    Box carved = plan.tiling().carved();
    double side = Math.min(sideMm, Math.min(carved.width(), carved.height()));
    CellMap map = CellMap.of(plan, 120);
    Box best = null;
    double bestScore = -1;
    for (double y = carved.minY(); y + side <= carved.maxY() + 1e-9; y += side / 8) {
      for (double x = carved.minX(); x + side <= carved.maxX() + 1e-9; x += side / 8) {
        double score = score(map, plan.job().panel().heightMm(), x, y, side);
        if (score > bestScore) {
          bestScore = score;
          best = new Box(x, y, x + side, y + side);
        }
      }
    }
    return best;
  }

  private static double score(CellMap map, double heightMm, double x, double y, double side) {
    int west = (int) (x / map.cellMm());
    int east = Math.min((int) ((x + side) / map.cellMm()), map.columns() - 1);
    int north = (int) ((heightMm - y - side) / map.cellMm());
    int south = Math.min((int) ((heightMm - y) / map.cellMm()), map.rows() - 1);
    java.util.BitSet plies = new java.util.BitSet();
    int changes = 0;
    for (int row = Math.max(north, 0); row <= south; row++) {
      for (int column = west; column <= east; column++) {
        plies.set(map.ply(column, row));
        changes += column > west && map.ply(column, row) != map.ply(column - 1, row) ? 1 : 0;
      }
    }
    return plies.cardinality() + changes * 1e-6;
  }
}
