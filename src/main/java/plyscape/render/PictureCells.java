package plyscape.render;

import java.util.Arrays;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;

/**
 * Square cells over a part of the panel, row by row from its north-west corner, and which of them
 * lie in an area: those whose centres do, by the even-odd rule, exactly.
 *
 * @param cellMm side of a cell
 * @param westMm panel X of the first column's west edge
 * @param northMm panel Y of the first row's north edge
 */
record PictureCells(int columns, int rows, double cellMm, double westMm, double northMm) {

  /** Sets the values of the cells whose centres lie in an area. */
  void fill(MultiPolygon area, short value, short[] values) {
    Crossings crossings = crossings(area);
    for (int row = 0; row < rows; row++) {
      double[] xs = crossings.sorted(row);
      for (int k = 0; k + 1 < xs.length; k += 2) {
        int from = Math.max((int) Math.ceil(xs[k] / cellMm - 0.5), 0);
        int to = Math.min((int) Math.ceil(xs[k + 1] / cellMm - 0.5), columns);
        if (to > from) {
          Arrays.fill(values, row * columns + from, row * columns + to, value);
        }
      }
    }
  }

  private Crossings crossings(MultiPolygon area) {
    Crossings crossings = new Crossings(this);
    for (int i = 0; i < area.getNumGeometries(); i++) {
      Polygon polygon = (Polygon) area.getGeometryN(i);
      crossings.add(polygon.getExteriorRing());
      for (int j = 0; j < polygon.getNumInteriorRing(); j++) {
        crossings.add(polygon.getInteriorRingN(j));
      }
    }
    return crossings;
  }

  /** Where rings cross the lines through the rows' centres. */
  private static final class Crossings {
    private final PictureCells cells;
    private final double[][] xs;
    private final int[] counts;

    Crossings(PictureCells cells) {
      this.cells = cells;
      xs = new double[cells.rows][];
      counts = new int[cells.rows];
    }

    void add(LineString ring) {
      CoordinateSequence points = ring.getCoordinateSequence();
      double westMm = cells.westMm;
      double northMm = cells.northMm;
      double cellMm = cells.cellMm;
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
