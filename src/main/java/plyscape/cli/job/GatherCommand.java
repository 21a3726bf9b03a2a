package plyscape.cli.job;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import plyscape.batch.Gathered;
import plyscape.batch.SeriesPage;
import plyscape.cli.option.CommonOptions;
import plyscape.cli.option.Paths;
import plyscape.cli.process.ExitCodes;
import plyscape.cli.talk.Console;
import plyscape.fault.JobFault;
import plyscape.files.PlanFiles;
import plyscape.output.OutputFile;
import plyscape.text.Visible;

/** {@code plyscape gather}: the shares of a series put together. */
@Command(
    name = "gather",
    description =
        "Check that all jobs of a series are there, whoever planned them, and write one batch.json"
            + " and a page over all.",
    sortOptions = false)
public final class GatherCommand implements Callable<Integer> {

  private static final int MARK_REACH = 500;

  @Spec private CommandSpec spec;

  @Parameters(
      arity = "1..*",
      paramLabel = "OUT",
      description = "Folders that plan --list wrote to; what is put together goes to the first.")
  private List<String> folders;

  @Mixin private CommonOptions common;

  private final Console console;

  public GatherCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() throws IOException {
    List<Path> directories = folders.stream().map(folder -> Paths.of(spec, folder)).toList();
    Path first = directories.get(0);
    Path index = first.resolve(PlanFiles.INDEX);
    refuseOther(index);
    Gathered series = Gathered.of(directories);
    OutputFile.write(index, SeriesPage.text(series, first), true);
    series.merged().write(first);
    List<Gathered.Entry> missing = series.missing();
    String found = missing.isEmpty() ? "all there" : missing.size() + " not there";
    console.result(series.list().size() + " jobs, " + found + "\n");
    for (Gathered.Entry entry : missing) {
      console.result(
          "missing " + Visible.line(entry.job()) + ": " + Visible.lines(entry.trouble()) + "\n");
    }
    if (!common.quiet()) {
      console.talk("wrote " + index);
    }
    return missing.isEmpty() ? ExitCodes.DONE : ExitCodes.JOB;
  }

  private static void refuseOther(Path index) throws IOException {
    if (!Files.exists(index)) {
      return;
    }
    try (InputStream in = Files.newInputStream(index)) {
      String head = new String(in.readNBytes(MARK_REACH), StandardCharsets.UTF_8);
      if (!head.contains(SeriesPage.MARK)) {
        throw new JobFault(
            index + " is there and isn't of an earlier series",
            "move it away, or gather elsewhere");
      }
    }
  }
}
