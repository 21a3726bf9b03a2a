package plyscape.cli;

import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import plyscape.cli.option.CommonOptions;
import plyscape.cli.process.ExitCodes;
import plyscape.cli.talk.Console;

/** {@code plyscape completion}: a script that completes commands and options in the shell. */
@Command(
    name = "completion",
    description =
        "Print a script for tab completion in bash and zsh: keep it in a file, and source that"
            + " where your shell starts.",
    sortOptions = false)
final class CompletionCommand implements Callable<Integer> {

  @SuppressWarnings("UnusedVariable") // every command has these
  @Mixin
  private CommonOptions common;

  private final Console console;

  CompletionCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() {
    console.result(AutoComplete.bash("plyscape", Main.line(console)).replace("\r\n", "\n"));
    return ExitCodes.DONE;
  }
}
