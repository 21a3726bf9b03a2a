package plyscape.batch;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.files.CsvRows;
import plyscape.files.InputFile;
import plyscape.job.yaml.Setting;

/**
 * A table of jobs: a CSV file with a row a job, its columns keys of a job in dotted form, {@code
 * name} among them. Immutable.
 *
 * @param rows those that are a job, in the table's order
 * @param faults what is wrong with it; {@link RowCheck} refuses them with those of the values
 */
public record JobTable(List<Row> rows, List<InputFault> faults) {

  private static final String NAME = "name";
  private static final long MOST_BYTES = 16 << 20;
  private static final String WANTED =
      "give a CSV file: a row of keys, name first, then a row a job";

  /**
   * One job.
   *
   * @param name of the job and of its output's folder
   * @param line in the file, from 1
   * @param settings its cells
   */
  public record Row(String name, int line, List<Setting> settings) {

    /** Copies the list. */
    public Row {
      settings = List.copyOf(settings);
    }
  }

  /** Copies the lists. */
  public JobTable {
    rows = List.copyOf(rows);
    faults = List.copyOf(faults);
  }

  /**
   * Reads a table.
   *
   * @throws InputFault if it can't be read or its first row isn't one of keys
   */
  public static JobTable read(Path file) {
    String text = InputFile.text(file, MOST_BYTES, WANTED, "split the table");
    return new Reader(file).read(text);
  }

  /** Reads one table and collects what is wrong with it. */
  private static final class Reader {

    private final Path file;
    private final TableFaults faults = new TableFaults();
    private final Map<String, Integer> linesOfNames = new HashMap<>();
    private final Map<String, Integer> linesOfFolded = new HashMap<>();

    Reader(Path file) {
      this.file = file;
    }

    JobTable read(String text) {
      List<InputFault> unread = new ArrayList<>();
      List<CsvRows.Row> rows = CsvRows.of(file.toString(), text, unread::add);
      if (rows.isEmpty()) {
        throw new InputFault(Place.file(file.toString()), "it has no row", WANTED);
      }
      CsvRows.Row head = rows.get(0);
      head(head);
      faults.refuse(); // without its head nothing else can be judged
      unread.forEach(faults::add);
      List<Row> jobs = new ArrayList<>();
      for (CsvRows.Row row : rows.subList(1, rows.size())) {
        if (fits(head, row)) {
          jobs.add(job(head, row));
        }
      }
      if (rows.size() == 1) {
        faults.add(Place.file(file.toString()), "it lists no job", WANTED);
      }
      return new JobTable(jobs, faults.list());
    }

    private void head(CsvRows.Row head) {
      List<String> keys = head.cells();
      if (keys.size() == 1 && keys.get(0).matches(".*[;\t].*")) {
        String found = keys.get(0).contains(";") ? "semicolons" : "tabs";
        faults.add(
            place(head, 0, ""),
            "cells parted by " + found,
            "wanted commas between cells, and points in numbers: save it as CSV with commas");
        return;
      }
      if (!keys.contains(NAME)) {
        faults.add(
            Place.at(file.toString(), head.line(), 1),
            "no column \"name\" among " + String.join(", ", keys),
            "wanted one: it names the panel and its output's folder");
      }
      for (int i = 0; i < keys.size(); i++) {
        if (keys.get(i).isEmpty()) {
          faults.add(place(head, i, ""), "a column without a key", "name it, or take it out");
        } else if (keys.indexOf(keys.get(i)) < i) {
          faults.add(
              place(head, i, ""), "a second column \"" + keys.get(i) + "\"", "keep one of them");
        }
      }
    }

    private boolean fits(CsvRows.Row head, CsvRows.Row row) {
      int cells = row.cells().size();
      int columns = head.cells().size();
      if (cells != columns) {
        faults.add(
            Place.at(file.toString(), row.line(), 1),
            "found " + cells + (cells == 1 ? " cell" : " cells") + " under " + columns + " columns",
            cells > columns
                ? "a value with commas stands in quotes, such as \"518500, 6161200\"; decimals take"
                    + " a point"
                : "wanted a cell for each column");
        return false;
      }
      return true;
    }

    private Row job(CsvRows.Row head, CsvRows.Row row) {
      List<Setting> settings = new ArrayList<>();
      for (int i = 0; i < row.cells().size(); i++) {
        String key = head.cells().get(i);
        String value = row.cells().get(i);
        Place place = place(row, i, key);
        if (value.isEmpty()) {
          faults.add(place, "an empty cell", "wanted a value in every cell");
        } else {
          settings.add(new Setting(key, value, place(head, i, ""), place, file));
        }
      }
      int column = head.cells().indexOf(NAME);
      String name = row.cells().get(column);
      if (!name.isEmpty()) {
        name(name, row.line(), place(row, column, NAME));
      }
      return new Row(name, row.line(), settings);
    }

    private void name(String name, int line, Place place) {
      String trouble = FolderName.trouble(name);
      if (!trouble.isEmpty()) {
        faults.add(place, "found \"" + name + "\"", trouble);
      }
      Integer first = linesOfNames.putIfAbsent(name, line);
      Integer alike = linesOfFolded.putIfAbsent(FolderName.folded(name), line);
      if (first != null) {
        faults.add(
            place, "\"" + name + "\" a second time, first in line " + first, "give each its own");
      } else if (alike != null) {
        faults.add(
            place,
            "\"" + name + "\" is like the name in line " + alike + " but for its letters' case",
            "some systems take them for one: give each its own");
      }
    }

    private Place place(CsvRows.Row row, int cell, String key) {
      return new Place(file.toString(), row.line(), row.columns().get(cell), key);
    }
  }
}
