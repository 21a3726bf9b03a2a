package plyscape.simulate;

import java.util.ArrayList;
import java.util.List;
import plyscape.grid.Box;
import plyscape.simulate.stroke.ToolForm;

/**
 * The outlines of targets whose depths change from place to place, as walls: at each point of an
 * edge the depths on both its sides are worked out from their targets, as the panel lies.
 */
final class FaceWalls {

  /** Walls just so far off as a cutter must keep count as touched, however that is rounded. */
  private static final double NOISE_MM = 1e-6;

  private final EdgeTable edges;
  private final List<Target> targets;
  private final BentPanel bent;
  private final WallBuckets buckets;

  /**
   * The walls of a panel.
   *
   * @param bent how it lies, or null for one that is flat and the same everywhere
   */
  FaceWalls(Box panel, List<Target> targets, BentPanel bent) {
    this.targets = targets;
    this.bent = bent;
    // Each target's number (from 1) stands for its depth, so the table tells who is on both sides.
    List<Target> numbered = new ArrayList<>();
    for (int t = 0; t < targets.size(); t++) {
      numbered.add(new Target(targets.get(t).plyNumber(), t + 1, targets.get(t).rings()));
    }
    edges = new EdgeTable(numbered);
    buckets = new WallBuckets(edges, panel);
  }

  /** Takes an edge's nearest point, its squared distance and the depths on its two sides. */
  private interface Near {
    /** Whether it is what is looked for. */
    boolean edge(double squared, double shallow, double deep);
  }

  /** Whether an edge within the distance is what is looked for. */
  private boolean near(double px, double py, double distance, boolean rough, Near near) {
    int toColumn = buckets.column(px + distance);
    int toRow = buckets.row(py + distance);
    for (int r = buckets.row(py - distance); r <= toRow; r++) {
      for (int c = buckets.column(px - distance); c <= toColumn; c++) {
        int b = r * buckets.columns + c;
        for (int k = buckets.start[b]; k < buckets.start[b + 1]; k++) {
          int e = buckets.edges[k];
          double dx = edges.x1[e] - edges.x0[e];
          double dy = edges.y1[e] - edges.y0[e];
          double t = ((px - edges.x0[e]) * dx + (py - edges.y0[e]) * dy) / (dx * dx + dy * dy);
          t = Math.max(0, Math.min(1, t));
          double x = edges.x0[e] + t * dx;
          double y = edges.y0[e] + t * dy;
          double squared = (px - x) * (px - x) + (py - y) * (py - y);
          if (squared <= distance * distance) {
            double one = depth((int) edges.shallow[e] - 1, x, y, rough);
            double other = depth((int) edges.deep[e] - 1, x, y, rough);
            if (near.edge(squared, Math.min(one, other), Math.max(one, other))) {
              return true;
            }
          }
        }
      }
    }
    return false;
  }

  private double depth(int target, double x, double y, boolean rough) {
    if (target < 0) {
      return bent == null ? 0 : bent.faceMm(x, y);
    }
    Target at = targets.get(target);
    return at.lyingMm(bent, x, y, rough ? at.roughMm() : at.depthAt(x, y));
  }

  /** Whether within a distance of the point some place is wanted at least this deep. */
  boolean deeperWithin(double px, double py, double distance, double depth) {
    return near(px, py, distance, false, (squared, shallow, deep) -> deep >= depth);
  }

  /** Whether within a distance of the point a wall stands above a depth. */
  boolean wallWithin(double px, double py, double distance, double depth) {
    return near(px, py, distance, false, (squared, shallow, deep) -> shallow < depth);
  }

  /**
   * Deepest that a cutter's tip may be at a place so that it stays off the upper edge of every wall
   * by so much, mm.
   *
   * @param rough walls between the depths of roughing, not of the finished faces
   */
  double deepestTip(ToolForm form, double offMm, double px, double py, boolean rough) {
    double[] best = {Double.POSITIVE_INFINITY};
    near(
        px,
        py,
        form.radius() + offMm + NOISE_MM,
        rough,
        (squared, shallow, deep) -> {
          double touching = Math.min(form.radius(), Math.max(0, Math.sqrt(squared) - offMm));
          best[0] = Math.min(best[0], shallow + form.height(touching));
          return false;
        });
    return best[0];
  }
}
