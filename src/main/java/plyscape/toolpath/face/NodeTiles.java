package plyscape.toolpath.face;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Least values of a {@link FaceLattice}'s nodes in small squares, so that a cutter of many nodes
 * looks only where it may touch: of a ball of 4 mm over nodes 0.03 mm apart at a few hundred
 * squares instead of 17,000 nodes.
 */
final class NodeTiles {

  /** Nodes along a side. */
  static final int SIDE = 8;

  final int columns;
  final float[] least;

  /**
   * Looks at all nodes.
   *
   * @param without nodes that don't count; null if all do
   */
  NodeTiles(FaceLattice lattice, float[] field, boolean[] without) {
    columns = (lattice.columns + SIDE - 1) / SIDE;
    int rows = (lattice.rows + SIDE - 1) / SIDE;
    least = new float[columns * rows];
    Arrays.fill(least, Float.POSITIVE_INFINITY);
    IntStream.range(0, rows)
        .parallel()
        .forEach(
            tileRow -> {
              int end = Math.min(lattice.rows, (tileRow + 1) * SIDE);
              for (int row = tileRow * SIDE; row < end; row++) {
                for (int column = 0; column < lattice.columns; column++) {
                  int node = row * lattice.columns + column;
                  int tile = tileRow * columns + column / SIDE;
                  if (field[node] < least[tile] && (without == null || !without[node])) {
                    least[tile] = field[node];
                  }
                }
              }
            });
  }

  /** Nodes from a column or row to the nearest of a tile's; 0 inside. */
  static int away(int index, int tile) {
    int first = tile * SIDE;
    return index < first ? first - index : Math.max(0, index - (first + SIDE - 1));
  }

  /** The tiles about a middle in turn: itself, one after it, one before it and so on. */
  static int outward(int middle, int turn) {
    return turn % 2 == 0 ? middle - turn / 2 : middle + (turn + 1) / 2;
  }
}
