package plyscape.cli.talk;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import plyscape.fault.IoReason;
import plyscape.text.Visible;

/**
 * Where a command talks: results to {@code out}, everything else to {@code err}; UTF-8 and LF on
 * every system.
 *
 * @param outTerminal whether out is a terminal
 * @param errTerminal whether err is one
 * @param colour whether colour was not refused; used only on a terminal
 */
public record Console(
    PrintStream out, PrintStream err, boolean outTerminal, boolean errTerminal, boolean colour) {

  /**
   * The process's own streams; colour is off with {@code --no-color}, NO_COLOR or a dumb terminal.
   */
  public static Console ofProcess(String[] args) {
    String noColor = System.getenv("NO_COLOR");
    boolean refused =
        Arrays.asList(args).contains("--no-color")
            || (noColor != null && !noColor.isEmpty())
            || "dumb".equals(System.getenv("TERM"));
    return new Console(
        stream(FileDescriptor.out),
        stream(FileDescriptor.err),
        isTerminal(1),
        isTerminal(2),
        !refused);
  }

  /** How wide results may be: as the terminal is, and anything elsewhere. */
  public int columns() {
    return outTerminal ? TerminalWidth.columns() : Integer.MAX_VALUE;
  }

  private static PrintStream stream(FileDescriptor descriptor) {
    return new PrintStream(
        new java.io.BufferedOutputStream(new CheckedStream(descriptor), 8192),
        false,
        StandardCharsets.UTF_8) {
      @Override
      public void println(String line) {
        print(line + "\n"); // the same bytes on every system
        flush();
      }
    };
  }

  /** Remembers why it couldn't be written, which {@link PrintStream} doesn't. */
  private static final class CheckedStream extends FileOutputStream {

    private static volatile String outTrouble = "";

    private final boolean out;

    CheckedStream(FileDescriptor descriptor) {
      super(descriptor);
      out = descriptor == FileDescriptor.out;
    }

    @Override
    public void write(byte[] bytes, int from, int count) throws IOException {
      try {
        super.write(bytes, from, count);
      } catch (IOException e) {
        if (out) {
          outTrouble = IoReason.of(e);
        }
        throw e;
      }
    }
  }

  /**
   * Why results could not be written, "" when they were. A reader that has seen enough and closed
   * its end of a pipe is no trouble.
   */
  public String outTrouble() {
    out.flush();
    String trouble = CheckedStream.outTrouble;
    return trouble.toLowerCase(Locale.ROOT).contains("pipe") ? "" : trouble;
  }

  /**
   * Java can't ask this of one stream; the system's process folder can, and elsewhere both or none
   * must be a terminal.
   */
  private static boolean isTerminal(int descriptor) {
    Path link = Path.of("/proc/self/fd/" + descriptor);
    try {
      String target = Files.readSymbolicLink(link).toString();
      return target.startsWith("/dev/pts/")
          || target.startsWith("/dev/tty")
          || target.equals("/dev/console");
    } catch (IOException | RuntimeException e) {
      return consoleIsTerminal();
    }
  }

  /** From Java 22 on there is always a console, which must be asked. */
  @SuppressWarnings("SystemConsoleNull") // see above
  private static boolean consoleIsTerminal() {
    java.io.Console console = System.console();
    if (console == null) {
      return false;
    }
    try {
      return (Boolean) java.io.Console.class.getMethod("isTerminal").invoke(console);
    } catch (ReflectiveOperationException e) {
      return true; // an older Java
    }
  }

  public boolean outColour() {
    return colour && outTerminal;
  }

  public boolean errColour() {
    return colour && errTerminal;
  }

  /** A line of talk; text from inputs in it is made printable. */
  public void talk(String line) {
    err.println(Visible.lines(line));
    err.flush();
  }

  /** A result as it stands, made of parts that are printable. */
  public void result(String text) {
    out.print(text);
    out.flush();
  }

  /** A fault as one message. */
  public void fault(String message) {
    String head = errColour() ? "\u001b[1;31mplyscape:\u001b[0m " : "plyscape: ";
    err.println(head + Visible.lines(message));
    err.flush();
  }
}
