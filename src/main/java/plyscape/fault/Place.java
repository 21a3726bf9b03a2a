package plyscape.fault;

/**
 * Where in the user's input something stands. Immutable.
 *
 * @param file file name as the user gave it, or "" when the place is not in a file
 * @param line line from 1, or 0 when unknown
 * @param column column from 1, or 0 when unknown
 * @param key key path such as {@code terrain.bands} or an option name, or ""
 */
public record Place(String file, int line, int column, String key) {

  /** A whole file. */
  public static Place file(String file) {
    return new Place(file, 0, 0, "");
  }

  /** A line and column of a file, both from 1. */
  public static Place at(String file, int line, int column) {
    return new Place(file, line, column, "");
  }

  /** A command line option. */
  public static Place option(String name) {
    return new Place("", 0, 0, name);
  }

  /** {@code file:line:column: key}, leaving out what is unknown. */
  @Override
  public String toString() {
    StringBuilder out = new StringBuilder(file);
    if (line > 0) {
      out.append(':').append(line);
      if (column > 0) {
        out.append(':').append(column);
      }
    }
    if (!key.isEmpty()) {
      out.append(out.length() > 0 ? ": " : "").append(key);
    }
    return out.toString();
  }
}
