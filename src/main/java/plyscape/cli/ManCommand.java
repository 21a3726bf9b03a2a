package plyscape.cli;

import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import plyscape.cli.option.CommonOptions;
import plyscape.cli.option.Paths;
import plyscape.cli.process.ExitCodes;
import plyscape.cli.talk.Console;
import plyscape.output.OutputDirectory;
import plyscape.output.OutputKind;
import plyscape.text.NearestName;

/** {@code plyscape man}: manual pages, from the same source as {@code --help}. */
@Command(
    name = "man",
    description =
        "Print a manual page, as for:  plyscape man plan | man -l -   With -o, write all pages to a"
            + " directory.",
    sortOptions = false)
final class ManCommand implements Callable<Integer> {

  private static final OutputKind PAGES =
      OutputKind.of("plyscape.1", ".TH PLYSCAPE", "plyscape(-[a-z]+)?\\.[15]");

  @Spec private CommandSpec spec;

  @Parameters(
      arity = "0..1",
      paramLabel = "COMMAND",
      description =
          "Which command, or job or layup for the keys of these files; without it the program's"
              + " own page.")
  private String command;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "DIR",
      description = "Write all pages there.")
  private String directory;

  @Option(names = "--force", description = "Replace earlier pages there.")
  private boolean force;

  @Mixin private CommonOptions common;

  private final Console console;

  ManCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    CommandLine all = Main.line(console);
    if (directory != null) {
      writeAll(all);
      return ExitCodes.DONE;
    }
    if (command == null) {
      console.result(ManPage.text(all.getCommandSpec()));
      return ExitCodes.DONE;
    }
    if (ReferencePage.TOPICS.contains(command)) {
      console.result(ReferencePage.text(command));
      return ExitCodes.DONE;
    }
    CommandLine one = all.getSubcommands().get(command);
    if (one == null) {
      throw new ParameterException(
          spec.commandLine(),
          "no command \"" + command + "\"; " + NearestName.hint(command, Commands.names()));
    }
    console.result(ManPage.text(one.getCommandSpec()));
    return ExitCodes.DONE;
  }

  private void writeAll(CommandLine all) {
    Map<String, String> pages = new TreeMap<>();
    pages.put("plyscape.1", ManPage.text(all.getCommandSpec()));
    all.getSubcommands()
        .forEach(
            (name, line) ->
                pages.put("plyscape-" + name + ".1", ManPage.text(line.getCommandSpec())));
    ReferencePage.TOPICS.forEach(
        topic -> pages.put("plyscape-" + topic + ".5", ReferencePage.text(topic)));
    try (OutputDirectory out = OutputDirectory.open(Paths.of(spec, directory), PAGES, force)) {
      pages.forEach(out::write);
      out.publish();
    }
    if (!common.quiet()) {
      console.talk("wrote " + pages.size() + " pages to " + directory);
    }
  }
}
