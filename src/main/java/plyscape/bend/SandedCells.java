package plyscape.bend;

import java.util.SortedMap;
import java.util.TreeMap;
import org.locationtech.jts.geom.MultiPolygon;
import plyscape.grid.CellFrame;
import plyscape.grid.DistanceTransform;
import plyscape.region.RegionRaster;

/**
 * Where a sanding block reaches floors, on cells: wherever a disk as wide as the block fits into
 * the pocket (deeper places don't hinder it), and a quarter of its width on, into corners (0.207 of
 * it in a right angle). To a cell or so.
 */
final class SandedCells {

  private static final double INTO_CORNERS = 0.25;

  private final CellFrame frame;
  private final double blockCells;
  private final SortedMap<Integer, boolean[]> reached = new TreeMap<>();

  /**
   * Works it out for every pocket.
   *
   * @param frame square cells over the carved area with room around
   * @param pockets ply number to the pocket at that ply
   * @param blockMm width of the block; 0 reaches everything
   */
  SandedCells(CellFrame frame, SortedMap<Integer, MultiPolygon> pockets, double blockMm) {
    this.frame = frame;
    this.blockCells = blockMm / frame.cellX();
    if (blockMm > 0) {
      pockets.forEach((ply, pocket) -> reached.put(ply, reached(pocket)));
    }
  }

  /** Whether sanding reaches a cell of a ply's floor. */
  boolean reaches(int ply, int cell) {
    boolean[] cells = reached.get(ply);
    return cells == null || cells[cell];
  }

  private boolean[] reached(MultiPolygon pocket) {
    boolean[] inside = RegionRaster.inside(pocket, frame);
    boolean[] wall = new boolean[inside.length];
    for (int i = 0; i < wall.length; i++) {
      wall[i] = !inside[i];
    }
    // Half a cell of each distance between centres belongs to the wall.
    boolean[] middle = beyond(wall, blockCells / 2 - 0.5, false);
    return beyond(middle, blockCells * (0.5 + INTO_CORNERS), true);
  }

  /** Cells farther than a distance from the given ones, or nearer. */
  private boolean[] beyond(boolean[] from, double cells, boolean nearer) {
    int[] squared = DistanceTransform.squared(from, frame.columns(), frame.rows());
    boolean[] out = new boolean[from.length];
    for (int i = 0; i < out.length; i++) {
      boolean near = squared[i] != DistanceTransform.NONE && squared[i] <= cells * cells;
      out[i] = near == nearer;
    }
    return out;
  }
}
