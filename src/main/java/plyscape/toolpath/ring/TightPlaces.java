package plyscape.toolpath.ring;

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

  /** Places no farther apart than this, in lattice steps, are taken in one go. */
  private static final double ROW = 2.2;

  /** Ways between two places are looked at so many times. */
  private static final int PARTS = 6;

  /** So much nearer to walls than the radius a place may be, mm, as in slots. */
  private static final double FIT_MM = 0.002;

  /** So much nearer to a wall than the radius a way may lead, mm. */
  private static final double OVER_MM = 0.005;

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
   * small turn that covers all of it, else next to a point; places in a row are one way. Never
   * nearer to a wall than the radius less 0.002 mm, between two places less 0.005 mm.
   *
   * @param about blocks in which a distance near the radius may be
   */
  List<Ring> rings(CoarseMap about) {
    Lattice lattice = field.lattice;
    TightSpots spots = new TightSpots(ROW * lattice.stepMm(), this::free);
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
            addNeck(lattice.x(i), lattice.y(j), i, j, spots);
          } else {
            add(lattice.x(i), lattice.y(j), i, j, spots);
          }
        }
      }
    }
    return spots.ways();
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
  private void addNeck(double x, double y, int column, int row, TightSpots spots) {
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
      spots.add(px, py, room);
    }
  }

  private void add(double x, double y, int column, int row, TightSpots spots) {
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
    if (room < -FIT_MM) {
      return;
    }
    spots.add(x, y, Math.max(room, 0));
  }

  /** Whether the cutter may go straight between two places near each other. */
  private boolean free(double ax, double ay, double bx, double by) {
    Lattice lattice = field.lattice;
    int node = lattice.nearest((ax + bx) / 2, (ay + by) / 2);
    gather(node % lattice.columns(), node / lattice.columns());
    for (int part = 1; part < PARTS; part++) {
      double t = (double) part / PARTS;
      if (measure(ax + t * (bx - ax), ay + t * (by - ay)) < radius - OVER_MM) {
        return false;
      }
    }
    return true;
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
