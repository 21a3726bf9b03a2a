package plyscape.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import plyscape.cli.talk.Console;

/**
 * A command run in this process: exit code and the full text of both streams; no terminal, no
 * colour.
 *
 * @param code exit code
 */
public record Run(int code, String out, String err) {

  /** Runs a command line; paths and other objects are taken by their text. */
  public static Run of(Object... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Console console = new Console(stream(out), stream(err), false, false, false);
    int code = Main.run(console, Arrays.stream(args).map(String::valueOf).toArray(String[]::new));
    return new Run(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  private static PrintStream stream(ByteArrayOutputStream bytes) {
    return new PrintStream(bytes, true, StandardCharsets.UTF_8);
  }
}
