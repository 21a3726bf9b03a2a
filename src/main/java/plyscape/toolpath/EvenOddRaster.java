package plyscape.toolpath;

import java.util.Arrays;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import plyscape.grid.CellFrame;

/**
 * Which cells of a frame have their centre in a polygon, by the even-odd rule on exact edge
 * crossings of each row's centre line. Nested polygons give nested cells; what two polygons share
 * along an edge falls to one of them.
 *
 * <p>Usage: {@code boolean[] inside = EvenOddRaster.fill(pocket, frame);} row by row as in {@link
 * CellFrame}.
 */
final class EvenOddRaster {

  private final CellFrame frame;
  private final int[] rowEnd;
  private double[] crossings;

  private EvenOddRaster(CellFrame frame) {
    this.frame = frame;
    rowEnd = new int[frame.rows() + 1];
  }

  /** Fills polygons and multipolygons. */
  static boolean[] fill(Geometry polygons, CellFrame frame) {
    var raster = new EvenOddRaster(frame);
    raster.overRings(polygons, true);
    for (int r = 0; r < frame.rows(); r++) {
      raster.rowEnd[r + 1] += raster.rowEnd[r];
    }
    // rowEnd[r] is now where row r begins; writing moves it on to the row's end.
    raster.crossings = new double[raster.rowEnd[frame.rows()]];
    raster.overRings(polygons, false);
    return raster.spans();
  }

  private void overRings(Geometry geometry, boolean count) {
    if (geometry instanceof MultiPolygon) {
      for (int i = 0; i < geometry.getNumGeometries(); i++) {
        overRings(geometry.getGeometryN(i), count);
      }
    } else if (geometry instanceof Polygon polygon && !polygon.isEmpty()) {
      edges(polygon.getExteriorRing(), count);
      for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
        edges(polygon.getInteriorRingN(i), count);
      }
    }
  }

  private void edges(LinearRing ring, boolean count) {
    CoordinateSequence points = ring.getCoordinateSequence();
    for (int i = 1; i < points.size(); i++) {
      edge(points.getX(i - 1), points.getY(i - 1), points.getX(i), points.getY(i), count);
    }
  }

  private void edge(double x0, double y0, double x1, double y1, boolean count) {
    if (y0 > y1) {
      // Always from the south, so that both neighbours of a shared edge compute the same crossing.
      edge(x1, y1, x0, y0, count);
      return;
    }
    int first = rowFrom(y0);
    int end = rowFrom(y1);
    for (int r = first; r < end; r++) {
      if (count) {
        rowEnd[r + 1]++;
      } else {
        crossings[rowEnd[r]++] = x0 + (frame.centreY(r) - y0) * (x1 - x0) / (y1 - y0);
      }
    }
  }

  /** The first row whose centre is at or above y, within 0..rows. */
  private int rowFrom(double y) {
    double exact = (y - frame.minY()) / frame.cellY() - 0.5;
    int row = (int) Math.ceil(Math.min(Math.max(exact, 0), frame.rows()));
    // The division may be off by one unit in the last place; centreY decides.
    while (row > 0 && frame.centreY(row - 1) >= y) {
      row--;
    }
    while (row < frame.rows() && frame.centreY(row) < y) {
      row++;
    }
    return row;
  }

  private boolean[] spans() {
    boolean[] inside = new boolean[frame.size()];
    int from = 0;
    for (int r = 0; r < frame.rows(); r++) {
      int to = rowEnd[r];
      Arrays.sort(crossings, from, to);
      for (int i = from; i + 1 < to; i += 2) {
        int a = columnFrom(crossings[i]);
        int b = columnFrom(crossings[i + 1]);
        Arrays.fill(inside, r * frame.columns() + a, r * frame.columns() + Math.max(a, b), true);
      }
      from = to;
    }
    return inside;
  }

  private int columnFrom(double x) {
    double exact = (x - frame.minX()) / frame.cellX() - 0.5;
    return (int) Math.ceil(Math.min(Math.max(exact, 0), frame.columns()));
  }
}
