package plyscape.cli.talk;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.TimeUnit;

/** How many characters a line of the terminal holds. */
final class TerminalWidth {

  private static final int USUAL = 80;
  private static final int LEAST = 20;
  private static final int MOST = 1000;

  private TerminalWidth() {}

  /** As COLUMNS says, else as the terminal does, else 80. */
  static int columns() {
    String said = System.getenv("COLUMNS");
    return said == null ? of(stty()) : of("0 " + said);
  }

  /** Of rows and columns, as {@code stty size} prints them; 80 for anything else. */
  static int of(String size) {
    String[] parts = size.strip().split(" ", -1);
    try {
      int columns = parts.length == 2 ? Integer.parseInt(parts[1]) : 0;
      return columns >= LEAST && columns <= MOST ? columns : USUAL;
    } catch (NumberFormatException e) {
      return USUAL;
    }
  }

  private static String stty() {
    try {
      Process stty = new ProcessBuilder("sh", "-c", "stty size </dev/tty").start();
      if (!stty.waitFor(1, TimeUnit.SECONDS)) {
        stty.destroyForcibly();
        return "";
      }
      return new String(stty.getInputStream().readAllBytes(), StandardCharsets.US_ASCII);
    } catch (IOException e) {
      return ""; // no such command here
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return "";
    }
  }
}
