package plyscape.region;

/**
 * The edges along the rim of a lattice, numbered counter-clockwise from the south-west corner.
 * Nodes go row by row from the south; a cell is named by its south-west node, its edges are 0 S, 1
 * E, 2 N, 3 W.
 */
final class LatticeRim {

  private final int columns;
  private final int rows;

  /**
   * @param columns of nodes
   * @param rows of nodes
   */
  LatticeRim(int columns, int rows) {
    this.columns = columns;
    this.rows = rows;
  }

  /** How many edges there are. */
  int sides() {
    return 2 * (columns - 1) + 2 * (rows - 1);
  }

  /** How many edges lie before each corner: south-east, north-east, north-west, south-west. */
  int[] corners() {
    int across = columns - 1;
    int up = rows - 1;
    return new int[] {across, across + up, 2 * across + up, 2 * across + 2 * up};
  }

  /**
   * Edge s of the box, counter-clockwise from the south-west corner: first node, second node, cell,
   * the cell's edge.
   */
  int[] side(int s) {
    int across = columns - 1;
    int up = rows - 1;
    if (s < across) {
      return new int[] {s, s + 1, s, 0};
    }
    if (s < across + up) {
      int r = s - across;
      int node = r * columns + columns - 1;
      return new int[] {node, node + columns, node - 1, 1};
    }
    if (s < 2 * across + up) {
      int c = across - 1 - (s - across - up);
      int node = up * columns + c;
      return new int[] {node + 1, node, node - columns, 2};
    }
    int r = up - 1 - (s - 2 * across - up);
    int node = r * columns;
    return new int[] {node + columns, node, node, 3};
  }

  /** The rim's edge that a cell's edge on the rim is. */
  int of(int cell, int edge) {
    int c = cell % columns;
    int r = cell / columns;
    int across = columns - 1;
    int up = rows - 1;
    return switch (edge) {
      case 0 -> c;
      case 1 -> across + r;
      case 2 -> across + up + (across - 1 - c);
      default -> 2 * across + up + (up - 1 - r);
    };
  }
}
