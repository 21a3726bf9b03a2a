package plyscape.simulate;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;
import plyscape.grid.CellFrame;
import plyscape.simulate.stroke.ToolForm;

/**
 * How deep a cutter can reach a cell without cutting into anything that is to stay: over all places
 * of its axis at cell centres, the deepest that it may go there, less its height over the cell.
 * Faces are looked at cell by cell and at their ridges between ({@link FaceSurface}), walls
 * exactly. From walls the cutter keeps the 0.05 mm that may be left there (src/contract.md, section
 * 9). Places between the centres are left out, so what is called reachable certainly is.
 */
final class FaceReach {

  private final CellFrame frame;
  private final FaceSurface surface;
  private final FaceWalls walls;
  private final ToolForm form;
  private final boolean rough;
  private final double deepestMm;
  private final float[] tip;
  private final int[] aside;
  private final float[] height;

  /**
   * @param surface what is to stay
   * @param rough whether that is the surface of roughing
   * @param deepestMm length of the flutes
   */
  FaceReach(FaceSurface surface, FaceWalls walls, ToolForm form, boolean rough, double deepestMm) {
    this.frame = surface.frame();
    this.surface = surface;
    this.walls = walls;
    this.form = form;
    this.rough = rough;
    this.deepestMm = deepestMm;
    tip = new float[frame.size()];
    Arrays.fill(tip, Float.NaN);
    int nx = (int) Math.floor(form.radius() / frame.cellX());
    int ny = (int) Math.floor(form.radius() / frame.cellY());
    int[][] cells =
        IntStream.rangeClosed(-ny, ny)
            .boxed()
            .flatMap(dy -> IntStream.rangeClosed(-nx, nx).mapToObj(dx -> new int[] {dx, dy}))
            .filter(o -> distance(o) <= form.radius())
            .sorted(Comparator.comparingDouble(this::distance))
            .toArray(int[][]::new);
    aside = new int[2 * cells.length];
    height = new float[cells.length];
    for (int k = 0; k < cells.length; k++) {
      aside[2 * k] = cells[k][0];
      aside[2 * k + 1] = cells[k][1];
      height[k] = (float) form.height(distance(cells[k]));
    }
  }

  private double distance(int[] o) {
    return Math.hypot(o[0] * frame.cellX(), o[1] * frame.cellY());
  }

  /** Whether a cell can be cut to a depth. */
  boolean reaches(int column, int row, double depth) {
    for (int k = 0; k < height.length; k++) {
      int c = column + aside[2 * k];
      int r = row + aside[2 * k + 1];
      if (c >= 0 && r >= 0 && c < frame.columns() && r < frame.rows()) {
        // No face under the axis may be cut: so the tip is never deeper than that.
        if (surface.at(c, r) - height[k] >= depth && tip(c, r) - height[k] >= depth) {
          return true;
        }
      }
    }
    return false;
  }

  private float tip(int column, int row) {
    int i = row * frame.columns() + column;
    float best = tip[i];
    if (!Float.isNaN(best)) {
      return best;
    }
    best = (float) Math.min(deepestMm, surface.at(column, row));
    best =
        (float)
            Math.min(
                best,
                walls.deepestTip(
                    form,
                    Comparison.LEFT_ON_WALL_MM,
                    frame.centreX(column),
                    frame.centreY(row),
                    rough));
    for (int k = 0; k < height.length && height[k] < best; k++) {
      int c = column + aside[2 * k];
      int r = row + aside[2 * k + 1];
      boolean inside = c >= 0 && r >= 0 && c < frame.columns() && r < frame.rows();
      float stays = inside ? surface.at(c, r) : 0;
      best = Math.min(best, stays + height[k]);
      if (inside && surface.ridgeAfter(c, r)) {
        double east = aside[2 * k] * frame.cellX();
        double north = aside[2 * k + 1] * frame.cellY();
        best = (float) Math.min(best, surface.deepestTip(form, c, r, east, north));
      }
    }
    tip[i] = best; // several threads may write it: always the same
    return best;
  }
}
