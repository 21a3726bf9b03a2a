package plyscape.region;

import java.util.List;
import org.locationtech.jts.geom.Envelope;
import plyscape.grid.DistanceTransform;
import plyscape.planar.Chain;

/**
 * Where in a pocket a round tool may leave something deeper than a fillet, found on a raster of a
 * quarter of its radius. It errs only towards looking: cells that a wall passes count as wall, and
 * a cell counts as reached only if a tool position near it surely clears all walls. What it can
 * miss is less deep than a leftover of the least area. The answer is by square tiles, so that exact
 * geometry has to look at those only, one by one.
 */
final class ReachScreen {

  /** Cells of the raster at most; beyond it cells grow. */
  private static final double MOST_CELLS = 9e6;

  /**
   * A tool position clears the walls for sure when the nearest wall cell's centre is this many
   * cells beyond its radius.
   */
  private static final double WALL_SPARE = 1;

  /**
   * A cell is suspect when it is this many cells farther than the radius from the nearest sure tool
   * position, or farther by this share of the depth that a leftover of the least area has when it
   * is as wide as the tool.
   */
  private static final double REACH_SPARE = 2.5;

  private static final double DEPTH_SHARE = 0.75;

  /**
   * What belongs to a suspect cell reaches at most this many cells beyond what makes it suspect.
   */
  private static final double SPREAD = 1.5;

  /**
   * Side of a tile, in radiuses: large against the tool, small enough that buffering one is quick.
   */
  private static final double TILE = 24;

  private final double cell;
  private final Envelope box;
  private final int columns;
  private final int rows;
  private final boolean[] inside;
  private final long tileSize;
  private final int tileColumns;
  private final int tileRows;
  private final boolean[] tiles;

  private ReachScreen(List<Chain> walls, double radiusUnits, double leastUnits2) {
    WallRaster raster = new WallRaster(walls, radiusUnits / 4, MOST_CELLS);
    cell = raster.cell;
    box = raster.box;
    columns = raster.columns;
    rows = raster.rows;
    inside = raster.inside;
    tileSize = (long) Math.ceil(TILE * radiusUnits);
    tileColumns = (int) (box.getWidth() / tileSize) + 1;
    tileRows = (int) (box.getHeight() / tileSize) + 1;
    tiles = new boolean[tileColumns * tileRows];
    search(
        raster.blocked(),
        radiusUnits / cell,
        Math.max(REACH_SPARE, DEPTH_SHARE * leastUnits2 / (2 * radiusUnits) / cell));
  }

  /** Screens the pocket of all regions of a ply and deeper. */
  static ReachScreen of(RegionMap map, int ply, double radiusUnits, double leastUnits2) {
    return new ReachScreen(WallRaster.walls(map, ply), radiusUnits, leastUnits2);
  }

  int tileColumns() {
    return tileColumns;
  }

  int tileRows() {
    return tileRows;
  }

  boolean suspect(int tileColumn, int tileRow) {
    return tiles[tileRow * tileColumns + tileColumn];
  }

  /** A stretch of tiles, grid units; the outermost ones reach to the pocket's edge. */
  Envelope tiles(int fromColumn, int toColumn, int fromRow, int toRow) {
    return new Envelope(
        box.getMinX() + fromColumn * tileSize,
        box.getMinX() + (toColumn + 1) * tileSize,
        box.getMinY() + fromRow * tileSize,
        box.getMinY() + (toRow + 1) * tileSize);
  }

  /**
   * Whether something cut out of one tile touches the tile's edge, so that more of it may lie in
   * the next.
   */
  boolean crossesTiles(Envelope piece) {
    return touchesEdge(piece.getMinX() - box.getMinX(), piece.getMaxX() - box.getMinX())
        || touchesEdge(piece.getMinY() - box.getMinY(), piece.getMaxY() - box.getMinY());
  }

  private boolean touchesEdge(double low, double high) {
    return Math.floor(high / tileSize + 1e-9) > Math.ceil(low / tileSize - 1e-9) - 1;
  }

  private void search(boolean[] blocked, double radius, double spare) {
    int[] clear = DistanceTransform.of(blocked, columns, rows).squared();
    boolean[] position = new boolean[inside.length];
    double enough = (radius + WALL_SPARE) * (radius + WALL_SPARE);
    for (int i = 0; i < position.length; i++) {
      position[i] = clear[i] >= enough;
    }
    int[] away = DistanceTransform.of(position, columns, rows).squared();
    double tooFar = (radius + spare) * (radius + spare);
    boolean[] suspect = new boolean[inside.length];
    for (int i = 0; i < suspect.length; i++) {
      suspect[i] = inside[i] && away[i] > tooFar;
    }
    for (int i = 0; i < suspect.length; i++) {
      if (suspect[i]) {
        markTiles(i % columns, i / columns, (spare + SPREAD) * cell);
      }
    }
  }

  /** Marks the tiles of a suspect cell and of what may belong to it. */
  private void markTiles(int column, int row, double spread) {
    double x = (column - 0.5) * cell;
    double y = (row - 0.5) * cell;
    for (int r = tile(y - spread, tileRows); r <= tile(y + spread, tileRows); r++) {
      for (int c = tile(x - spread, tileColumns); c <= tile(x + spread, tileColumns); c++) {
        tiles[r * tileColumns + c] = true;
      }
    }
  }

  private int tile(double offset, int count) {
    return Math.max(0, Math.min((int) (offset / tileSize), count - 1));
  }
}
