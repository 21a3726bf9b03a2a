package plyscape.toolpath;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Location;
import plyscape.grid.Box;
import plyscape.grid.DistanceTransform;
import plyscape.machine.Move;
import plyscape.machine.Tool;
import plyscape.toolpath.task.Pass;
import plyscape.toolpath.task.PocketLevel;
import plyscape.toolpath.task.ToolRun;

/**
 * Cuts planned moves into a raster by brute force and compares with the pockets: every cell near a
 * move is asked how near it came. Shares no code with the planner.
 */
final class CutCheck {

  final Box carved;
  final double cell;
  final int columns;
  final int rows;
  final float[] cut;
  double gougedMm2;
  double uncutMm2;
  double rapidThroughMm2;
  double outsideMm;

  /** How far the deepest bite exceeds its cutter's stepdown, 0.05 mm at the rim aside, mm. */
  double overBiteMm;

  final List<String> notes = new ArrayList<>();

  CutCheck(Box carved, double cell) {
    this.carved =
        new Box(carved.minX() - 1, carved.minY() - 1, carved.maxX() + 1, carved.maxY() + 1);
    this.cell = cell;
    columns = (int) Math.round(this.carved.width() / cell);
    rows = (int) Math.round(this.carved.height() / cell);
    cut = new float[columns * rows];
  }

  /** What is wrong, or nothing. */
  String faults() {
    StringBuilder text = new StringBuilder();
    if (gougedMm2 > 0) {
      text.append(" gouged ").append(gougedMm2);
    }
    if (rapidThroughMm2 > 0) {
      text.append(" rapid through ").append(rapidThroughMm2);
    }
    if (uncutMm2 > 0) {
      text.append(" uncut ").append(uncutMm2);
    }
    if (overBiteMm > 0.001) {
      text.append(" bites too deep by ").append(overBiteMm);
    }
    if (outsideMm > 0) {
      text.append(" outside ").append(outsideMm);
    }
    return text.toString();
  }

  double x(int i) {
    return carved.minX() + (i + 0.5) * cell;
  }

  double y(int j) {
    return carved.minY() + (j + 0.5) * cell;
  }

  void run(List<ToolRun> runs) {
    for (ToolRun run : runs) {
      double r = run.tool().radiusMm();
      Double px = null;
      double py = 0;
      double pz = 0;
      for (Pass pass : run.passes()) {
        for (Move move : pass.moves()) {
          if (px == null) {
            px = move.x();
            py = move.y();
            pz = move.depth();
          }
          if (move.isArc()) {
            double[][] points = arc(px, py, pz, move);
            for (double[] p : points) {
              bite(px, py, pz, p[0], p[1], p[2], run.tool());
              step(px, py, pz, p[0], p[1], p[2], r, move);
              px = p[0];
              py = p[1];
              pz = p[2];
            }
          } else {
            bite(px, py, pz, move.x(), move.y(), move.depth(), run.tool());
            step(px, py, pz, move.x(), move.y(), move.depth(), r, move);
            px = move.x();
            py = move.y();
            pz = move.depth();
          }
          outsideMm =
              Math.max(
                  outsideMm,
                  Math.max(
                      Math.max(carved.minX() + 1 - move.x(), move.x() - carved.maxX() + 1),
                      Math.max(carved.minY() + 1 - move.y(), move.y() - carved.maxY() + 1)));
        }
      }
    }
  }

  static double[][] arc(double px, double py, double pz, Move move) {
    double a0 = Math.atan2(py - move.centreY(), px - move.centreX());
    double a1 = Math.atan2(move.y() - move.centreY(), move.x() - move.centreX());
    boolean clockwise = move.kind() == Move.Kind.CLOCKWISE;
    double sweep = clockwise ? a0 - a1 : a1 - a0;
    if (sweep <= 1e-12) {
      sweep += 2 * Math.PI;
    }
    double radius = Math.hypot(px - move.centreX(), py - move.centreY());
    int n =
        Math.max(
            1,
            (int)
                Math.ceil(sweep / Math.min(0.5, 2 * Math.acos(1 - Math.min(1, 0.0005 / radius)))));
    double[][] points = new double[n][];
    for (int i = 1; i <= n; i++) {
      double t = (double) i / n;
      double angle = clockwise ? a0 - t * sweep : a0 + t * sweep;
      points[i - 1] =
          i == n
              ? new double[] {move.x(), move.y(), move.depth()}
              : new double[] {
                move.centreX() + radius * Math.cos(angle),
                move.centreY() + radius * Math.sin(angle),
                pz + t * (move.depth() - pz)
              };
    }
    return points;
  }

  /** Every cell that a straight stretch of a move comes over with more than its rim. */
  private void bite(double ax, double ay, double az, double bx, double by, double bz, Tool tool) {
    double stepdown = tool.stepdownMm();
    if (Math.max(az, bz) <= stepdown) {
      return;
    }
    double r = tool.radiusMm() - 0.05;
    double dx = bx - ax;
    double dy = by - ay;
    double length = Math.sqrt(dx * dx + dy * dy);
    int i0 = Math.max(0, (int) Math.floor((Math.min(ax, bx) - r - carved.minX()) / cell));
    int i1 = Math.min(columns - 1, (int) Math.ceil((Math.max(ax, bx) + r - carved.minX()) / cell));
    int j0 = Math.max(0, (int) Math.floor((Math.min(ay, by) - r - carved.minY()) / cell));
    int j1 = Math.min(rows - 1, (int) Math.ceil((Math.max(ay, by) + r - carved.minY()) / cell));
    for (int j = j0; j <= j1; j++) {
      for (int i = i0; i <= i1; i++) {
        int k = j * columns + i;
        if (Math.max(az, bz) - cut[k] <= stepdown) {
          continue;
        }
        double along = length < 1e-9 ? 0 : ((x(i) - ax) * dx + (y(j) - ay) * dy) / length;
        double across =
            length < 1e-9
                ? Math.hypot(x(i) - ax, y(j) - ay)
                : ((x(i) - ax) * dy - (y(j) - ay) * dx) / length;
        double half = Math.sqrt(Math.max(0, r * r - across * across));
        double from = Math.max(0, along - half);
        double to = Math.min(length, along + half);
        if (Math.abs(across) <= r && from <= to) {
          double slope = length < 1e-9 ? 0 : (bz - az) / length;
          double z =
              length < 1e-9 ? Math.max(az, bz) : Math.max(az + slope * from, az + slope * to);
          double over = z - cut[k] - stepdown;
          if (over > 0.001 && over > overBiteMm) {
            notes.add("bite over by " + over + " at " + x(i) + " " + y(j) + " depth " + z);
          }
          overBiteMm = Math.max(overBiteMm, over);
        }
      }
    }
  }

  private void step(
      double ax, double ay, double az, double bx, double by, double bz, double r, Move move) {
    if (Math.max(az, bz) <= 0) {
      return;
    }
    boolean rapid = move.kind() == Move.Kind.RAPID;
    double reach = rapid ? r - 0.002 : r;
    int i0 = Math.max(0, (int) Math.floor((Math.min(ax, bx) - r - carved.minX()) / cell));
    int i1 = Math.min(columns - 1, (int) Math.ceil((Math.max(ax, bx) + r - carved.minX()) / cell));
    int j0 = Math.max(0, (int) Math.floor((Math.min(ay, by) - r - carved.minY()) / cell));
    int j1 = Math.min(rows - 1, (int) Math.ceil((Math.max(ay, by) + r - carved.minY()) / cell));
    double dx = bx - ax;
    double dy = by - ay;
    double length = dx * dx + dy * dy;
    for (int j = j0; j <= j1; j++) {
      for (int i = i0; i <= i1; i++) {
        double qx = x(i) - ax;
        double qy = y(j) - ay;
        double t0;
        double t1;
        if (length < 1e-16) {
          if (qx * qx + qy * qy > reach * reach) {
            continue;
          }
          t0 = 0;
          t1 = 1;
        } else {
          double m = (qx * dx + qy * dy) / length;
          double across = (qx * dy - qy * dx);
          double rest = reach * reach - across * across / length;
          if (rest < 0) {
            continue;
          }
          double half = Math.sqrt(rest / length);
          t0 = Math.max(0, m - half);
          t1 = Math.min(1, m + half);
          if (t0 > t1) {
            continue;
          }
        }
        double z = Math.max(az + t0 * (bz - az), az + t1 * (bz - az));
        int k = j * columns + i;
        if (rapid) {
          if (z > cut[k] + 0.001) {
            rapidThroughMm2 += cell * cell;
            if (notes.size() < 5) {
              notes.add(
                  "rapid through stock at "
                      + x(i)
                      + " "
                      + y(j)
                      + " depth "
                      + z
                      + " stock "
                      + cut[k]
                      + " "
                      + move);
            }
          }
        }
        if (z > cut[k]) {
          cut[k] = (float) z;
        }
      }
    }
  }

  /**
   * Compares with the pockets; what tools of these radii (each with its deepest reach) could not
   * reach isn't uncut.
   */
  void compare(List<PocketLevel> levels, List<Tool> tools) {
    float[] target = new float[cut.length];
    float[] reachable = new float[cut.length];
    List<IndexedPointInAreaLocator> locators = new ArrayList<>();
    for (PocketLevel level : levels) {
      IndexedPointInAreaLocator locator = new IndexedPointInAreaLocator(level.pocket());
      locators.add(locator);
      boolean[] outside = new boolean[cut.length];
      for (int k = 0; k < cut.length; k++) {
        outside[k] =
            locator.locate(new Coordinate(x(k % columns), y(k / columns))) == Location.EXTERIOR;
        if (!outside[k]) {
          target[k] = (float) level.depthMm();
        }
      }
      double[] toWall = distances(outside);
      for (Tool tool : tools) {
        if (tool.fluteLengthMm() < level.depthMm()) {
          continue;
        }
        boolean[] centres = new boolean[cut.length];
        boolean any = false;
        for (int k = 0; k < cut.length; k++) {
          centres[k] = toWall[k] - cell >= tool.radiusMm();
          any |= centres[k];
        }
        if (!any) {
          continue;
        }
        double[] toCentre = distances(centres);
        for (int k = 0; k < cut.length; k++) {
          if (toCentre[k] <= tool.radiusMm() - 0.002 && toWall[k] > 0.05 + cell * 0.71) {
            reachable[k] = Math.max(reachable[k], (float) level.depthMm());
          }
        }
      }
    }
    for (int k = 0; k < cut.length; k++) {
      double cx = x(k % columns);
      double cy = y(k / columns);
      if (cut[k] > target[k] + 0.001 && !allowed(levels, locators, cx, cy, cut[k])) {
        gougedMm2 += cell * cell;
        if (notes.size() < 10) {
          notes.add("gouge at " + cx + " " + cy + " cut " + cut[k] + " target " + target[k]);
        }
      }
      if (reachable[k] > cut[k] + 0.001) {
        uncutMm2 += cell * cell;
        if (notes.size() < 20) {
          notes.add("uncut at " + cx + " " + cy + " cut " + cut[k] + " reachable " + reachable[k]);
        }
      }
    }
  }

  private static boolean allowed(
      List<PocketLevel> levels,
      List<IndexedPointInAreaLocator> locators,
      double x,
      double y,
      double depth) {
    for (int l = 0; l < levels.size(); l++) {
      if (levels.get(l).depthMm() > depth - 0.001) {
        for (int a = 0; a < 32; a++) {
          double angle = a * Math.PI / 16;
          if (locators
                  .get(l)
                  .locate(new Coordinate(x + 0.02 * Math.cos(angle), y + 0.02 * Math.sin(angle)))
              != Location.EXTERIOR) {
            return true;
          }
        }
      }
    }
    return false;
  }

  private double[] distances(boolean[] source) {
    int[] squared = DistanceTransform.squared(source, columns, rows);
    double[] result = new double[source.length];
    for (int k = 0; k < result.length; k++) {
      result[k] = squared[k] == DistanceTransform.NONE ? 1e9 : Math.sqrt(squared[k]) * cell;
    }
    return result;
  }
}
