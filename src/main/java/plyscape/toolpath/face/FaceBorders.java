package plyscape.toolpath.face;

import java.util.Arrays;
import java.util.function.DoubleBinaryOperator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Polygon;
import plyscape.grid.Box;
import plyscape.region.FaceField;

/**
 * The upper edges of all walls as close points with their depths: every region's outline at its own
 * depth, and the carved area's edge at the panel's face; and {@link FacePeaks} and {@link
 * FaceCliffs}. With points no farther apart than {@code e}, a cutter that touches none of them
 * comes over the edge itself by e2/8D at most, D its distance from the axis.
 */
final class FaceBorders {

  private static final double BUCKET_MM = 0.8;

  private final FaceLattice lattice;
  private final int columns;
  private final int rows;
  private final int[] start;
  private final double[] u;
  private final double[] v;
  private final double[] depth;

  /** Least depth of the points in a bucket. */
  private final double[] least;

  private double[] rawU = new double[1024];
  private double[] rawV = new double[1024];
  private double[] rawDepth = new double[1024];
  private int count;

  FaceBorders(FaceLattice lattice, FaceTask task, double spacingMm) {
    this.lattice = lattice;
    FaceField faces = task.faces();
    columns = (int) Math.ceil(lattice.columns * lattice.stepMm / BUCKET_MM) + 1;
    rows = (int) Math.ceil(lattice.rows * lattice.stepMm / BUCKET_MM) + 1;
    for (int region = 0; region < faces.polygons().size(); region++) {
      Polygon polygon = faces.polygons().get(region);
      int own = region;
      DoubleBinaryOperator depth = (x, y) -> task.wantedMm(x, y, faces.depthMm(own, x, y));
      ring(polygon.getExteriorRing().getCoordinates(), depth, spacingMm);
      for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
        ring(polygon.getInteriorRingN(h).getCoordinates(), depth, spacingMm);
      }
    }
    ring(corners(task.carved()), (x, y) -> task.wantedMm(x, y, 0), spacingMm);
    for (int i = 0; i < lattice.peaks.length; i += 3) {
      put(lattice.peaks[i], lattice.peaks[i + 1], lattice.peaks[i + 2]);
    }
    start = new int[columns * rows + 1];
    for (int i = 0; i < count; i++) {
      start[bucket(rawU[i], rawV[i]) + 1]++;
    }
    for (int b = 0; b < columns * rows; b++) {
      start[b + 1] += start[b];
    }
    u = new double[count];
    v = new double[count];
    depth = new double[count];
    least = new double[columns * rows];
    Arrays.fill(least, Double.POSITIVE_INFINITY);
    int[] next = Arrays.copyOf(start, columns * rows);
    for (int i = 0; i < count; i++) {
      int b = bucket(rawU[i], rawV[i]);
      int at = next[b]++;
      u[at] = rawU[i];
      v[at] = rawV[i];
      depth[at] = rawDepth[i];
      least[b] = Math.min(least[b], rawDepth[i]);
    }
    rawU = null;
    rawV = null;
    rawDepth = null;
  }

  private static Coordinate[] corners(Box box) {
    return new Coordinate[] {
      new Coordinate(box.minX(), box.minY()),
      new Coordinate(box.maxX(), box.minY()),
      new Coordinate(box.maxX(), box.maxY()),
      new Coordinate(box.minX(), box.maxY()),
      new Coordinate(box.minX(), box.minY())
    };
  }

  /** Adds points along a closed ring, at the depth that is said for each. */
  private void ring(Coordinate[] points, DoubleBinaryOperator depthAt, double spacing) {
    for (int i = 1; i < points.length; i++) {
      Coordinate a = points[i - 1];
      Coordinate b = points[i];
      int n = (int) Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / spacing));
      for (int k = 0; k <= n; k++) {
        double x = a.x + (b.x - a.x) * k / n;
        double y = a.y + (b.y - a.y) * k / n;
        add(x, y, depthAt.applyAsDouble(x, y));
      }
    }
  }

  private void add(double x, double y, double at) {
    put(lattice.turned ? y : x, lattice.turned ? x : y, at);
  }

  private void put(double pu, double pv, double at) {
    if (count == rawU.length) {
      rawU = Arrays.copyOf(rawU, 2 * count);
      rawV = Arrays.copyOf(rawV, 2 * count);
      rawDepth = Arrays.copyOf(rawDepth, 2 * count);
    }
    rawU[count] = pu;
    rawV[count] = pv;
    rawDepth[count++] = at;
  }

  private int bucket(double pu, double pv) {
    return row(pv) * columns + column(pu);
  }

  private int column(double pu) {
    return Math.max(0, Math.min(columns - 1, (int) ((pu - lattice.minU) / BUCKET_MM)));
  }

  private int row(double pv) {
    return Math.max(0, Math.min(rows - 1, (int) ((pv - lattice.minV) / BUCKET_MM)));
  }

  /** Deepest that the tip may be at a place without touching an edge, or {@code best} if less. */
  double deepest(CutterForm form, double pu, double pv, double best) {
    double r = form.radiusMm();
    double r2 = r * r;
    double out = best;
    int toColumn = column(pu + r);
    int toRow = row(pv + r);
    for (int row = row(pv - r); row <= toRow; row++) {
      for (int column = column(pu - r); column <= toColumn; column++) {
        int b = row * columns + column;
        if (least[b] >= out) {
          continue;
        }
        for (int k = start[b]; k < start[b + 1]; k++) {
          if (depth[k] < out) {
            double du = u[k] - pu;
            double dv = v[k] - pv;
            double d2 = du * du + dv * dv;
            if (d2 < r2) {
              out = Math.min(out, depth[k] + form.height(d2));
            }
          }
        }
      }
    }
    return out;
  }
}
