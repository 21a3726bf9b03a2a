package plyscape.files;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import plyscape.fault.InputFault;
import plyscape.fault.Place;

/**
 * Rows of a small comma-separated file (RFC 4180, one record a line), with their line numbers.
 * Blank lines and lines that begin with # are passed over; blanks round a cell don't count.
 */
public final class CsvRows {

  /** Rows beyond this are no hand-made readings. */
  private static final int MOST_ROWS = 100_000;

  private CsvRows() {}

  /**
   * One row.
   *
   * @param line in the file, from 1
   * @param columns where each cell begins in the line, letters from 1
   */
  public record Row(int line, List<String> cells, List<Integer> columns) {}

  /**
   * Splits a text.
   *
   * @throws InputFault if a quote isn't closed, or there are too many rows
   */
  public static List<Row> of(String file, String text) {
    return of(
        file,
        text,
        fault -> {
          throw fault;
        });
  }

  /**
   * Splits a text and goes on after rows that can't be read.
   *
   * @param faults takes what is wrong with each of those
   */
  public static List<Row> of(String file, String text, Consumer<InputFault> faults) {
    List<Row> rows = new ArrayList<>();
    String plain = text.startsWith("\ufeff") ? text.substring(1) : text;
    String[] lines = plain.split("\r\n|\n|\r", -1);
    for (int i = 0; i < lines.length; i++) {
      if (!lines[i].isBlank() && !lines[i].stripLeading().startsWith("#")) {
        Row row = row(i + 1, lines[i]);
        if (row == null) {
          faults.accept(unclosed(file, i + 1, lines[i]));
        } else {
          rows.add(row);
        }
      }
      if (rows.size() > MOST_ROWS) {
        throw new InputFault(
            Place.at(file, i + 1, 1),
            "more than " + MOST_ROWS + " rows",
            "wanted a file of readings");
      }
    }
    return rows;
  }

  /** Null where a quote isn't closed. */
  private static Row row(int line, String text) {
    List<String> cells = new ArrayList<>();
    List<Integer> columns = new ArrayList<>();
    columns.add(1);
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (quoted && c == '"' && i + 1 < text.length() && text.charAt(i + 1) == '"') {
        cell.append('"');
        i++;
      } else if (c == '"' && (quoted || cell.toString().isBlank())) {
        quoted = !quoted;
      } else if (c == ',' && !quoted) {
        cells.add(cell.toString().strip());
        cell.setLength(0);
        columns.add(i + 2);
      } else {
        cell.append(c);
      }
    }
    cells.add(cell.toString().strip());
    return quoted ? null : new Row(line, cells, columns);
  }

  private static InputFault unclosed(String file, int line, String text) {
    return new InputFault(
        Place.at(file, line, text.lastIndexOf('"') + 1),
        "row " + line + ": a quote that isn't closed",
        "close it on the same line");
  }

  /**
   * A cell as it must be written: in quotes where a comma, a quote, a hash or outer blanks ask for
   * it.
   */
  public static String quoted(String cell) {
    boolean plain =
        cell.indexOf(',') < 0
            && cell.indexOf('"') < 0
            && cell.indexOf('#') < 0
            && cell.strip().equals(cell);
    return plain ? cell : "\"" + cell.replace("\"", "\"\"") + "\"";
  }
}
