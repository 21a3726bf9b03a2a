package plyscape.region;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import plyscape.grid.CellFrame;

/**
 * Which of some polygons holds the centre of each cell of a frame, by the even-odd rule on exact
 * crossings of each row's centre line: index in the list, or {@link #NONE}. Polygons that share an
 * edge never both get a cell beside it, nor both miss it.
 */
public final class RegionRaster {

  /** No polygon. */
  public static final int NONE = -1;

  private final CellFrame frame;
  private final int[] cells;
  private double[][] crossings = new double[16][8];
  private int[] counts = new int[16];

  private RegionRaster(CellFrame frame) {
    this.frame = frame;
    cells = new int[frame.size()];
    Arrays.fill(cells, NONE);
  }

  /** Rasters polygons that don't overlap. */
  public static int[] of(List<Polygon> polygons, CellFrame frame) {
    RegionRaster raster = new RegionRaster(frame);
    for (int i = 0; i < polygons.size(); i++) {
      raster.fill(polygons.get(i), i);
    }
    return raster.cells;
  }

  /** Whether each cell's centre lies in an area. Nested areas give nested cells. */
  public static boolean[] inside(MultiPolygon area, CellFrame frame) {
    List<Polygon> polygons = new ArrayList<>();
    for (int i = 0; i < area.getNumGeometries(); i++) {
      polygons.add((Polygon) area.getGeometryN(i));
    }
    int[] cells = of(polygons, frame);
    boolean[] inside = new boolean[cells.length];
    for (int i = 0; i < cells.length; i++) {
      inside[i] = cells[i] != NONE;
    }
    return inside;
  }

  private void fill(Polygon polygon, int index) {
    Envelope box = polygon.getEnvelopeInternal();
    int first = rowFrom(box.getMinY());
    int end = rowFrom(box.getMaxY());
    if (end - first > counts.length) {
      counts = new int[end - first];
      crossings = Arrays.copyOf(crossings, end - first);
    }
    Arrays.fill(counts, 0);
    edges(polygon.getExteriorRing(), first);
    for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
      edges(polygon.getInteriorRingN(h), first);
    }
    for (int row = first; row < end; row++) {
      double[] xs = crossings[row - first];
      Arrays.sort(xs, 0, counts[row - first]);
      int base = row * frame.columns();
      for (int k = 0; k + 1 < counts[row - first]; k += 2) {
        int from = columnFrom(xs[k]);
        int to = columnFrom(xs[k + 1]);
        if (from < to) {
          Arrays.fill(cells, base + from, base + to, index);
        }
      }
    }
  }

  private void edges(LineString ring, int firstRow) {
    CoordinateSequence points = ring.getCoordinateSequence();
    for (int i = 1; i < points.size(); i++) {
      double ay = points.getY(i - 1);
      double by = points.getY(i);
      // Always from the south, so that both neighbours of an edge compute the same crossing.
      int a = ay <= by ? i - 1 : i;
      int b = ay <= by ? i : i - 1;
      double x0 = points.getX(a);
      double y0 = points.getY(a);
      double x1 = points.getX(b);
      double y1 = points.getY(b);
      int end = rowFrom(y1);
      for (int row = rowFrom(y0); row < end; row++) {
        double t = (frame.centreY(row) - y0) / (y1 - y0);
        put(row - firstRow, x0 + t * (x1 - x0));
      }
    }
  }

  private void put(int row, double x) {
    double[] xs = crossings[row];
    if (xs == null) {
      xs = new double[8];
      crossings[row] = xs;
    } else if (xs.length == counts[row]) {
      xs = Arrays.copyOf(xs, 2 * xs.length);
      crossings[row] = xs;
    }
    xs[counts[row]++] = x;
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

  private int columnFrom(double x) {
    double exact = (x - frame.minX()) / frame.cellX() - 0.5;
    return (int) Math.ceil(Math.min(Math.max(exact, 0), frame.columns()));
  }
}
