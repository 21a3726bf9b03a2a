package plyscape.recheck;

/**
 * Something in a program's text that shouldn't be there, whatever it would cut. Immutable.
 *
 * @param file the program
 * @param line from 1
 * @param column from 1, 0 for the whole line
 * @param message what it is
 */
public record TextFault(String file, int line, int column, String message) {

  /** {@code file:line:column: message}. */
  @Override
  public String toString() {
    return file + ":" + line + (column > 0 ? ":" + column : "") + ": " + message;
  }
}
