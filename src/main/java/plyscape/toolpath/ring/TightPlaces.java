package plyscape.toolpath.ring;

import java.util.ArrayList;
import java.util.List;
import plyscape.toolpath.lattice.CoarseMap;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.Ring;

/**
 * Finds the places where a cutter fits between walls by less than a lattice step: single points,
 * narrow necks. There the distance from the walls has a ridge between the nodes that reaches the
 * cutter's radius while no node does. From each node near such a ridge the exact distance is
 * climbed to its highest point close by.
 */
final class TightPlaces {

  private final DistanceField field;
  private final double radius;
  private final int[] candidates = new int[49];
  private int candidateCount;
  private int nearest;

  /** For one pocket and one cutter radius, mm. */
  TightPlaces(DistanceField field, double radiusMm) {
    this.field = field;
    this.radius = radiusMm;
  }

  /**
   * Short ways for the cutter's centre, each an open ring of index 0: where there is some room a
   * small turn that covers all of it, else next to a point. Never nearer to a wall than the radius
   * less 0.001 mm.
   *
   * @param about blocks in which a distance near the radius may be
   */
  List<Ring> rings(CoarseMap about) {
    List<Ring> rings = new ArrayList<>();
    Lattice lattice = field.lattice;
    float[] d = field.distance;
    int columns = lattice.columns();
    double least = radius - 0.72 * lattice.stepMm();
    for (int j = 3; j < lattice.rows() - 3; j++) {
      for (int i = 3; i < columns - 3; i++) {
        if (!about.has(i, j)) {
          i = about.lastOfBlock(i);
          continue;
        }
        int node = j * columns + i;
        if (d[node] > least && d[node] < radius) {
          if (beside(node)) {
            addNeck(lattice.x(i), lattice.y(j), i, j, rings);
          } else {
            add(lattice.x(i), lattice.y(j), i, j, rings);
          }
        }
      }
    }
    return rings;
  }

  private boolean beside(int node) {
    int columns = field.lattice.columns();
    for (int at = node - columns; at <= node + columns; at += columns) {
      if (field.distance[at - 1] >= radius
          || field.distance[at] >= radius
          || field.distance[at + 1] >= radius) {
        return true;
      }
    }
    return false;
  }

  /**
   * The end of a neck that the lattice cuts short: straight off the wall nearest to a node, to
   * where another wall is as near. Nothing when the lattice sees that place by itself.
   */
  private void addNeck(double x, double y, int column, int row, List<Ring> rings) {
    gather(column, row);
    double h = field.lattice.stepMm();
    double d = measure(x, y);
    int edge = nearest;
    double t = field.edges.along(edge, x, y);
    double ux = (x - field.edges.ax[edge] - t * (field.edges.bx[edge] - field.edges.ax[edge])) / d;
    double uy = (y - field.edges.ay[edge] - t * (field.edges.by[edge] - field.edges.ay[edge])) / d;
    // Off that wall the distance grows as the way does, until another wall is nearer.
    double low = 0;
    double high = 0.8 * h;
    boolean free = measure(x + high * ux, y + high * uy) > d + high - 1e-5 + 1e-9;
    for (int time = 0; time < 12; time++) {
      double middle = (low + high) / 2;
      // Where there is room at the end, there is room all the way.
      if (free || measure(x + middle * ux, y + middle * uy) > d + middle - 1e-5) {
        low = middle;
      } else {
        high = middle;
      }
    }
    double px = x + low * ux;
    double py = y + low * uy;
    double room = measure(px, py) - radius;
    if (room >= 0 && field.at(px, py) < radius - 0.004) {
      rings.add(turn(px, py, room));
    }
  }

  private void add(double x, double y, int column, int row, List<Ring> rings) {
    gather(column, row);
    double h = field.lattice.stepMm();
    double startX = x;
    double startY = y;
    double best = measure(x, y);
    for (double step = h / 2; step > 2e-4; step /= 2) {
      boolean moved = true;
      while (moved) {
        moved = false;
        for (int a = 0; a < 16; a++) {
          double px = x + step * Math.cos(a * Math.PI / 8);
          double py = y + step * Math.sin(a * Math.PI / 8);
          if (Math.abs(px - startX) <= 0.8 * h && Math.abs(py - startY) <= 0.8 * h) {
            double there = measure(px, py);
            if (there > best + 1e-9) {
              best = there;
              x = px;
              y = py;
              moved = true;
            }
          }
        }
      }
    }
    double room = best - radius;
    if (room < -5e-4) {
      return;
    }
    rings.add(turn(x, y, Math.max(room, 0)));
  }

  /**
   * All places within the room of a point are free, as the distance changes by no more than the
   * way.
   */
  private static Ring turn(double x, double y, double room) {
    if (room < 0.004) {
      return new Ring(0, false, new double[] {x, x + 5e-4}, new double[] {y, y});
    }
    double[] px = new double[10];
    double[] py = new double[10];
    for (int a = 0; a <= 8; a++) {
      px[a] = x + room * Math.cos(a * Math.PI / 4);
      py[a] = y + room * Math.sin(a * Math.PI / 4);
    }
    px[9] = x;
    py[9] = y;
    return new Ring(0, false, px, py);
  }

  private void gather(int column, int row) {
    candidateCount = 0;
    for (int b = row - 3; b <= row + 3; b++) {
      for (int a = column - 3; a <= column + 3; a++) {
        int edge = field.nearest[b * field.lattice.columns() + a];
        boolean known = edge < 0;
        for (int c = 0; c < candidateCount && !known; c++) {
          known = candidates[c] == edge;
        }
        if (!known) {
          candidates[candidateCount++] = edge;
        }
      }
    }
  }

  private double measure(double x, double y) {
    double best = Double.POSITIVE_INFINITY;
    for (int c = 0; c < candidateCount; c++) {
      double d = field.edges.squaredDistance(candidates[c], x, y);
      if (d < best) {
        best = d;
        nearest = candidates[c];
      }
    }
    return Math.sqrt(best);
  }
}
