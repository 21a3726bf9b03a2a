package plyscape.terrain.raster;

import plyscape.terrain.crs.GroundCrs;

/**
 * What a raster's file, or one beside it, says of its cells. Immutable.
 *
 * @param name the file's name, for messages
 * @param toGround where the cells lie on the ground, in the CRS's units
 * @param origin what their places come from
 */
public record RasterHead(
    String name, int columns, int rows, Affine toGround, Origin origin, GroundCrs crs) {

  /** What the cells' places come from. */
  public enum Origin {
    /** The file, or one beside it. */
    FILE,
    /** Nothing: cells are squares of 1 from 0, 0. */
    NONE,
    /** Points that were gathered in cells of a size of our choice. */
    POINTS
  }

  /** Whether the file, or one beside it, says where its cells lie. */
  public boolean placed() {
    return origin != Origin.NONE;
  }

  /** The same with a place that is said elsewhere. */
  RasterHead placedAt(Affine other) {
    return new RasterHead(name, columns, rows, other, Origin.FILE, crs);
  }

  /** The same in another CRS. */
  RasterHead in(GroundCrs other) {
    return new RasterHead(name, columns, rows, toGround, origin, other);
  }

  /** Of a part. */
  RasterHead part(double column, double row, int wide, int high) {
    return new RasterHead(name, wide, high, toGround.shifted(column, row), origin, crs);
  }
}
