package plyscape.simulate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import plyscape.grid.CellFrame;

/** Finds the connected areas (by edges) of cells that are gouged, and of those left uncut. */
final class Areas {

  private final HeightField field;
  private final CellFrame frame;
  private final byte[] verdicts;
  private final IntToDoubleFunction target;
  private final boolean[] seen;
  private int[] stack = new int[256];
  private int top;

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
      if (!seen[i] && (verdicts[i] == Verdict.GOUGED.code() || verdicts[i] == Verdict.UNCUT.code())) {
        list.add(area(i));
      }
    }
    return list;
  }

  private Difference area(int start) {
    byte verdict = verdicts[start];
    int columns = frame.columns();
    int cells = 0;
    int worst = start;
    double most = -1;
    int minColumn = columns;
    int maxColumn = 0;
    int minRow = frame.rows();
    int maxRow = 0;
    push(start);
    while (top > 0) {
      int i = stack[--top];
      int column = i % columns;
      int row = i / columns;
      double error = Math.abs(field.depth()[i] - target.applyAsDouble(i));
      if (error > most || error == most && i < worst) {
        most = error;
        worst = i;
      }
      cells++;
      minColumn = Math.min(minColumn, column);
      maxColumn = Math.max(maxColumn, column);
      minRow = Math.min(minRow, row);
      maxRow = Math.max(maxRow, row);
      next(column > 0, i - 1, verdict);
      next(column < columns - 1, i + 1, verdict);
      next(row > 0, i - columns, verdict);
      next(row < frame.rows() - 1, i + columns, verdict);
    }
    return new Difference(
        Verdict.values()[verdict],
        cells * field.cellAreaMm2(),
        frame.centreX(worst % columns),
        frame.centreY(worst / columns),
        field.depth()[worst],
        target.applyAsDouble(worst),
        frame.centreX(minColumn) - frame.cellX() / 2,
        frame.centreY(minRow) - frame.cellY() / 2,
        frame.centreX(maxColumn) + frame.cellX() / 2,
        frame.centreY(maxRow) + frame.cellY() / 2);
  }

  private void next(boolean inside, int i, byte verdict) {
    if (inside && !seen[i] && verdicts[i] == verdict) {
      push(i);
    }
  }

  private void push(int i) {
    seen[i] = true;
    if (top == stack.length) {
      stack = Arrays.copyOf(stack, 2 * top);
    }
    stack[top++] = i;
  }
}
