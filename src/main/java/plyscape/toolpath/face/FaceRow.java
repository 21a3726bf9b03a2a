package plyscape.toolpath.face;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What one finishing cutter cuts along a row of a {@link FaceLattice}, or between two rows, mm,
 * gathered bit by bit.
 */
final class FaceRow {

  /**
   * A run that is deeper by more between two looks than straight on is known there too, mm: it
   * comes nearer to walls and cliffs than its looks, and wood that it took off would hold it again.
   */
  private static final double DEEPER_MM = 0.2;

  private final FaceLattice lattice;
  private final double row;
  private final List<FaceRun> runs = new ArrayList<>();
  private int[] columns = new int[64];
  private float[] depths = new float[64];
  private int count;

  /** Places between looks where a run is deeper than they tell, U and depth each. */
  private final List<double[]> between = new ArrayList<>();

  /**
   * @param row its number; between two rows, theirs and a share of the way
   */
  FaceRow(FaceLattice lattice, double row) {
    this.lattice = lattice;
    this.row = row;
  }

  double v() {
    return lattice.minV + row * lattice.stepMm;
  }

  List<FaceRun> runs() {
    return runs;
  }

  /** Adds a look at a column and how deep the tip is there. */
  void look(int column, double depth) {
    if (count == columns.length) {
      columns = Arrays.copyOf(columns, 2 * count);
      depths = Arrays.copyOf(depths, 2 * count);
    }
    columns[count] = column;
    depths[count++] = (float) depth;
  }

  /** Adds the run through the last so many looks. */
  void run(FaceRun run, int looks) {
    runs.add(run);
    int at = count - looks;
    for (int k = 0; k < run.size(); k++) {
      double u = run.u()[k];
      while (at < count - 2 && lattice.u(columns[at + 1]) < u) {
        at++;
      }
      double from = lattice.u(columns[at]);
      double share = (u - from) / (lattice.u(columns[at + 1]) - from);
      double straight = depths[at] + share * (depths[at + 1] - depths[at]);
      if (run.depth()[k] > straight + DEEPER_MM) {
        between.add(new double[] {u, run.depth()[k]});
      }
    }
  }

  /** Lowers the stock by all of it, only in some rows. */
  void stamp(DropCutter drop, int from, int end) {
    if (row + drop.around() < from || row - drop.around() >= end) {
      return;
    }
    if (row == (int) row) {
      drop.stamp((int) row, columns, depths, count, from, end);
    } else {
      for (int i = 0; i < count; i++) {
        place(drop, lattice.u(columns[i]), depths[i]).lower(from, end);
      }
    }
    for (double[] place : between) {
      place(drop, place[0], place[1]).lower(from, end);
    }
  }

  private TipPlace place(DropCutter drop, double u, double depth) {
    return new TipPlace(lattice, drop.form(), u, v(), depth);
  }
}
