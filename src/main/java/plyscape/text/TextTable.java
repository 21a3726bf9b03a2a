package plyscape.text;

import java.util.ArrayList;
import java.util.List;

/**
 * A table in plain text: a head, a rule, one line a row, columns two blanks apart, each as wide as
 * its widest cell. Cells are made printable first, so that names from inputs can't upset the
 * terminal.
 */
public final class TextTable {

  private final List<Column> columns = new ArrayList<>();
  private final List<List<String>> rows = new ArrayList<>();

  private record Column(String head, boolean right) {}

  /** Adds a column of words, set to the left. */
  public TextTable left(String head) {
    columns.add(new Column(Visible.line(head), false));
    return this;
  }

  /** Adds a column of numbers, set to the right. */
  public TextTable right(String head) {
    columns.add(new Column(Visible.line(head), true));
    return this;
  }

  /**
   * Adds a row with one cell a column.
   *
   * @throws IllegalArgumentException if the count differs
   */
  public TextTable row(String... cells) {
    if (cells.length != columns.size()) {
      throw new IllegalArgumentException(
          cells.length + " cells for " + columns.size() + " columns");
    }
    List<String> row = new ArrayList<>();
    for (String cell : cells) {
      row.add(Visible.line(cell));
    }
    rows.add(row);
    return this;
  }

  /** The whole table, every line ended by LF and without trailing blanks. */
  public String text() {
    List<String> head = columns.stream().map(Column::head).toList();
    int[] widths = new int[columns.size()];
    for (int c = 0; c < widths.length; c++) {
      widths[c] = width(head.get(c));
      for (List<String> row : rows) {
        widths[c] = Math.max(widths[c], width(row.get(c)));
      }
    }
    StringBuilder out = new StringBuilder();
    append(out, head, widths);
    List<String> rule = new ArrayList<>();
    for (int width : widths) {
      rule.add("-".repeat(width));
    }
    append(out, rule, widths);
    for (List<String> row : rows) {
      append(out, row, widths);
    }
    return out.toString();
  }

  private void append(StringBuilder out, List<String> cells, int[] widths) {
    StringBuilder line = new StringBuilder();
    for (int c = 0; c < widths.length; c++) {
      String gap = " ".repeat(widths[c] - width(cells.get(c)));
      line.append(c > 0 ? "  " : "");
      line.append(columns.get(c).right() ? gap + cells.get(c) : cells.get(c) + gap);
    }
    out.append(line.toString().stripTrailing()).append('\n');
  }

  /**
   * Columns that the text takes on a terminal: marks over letters take none, wide East Asian
   * letters two.
   */
  private static int width(String text) {
    return text.codePoints().map(TextTable::width).sum();
  }

  private static int width(int codePoint) {
    int type = Character.getType(codePoint);
    if (type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK) {
      return 0;
    }
    boolean wide =
        (codePoint >= 0x1100 && codePoint <= 0x115f)
            || (codePoint >= 0x2e80 && codePoint <= 0xa4cf)
            || (codePoint >= 0xac00 && codePoint <= 0xd7a3)
            || (codePoint >= 0xf900 && codePoint <= 0xfaff)
            || (codePoint >= 0xfe30 && codePoint <= 0xfe6f)
            || (codePoint >= 0xff00 && codePoint <= 0xff60)
            || (codePoint >= 0x1f300 && codePoint <= 0x1faff);
    return wide ? 2 : 1;
  }
}
