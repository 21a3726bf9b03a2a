package plyscape.toolpath.cover;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.Sweep;
import plyscape.toolpath.ring.Piece;

/**
 * Short ways over the spots that no ring cleared: with a stepover near the whole diameter rings
 * leave some where they bend or end. Each way goes straight from one spot to the next, as long as
 * the cutter fits.
 */
public final class LeftSpots {

  /** Ring index of these: after all inner rings, before the one along the wall. */
  private static final int INDEX = 1;

  private final Lattice lattice;
  private final DistanceField field;
  private final StepNodes nodes;
  private final double radius;
  private final Sweep sweep;
  private final List<Piece> pieces = new ArrayList<>();
  private double[] x = new double[16];
  private double[] y = new double[16];
  private int count;

  /**
   * @param nodes of the step; what is cleared is marked
   * @param radiusMm of the cutter
   */
  public LeftSpots(DistanceField field, StepNodes nodes, double radiusMm) {
    this.field = field;
    this.nodes = nodes;
    lattice = nodes.lattice();
    radius = radiusMm;
    sweep = new Sweep(lattice);
  }

  /** The ways, in the order of the lattice's rows. */
  public List<Piece> pieces() {
    nodes
        .where()
        .eachRun(
            (first, last) -> {
              for (int node = first; node <= last; node++) {
                if (left(node)) {
                  visit(node);
                }
              }
            });
    flush();
    return pieces;
  }

  /** Nodes whose disk doesn't fit are the wall ring's business. */
  private boolean left(int node) {
    return nodes.left(node) && field.distance[node] >= radius;
  }

  private void visit(int node) {
    double px = lattice.x(node % lattice.columns());
    double py = lattice.y(node / lattice.columns());
    if (count > 0 && !free(x[count - 1], y[count - 1], px, py)) {
      flush();
    }
    if (count == x.length) {
      x = Arrays.copyOf(x, 2 * count);
      y = Arrays.copyOf(y, 2 * count);
    }
    x[count] = px;
    y[count] = py;
    double fromX = count == 0 ? px : x[count - 1];
    double fromY = count == 0 ? py : y[count - 1];
    count++;
    double sure = Math.max(radius / 2, radius - 0.71 * lattice.stepMm());
    sweep.all(fromX, fromY, px, py, sure, nodes::clear);
  }

  private boolean free(double ax, double ay, double bx, double by) {
    double length = Math.hypot(bx - ax, by - ay);
    if (length > 4 * radius) {
      return false;
    }
    int steps = (int) Math.ceil(length / (0.7 * lattice.stepMm()));
    for (int s = 1; s < steps; s++) {
      double t = (double) s / steps;
      if (field.at(ax + t * (bx - ax), ay + t * (by - ay)) < radius + 0.01) {
        return false;
      }
    }
    return true;
  }

  private void flush() {
    if (count == 1) {
      x[1] = x[0] + 5e-4;
      y[1] = y[0];
      count = 2;
    }
    if (count > 0) {
      pieces.add(new Piece(INDEX, false, Arrays.copyOf(x, count), Arrays.copyOf(y, count)));
    }
    count = 0;
  }
}
