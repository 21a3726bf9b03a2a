package plyscape.cli;

import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.UsageMessageSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;
import plyscape.cli.process.ExitCodes;
import plyscape.cli.process.ParentWatch;
import plyscape.cli.process.PoolRun;
import plyscape.cli.talk.Console;
import plyscape.fault.JobFault;
import plyscape.fault.Limit;
import plyscape.text.Visible;

/** The program's entry: finds the command, runs it, turns the outcome into an exit code. */
public final class Main {

  private Main() {}

  /** Runs and ends the process. */
  public static void main(String[] args) {
    Locale.setDefault(Locale.ROOT); // libraries that forget to name one
    System.setProperty("java.awt.headless", "true");
    PoolRun.everyProcessor();
    ParentWatch.begin();
    Console console = Console.ofProcess(args);
    int code = run(console, args);
    String trouble = console.outTrouble();
    if (code == ExitCodes.DONE && !trouble.isEmpty()) {
      code =
          report(
              console,
              new JobFault("can't write the results: " + trouble, "make room, or write elsewhere"));
    }
    console.err().flush();
    System.exit(code);
  }

  /** Runs in this process and gives the exit code. */
  public static int run(Console console, String... args) {
    CommandLine line = line(console, args);
    Limit.Scope limits = new Limit.Scope();
    try {
      return line.execute(args);
    } catch (
        Error e) { // picocli hands on exceptions only, and Java's own code for those would be 1
      return report(console, e);
    } finally {
      limits.close();
    }
  }

  /**
   * The command line with the commands that the arguments can mean; with all of them when there are
   * none.
   */
  static CommandLine line(Console console, String... args) {
    CommandLine line = new CommandLine(new RootCommand());
    Commands.needed(args).forEach(entry -> line.addSubcommand(entry.make().apply(console)));
    if (line.getSubcommands().isEmpty()) {
      line.getHelpSectionMap().put(UsageMessageSpec.SECTION_KEY_COMMAND_LIST, Commands::list);
    }
    line.setColorScheme(
        CommandLine.Help.defaultColorScheme(console.errColour() ? Ansi.ON : Ansi.OFF));
    line.setOut(writer(console.out()));
    line.setErr(writer(console.err()));
    line.setCaseInsensitiveEnumValuesAllowed(true);
    line.getSubcommands()
        .values()
        .forEach(sub -> sub.getCommandSpec().usageMessage().abbreviateSynopsis(true));
    line.setUsageHelpAutoWidth(console.outTerminal());
    line.setParameterExceptionHandler((e, arguments) -> usage(console, e));
    line.setExecutionExceptionHandler((e, at, result) -> report(console, e));
    return line;
  }

  /** In the streams' own encoding, which Java 17 doesn't take over by itself. */
  private static PrintWriter writer(PrintStream out) {
    return new PrintWriter(out, true, StandardCharsets.UTF_8);
  }

  private static int report(Console console, Throwable thrown) {
    console.fault(ExitCodes.message(thrown));
    return ExitCodes.of(thrown);
  }

  /** Usage faults: the message, the nearest names, and where help is. */
  private static int usage(Console console, ParameterException e) {
    console.fault(e.getMessage());
    UnmatchedArgumentException.printSuggestions(e, console.err());
    console.talk(
        "Try '" + Visible.line(e.getCommandLine().getCommandSpec().qualifiedName()) + " --help'.");
    return ExitCodes.of(e);
  }
}
