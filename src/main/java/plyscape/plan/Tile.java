package plyscape.plan;

import plyscape.files.PlanFiles;

/**
 * One of several panels.
 *
 * @param column from 1 at the left
 * @param row from 1 at the bottom
 * @param plan of this panel, in its own coordinates, or what remains of it
 */
public record Tile<P>(int column, int row, P plan) {

  /** Checks that column and row count from 1. */
  public Tile {
    if (column < 1 || row < 1) {
      throw new IllegalArgumentException("column " + column + ", row " + row);
    }
  }

  /** Name of the panel and of its directory, such as {@code tile-1-2}. */
  public String name() {
    return PlanFiles.tile(column, row);
  }
}
