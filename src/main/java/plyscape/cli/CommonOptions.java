package plyscape.cli;

import picocli.CommandLine.Option;

/** Options that every command has. */
final class CommonOptions {

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

  boolean quiet() {
    return quiet;
  }

  boolean verbose() {
    return verbose && !quiet;
  }
}
