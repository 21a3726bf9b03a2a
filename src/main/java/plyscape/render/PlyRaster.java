package plyscape.render;

import java.util.Arrays;
import java.util.Map;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import plyscape.grid.Box;
import plyscape.region.Tiling;

/**
 * Which ply shows at the centre of each cell of a picture of the whole panel, row by row from the
 * top (north). Ply 0 is the border outside the carved area. Even-odd rule on the exposed polygons;
 * exact at cell centres.
 *
 * @param columns count
 * @param rows count
 * @param cellMm side of a cell
 * @param plies ply numbers
 */
record PlyRaster(int columns, int rows, double cellMm, short[] plies) {

  /**
   * Rasters a tiling on a panel of the given size; cells are square, the last row and column may
   * stick out.
   */
  static PlyRaster of(Tiling tiling, double widthMm, double heightMm, double cellMm) {
    return of(tiling, new Box(0, 0, widthMm, heightMm), cellMm);
  }

  /** The same of a part of the panel: the first cell stands in its north-west corner. */
  static PlyRaster of(Tiling tiling, Box part, double cellMm) {
    int columns = (int) Math.ceil(part.width() / cellMm - 1e-9);
    int rows = (int) Math.ceil(part.height() / cellMm - 1e-9);
    short[] plies = new short[Math.multiplyExact(columns, rows)];
    for (Map.Entry<Integer, MultiPolygon> e : tiling.exposed().entrySet()) {
      fill(
          e.getValue(),
          e.getKey().shortValue(),
          plies,
          columns,
          rows,
          cellMm,
          part.minX(),
          part.maxY());
    }
    return new PlyRaster(columns, rows, cellMm, plies);
  }

  /** Sets the cells whose centres lie in an area; rows from the north. */
  static void fill(
      MultiPolygon area,
      short ply,
      short[] plies,
      int columns,
      int rows,
      double cellMm,
      double westMm,
      double northMm) {
    Crossings crossings = new Crossings(rows, cellMm, westMm, northMm);
    for (int i = 0; i < area.getNumGeometries(); i++) {
      Polygon polygon = (Polygon) area.getGeometryN(i);
      crossings.add(polygon.getExteriorRing());
      for (int j = 0; j < polygon.getNumInteriorRing(); j++) {
        crossings.add(polygon.getInteriorRingN(j));
      }
    }
    for (int row = 0; row < rows; row++) {
      double[] xs = crossings.sorted(row);
      for (int k = 0; k + 1 < xs.length; k += 2) {
        int from = Math.max((int) Math.ceil(xs[k] / cellMm - 0.5), 0);
        int to = Math.min((int) Math.ceil(xs[k + 1] / cellMm - 0.5), columns);
        if (to > from) {
          Arrays.fill(plies, row * columns + from, row * columns + to, ply);
        }
      }
    }
  }

  /** Where rings cross the lines through the rows' centres. */
  private static final class Crossings {
    private final double[][] xs;
    private final int[] counts;
    private final double cellMm;
    private final double westMm;
    private final double northMm;

    Crossings(int rows, double cellMm, double westMm, double northMm) {
      xs = new double[rows][];
      counts = new int[rows];
      this.cellMm = cellMm;
      this.westMm = westMm;
      this.northMm = northMm;
    }

    void add(LineString ring) {
      CoordinateSequence points = ring.getCoordinateSequence();
      for (int i = 0; i + 1 < points.size(); i++) {
        double x0 = points.getX(i) - westMm;
        double v0 = (northMm - points.getY(i)) / cellMm - 0.5;
        double x1 = points.getX(i + 1) - westMm;
        double v1 = (northMm - points.getY(i + 1)) / cellMm - 0.5;
        // Half-open in the row direction, so that a vertex on a row's line counts once.
        int from = Math.max((int) Math.ceil(Math.min(v0, v1)), 0);
        int to = Math.min((int) Math.ceil(Math.max(v0, v1)), counts.length);
        for (int row = from; row < to; row++) {
          put(row, x0 + (x1 - x0) * (row - v0) / (v1 - v0));
        }
      }
    }

    private void put(int row, double x) {
      if (xs[row] == null) {
        xs[row] = new double[16];
      } else if (counts[row] == xs[row].length) {
        xs[row] = Arrays.copyOf(xs[row], 2 * counts[row]);
      }
      xs[row][counts[row]++] = x;
    }

    double[] sorted(int row) {
      double[] out = xs[row] == null ? new double[0] : Arrays.copyOf(xs[row], counts[row]);
      Arrays.sort(out);
      return out;
    }
  }
}
