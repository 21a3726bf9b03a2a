package plyscape.simulate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import plyscape.grid.CellFrame;

/**
 * Finds the connected areas (by edges) of cells that are gouged, and of those left uncut: the
 * largest first, then by place.
 */
final class Areas {

  private final HeightField field;
  private final CellFrame frame;
  private final byte[] verdicts;
  private final IntToDoubleFunction target;
  private final boolean[] seen;
  private int[] cells = new int[256];
  private int size;

  Areas(HeightField field, byte[] verdicts, IntToDoubleFunction target) {
    this.field = field;
    this.frame = field.frame();
    this.verdicts = verdicts;
    this.target = target;
    this.seen = new boolean[verdicts.length];
  }

  List<Difference> find() {
    List<Difference> list = new ArrayList<>();
    for (int i = 0; i < verdicts.length; i++) {
      if (!seen[i]
          && (verdicts[i] == CellVerdict.GOUGED.code()
              || verdicts[i] == CellVerdict.UNCUT.code())) {
        list.add(area(i));
      }
    }
    list.sort(
        Comparator.comparingDouble(Difference::areaMm2)
            .reversed()
            .thenComparingDouble(Difference::y)
            .thenComparingDouble(Difference::x));
    return list;
  }

  /** Takes all cells in that hang together with one. */
  private void spread(int start) {
    byte verdict = verdicts[start];
    int columns = frame.columns();
    size = 0;
    put(start);
    for (int k = 0; k < size; k++) { // grows while it runs
      int i = cells[k];
      int column = i % columns;
      int row = i / columns;
      next(column > 0, i - 1, verdict);
      next(column < columns - 1, i + 1, verdict);
      next(row > 0, i - columns, verdict);
      next(row < frame.rows() - 1, i + columns, verdict);
    }
  }

  private Difference area(int start) {
    spread(start);
    int columns = frame.columns();
    int minColumn = columns;
    int maxColumn = 0;
    int minRow = frame.rows();
    int maxRow = 0;
    double sumColumn = 0;
    double sumRow = 0;
    double most = 0;
    for (int k = 0; k < size; k++) {
      int column = cells[k] % columns;
      int row = cells[k] / columns;
      most = Math.max(most, error(cells[k]));
      sumColumn += column;
      sumRow += row;
      minColumn = Math.min(minColumn, column);
      maxColumn = Math.max(maxColumn, column);
      minRow = Math.min(minRow, row);
      maxRow = Math.max(maxRow, row);
    }
    int worst = worst(most, sumColumn / size, sumRow / size);
    return new Difference(
        CellVerdict.values()[verdicts[start]],
        size * field.cellAreaMm2(),
        frame.centreX(worst % columns),
        frame.centreY(worst / columns),
        field.depth()[worst],
        target.applyAsDouble(worst),
        frame.centreX(minColumn) - frame.cellX() / 2,
        frame.centreY(minRow) - frame.cellY() / 2,
        frame.centreX(maxColumn) + frame.cellX() / 2,
        frame.centreY(maxRow) + frame.cellY() / 2);
  }

  private double error(int i) {
    return Math.abs(field.depth()[i] - target.applyAsDouble(i));
  }

  /** Of the cells that are (to 0.001 mm) the worst, the one nearest to the area's middle. */
  private int worst(double most, double middleColumn, double middleRow) {
    int best = cells[0];
    double nearest = Double.POSITIVE_INFINITY;
    for (int k = 0; k < size; k++) {
      int row = cells[k] / frame.columns();
      double d = Math.hypot(cells[k] % frame.columns() - middleColumn, row - middleRow);
      if (error(cells[k]) > most - 0.001 && d < nearest) {
        nearest = d;
        best = cells[k];
      }
    }
    return best;
  }

  private void next(boolean inside, int i, byte verdict) {
    if (inside && !seen[i] && verdicts[i] == verdict) {
      put(i);
    }
  }

  private void put(int i) {
    seen[i] = true;
    if (size == cells.length) {
      cells = Arrays.copyOf(cells, 2 * size);
    }
    cells[size++] = i;
  }
}
