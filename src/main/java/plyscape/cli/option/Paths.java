package plyscape.cli.option;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;

/** Paths out of arguments. */
public final class Paths {

  private Paths() {}

  /**
   * The path that an argument names.
   *
   * @throws ParameterException if it can't be one on this system
   */
  public static Path of(CommandSpec spec, String text) {
    try {
      return Path.of(text);
    } catch (InvalidPathException e) {
      throw new ParameterException(
          spec.commandLine(),
          "\""
              + text
              + "\" can't be a file name here; with letters beyond ASCII a UTF-8 locale is needed"
              + " (LC_ALL=C.UTF-8)",
          e);
    }
  }
}
