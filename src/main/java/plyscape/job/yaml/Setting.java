package plyscape.job.yaml;

import java.nio.file.Path;
import java.util.Objects;
import plyscape.fault.Place;

/**
 * A setting in place of the job file's: from the command line, or a cell of a table of jobs.
 * Immutable.
 *
 * @param key dotted path of the key, such as {@code panel.width} or {@code tools.2.feed}; entries
 *     of lists by number from 1 or by their name
 * @param value YAML text of the value; in a table the cell's text ({@link CellValue})
 * @param keyPlace where the key stands: the option, or the head of the column
 * @param valuePlace where the value stands
 * @param table the table, null for the command line; its folder is that of files that it names
 */
public record Setting(String key, String value, Place keyPlace, Place valuePlace, Path table) {

  /** Checks that all but the table is there. */
  public Setting {
    Objects.requireNonNull(key);
    Objects.requireNonNull(value);
    Objects.requireNonNull(keyPlace);
    Objects.requireNonNull(valuePlace);
  }

  /**
   * One of the command line.
   *
   * @param option what the user typed, for messages, such as {@code --width}
   */
  public Setting(String key, String value, String option) {
    this(key, value, Place.option(option), Place.option(option), null);
  }

  /** Its value, with the place where it stands. */
  YamlNode node() {
    return table == null
        ? YamlText.value(value, valuePlace, null)
        : CellValue.of(value, valuePlace, table.getParent());
  }
}
