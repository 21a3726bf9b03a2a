package plyscape.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import plyscape.cli.option.CommonOptions;
import plyscape.cli.process.VersionText;

/** {@code plyscape} without a command. */
@Command(
    name = "plyscape",
    description =
        "Mills a landscape out of a panel of pressed coloured plies: every kind of place shows its"
            + " own ply.",
    versionProvider = VersionText.class,
    customSynopsis = "plyscape [OPTION]... COMMAND [ARGUMENT]...",
    footer = {
      "",
      "Start with:",
      "  plyscape new my-panel",
      "  plyscape plan my-panel/job.yaml -o my-panel/out",
      "Exit codes:  0 done, 1 can't be done as asked, 2 usage or bad input, 3 verification failed,"
          + " 70 a fault of plyscape"
    })
public final class RootCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @SuppressWarnings("UnusedVariable") // every command has these
  @Mixin
  private CommonOptions common;

  @Override
  public Integer call() {
    throw new ParameterException(
        spec.commandLine(), "no command; known are " + String.join(", ", Commands.names()));
  }
}
