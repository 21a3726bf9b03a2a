package plyscape.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import plyscape.cli.option.CommonOptions;
import plyscape.cli.option.Paths;
import plyscape.cli.process.ExitCodes;
import plyscape.cli.talk.Console;
import plyscape.output.OutputDirectory;
import plyscape.output.OutputKind;

/** {@code plyscape new}: a starter job that plans as it stands. */
@Command(
    name = "new",
    description =
        "A starter job to edit: a job, a layup, a small terrain and a map, which plan as they"
            + " stand.",
    sortOptions = false)
final class NewCommand implements Callable<Integer> {

  private static final List<String> FILES =
      List.of("job.yaml", "layup.yaml", "terrain.asc", "zones.geojson");

  /** Never replaced: people edit these files. */
  private static final OutputKind STARTER =
      OutputKind.of("job.yaml", "", "[a-z]+\\.(yaml|asc|geojson)");

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "DIR", description = "Directory to make, new or empty.")
  private String directory;

  @Mixin private CommonOptions common;

  private final Console console;

  NewCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() throws IOException {
    Path target = Paths.of(spec, directory);
    try (OutputDirectory out = OutputDirectory.open(target, STARTER, false)) {
      for (String name : FILES) {
        try (InputStream in = NewCommand.class.getResourceAsStream("/plyscape/starter/" + name)) {
          out.write(name, in.readAllBytes());
        }
      }
      out.publish();
    }
    if (!common.quiet()) {
      String job = target.resolve("job.yaml").toString();
      console.talk("wrote " + String.join(", ", FILES) + " to " + target);
      console.talk("next: plyscape plan " + job + " -o " + target.resolve("out"));
    }
    return ExitCodes.DONE;
  }
}
