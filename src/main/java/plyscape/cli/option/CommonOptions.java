package plyscape.cli.option;

import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import plyscape.cli.talk.Console;
import plyscape.cli.talk.WarningLines;
import plyscape.fault.Limit;
import plyscape.fault.Warnings;

/** Options that every command has. */
public final class CommonOptions {

  @Option(
      names = {"-q", "--quiet"},
      description = "Results and faults only: no progress, warnings or summary.")
  private boolean quiet;

  @Option(
      names = {"-v", "--verbose"},
      description = "Say more: every warning, and the time each stage took.")
  private boolean verbose;

  @Option(names = "--no-color", description = "No colour, as with NO_COLOR set.")
  @SuppressWarnings("UnusedVariable") // Console looks for it before the options are parsed
  private boolean noColor;

  @Spec(Spec.Target.MIXEE)
  private CommandSpec spec;

  @Option(
      names = "--limit",
      paramLabel = "NAME=N",
      description =
          "Let larger input in: settings-bytes, settings-values, settings-levels, pixels, features,"
              + " points or program-bytes. May be repeated.")
  @SuppressWarnings("UnusedMethod") // picocli calls it
  private void limit(List<String> texts) {
    for (String text : texts) {
      try {
        Limit.set(text);
      } catch (IllegalArgumentException e) {
        throw new ParameterException(
            spec.commandLine(), "found --limit \"" + text + "\"; " + e.getMessage());
      }
    }
  }

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help.")
  @SuppressWarnings("UnusedVariable") // picocli acts on it
  private boolean help;

  @Option(
      names = {"-V", "--version"},
      versionHelp = true,
      description = "Show the version.")
  @SuppressWarnings("UnusedVariable") // picocli acts on it
  private boolean version;

  public boolean quiet() {
    return quiet;
  }

  /** What is said at the end of a command that wrote something: warnings, and what was written. */
  public void close(Console console, Warnings warnings, String wrote) {
    if (!quiet()) {
      WarningLines.of(warnings.list(), verbose()).forEach(console::talk);
      console.talk("wrote " + wrote);
    }
  }

  public boolean verbose() {
    return verbose && !quiet;
  }
}
