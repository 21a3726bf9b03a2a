package plyscape.bend;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.files.CsvRows;
import plyscape.files.InputFile;
import plyscape.text.Numbers;

/**
 * Reads the probed heights of a panel's top face: comma-separated text with a head row that names
 * {@code x}, {@code y} and {@code z} (other columns are passed over), mm from the panel's lower
 * left corner, z positive up in work coordinates.
 */
public final class TopReader {

  private static final long MOST_BYTES = 4_000_000;
  private static final double MOST_MM = 100_000;
  private static final List<String> COLUMNS = List.of("x", "y", "z");

  private final String file;
  private final int[] columns;
  private final int cells;
  private int empty;

  private TopReader(String file, int[] columns, int cells) {
    this.file = file;
    this.columns = columns;
    this.cells = cells;
  }

  /**
   * Reads a file.
   *
   * @param warnings takes {@code top-empty}: rows without a height
   * @return readings as they stand, one a filled row
   * @throws InputFault with the line if anything in it isn't a reading, or none is filled in
   */
  public static List<TopReading> read(Path path, Warnings warnings) {
    String text =
        InputFile.text(
            path, MOST_BYTES, "give a file of readings", "wanted a file of probed heights");
    return parse(path.toString(), text, warnings);
  }

  /** The same for a text. */
  static List<TopReading> parse(String file, String text, Warnings warnings) {
    List<CsvRows.Row> rows = CsvRows.of(file, text);
    if (rows.isEmpty()) {
      throw new InputFault(
          Place.file(file), "no rows", "wanted a head row x,y,z and a row for each probed place");
    }
    TopReader reader = head(file, rows.get(0));
    List<TopReading> readings = new ArrayList<>();
    for (CsvRows.Row row : rows.subList(1, rows.size())) {
      TopReading reading = reader.reading(row);
      if (reading != null) {
        readings.add(reading);
      }
    }
    if (readings.isEmpty()) {
      throw new InputFault(
          Place.file(file), "no row with a height", "fill in the column z and save the file");
    }
    if (reader.empty > 0) {
      warnings.add(
          "top-empty",
          reader.empty + " of " + (rows.size() - 1) + " rows have no height and were passed over",
          file);
    }
    return List.copyOf(readings);
  }

  private static TopReader head(String file, CsvRows.Row head) {
    List<String> names = head.cells().stream().map(c -> c.toLowerCase(Locale.ROOT)).toList();
    int[] columns = COLUMNS.stream().mapToInt(names::indexOf).toArray();
    for (int i = 0; i < columns.length; i++) {
      String name = COLUMNS.get(i);
      if (columns[i] < 0 || names.lastIndexOf(name) != columns[i]) {
        throw new InputFault(
            Place.at(file, head.line(), 1),
            columns[i] < 0
                ? "no column \"" + name + "\" among " + String.join(", ", names)
                : "two columns \"" + name + "\"",
            String.join("", names).contains(";")
                ? "part columns by commas, and write decimals with a point"
                : "wanted a head row that names x, y and z once each");
      }
    }
    return new TopReader(file, columns, names.size());
  }

  private TopReading reading(CsvRows.Row row) {
    if (row.cells().size() != cells) {
      throw new InputFault(
          Place.at(file, row.line(), 1),
          row.cells().size() + " cells",
          "wanted " + cells + " as in the head row; decimals take a point, such as 0.12");
    }
    if (row.cells().get(columns[2]).isEmpty()) {
      empty++;
      return null;
    }
    return new TopReading(number(row, 0), number(row, 1), number(row, 2), row.line());
  }

  private double number(CsvRows.Row row, int axis) {
    String text = row.cells().get(columns[axis]);
    double value = Double.NaN;
    if (text.matches("[+-]?(\\d{1,9}(\\.\\d{0,30})?|\\.\\d{1,30})([eE][+-]?\\d{1,2})?")) {
      value = Double.parseDouble(text);
    }
    if (!(Math.abs(value) <= MOST_MM)) {
      throw new InputFault(
          Place.at(file, row.line(), 1),
          COLUMNS.get(axis) + " \"" + text + "\"",
          "wanted millimetres, up to " + Numbers.trimmed(MOST_MM, 0) + ", such as 0.12");
    }
    return value;
  }
}
