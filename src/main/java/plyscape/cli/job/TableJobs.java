package plyscape.cli.job;

import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import plyscape.batch.JobTable;
import plyscape.batch.RowCheck;
import plyscape.fault.InputFault;
import plyscape.fault.Warnings;
import plyscape.job.yaml.Setting;

/** The jobs of {@code --each}: one job, with a row of a table set over it each time. */
record TableJobs(JobInputs.Source template, JobTable table) {

  /**
   * Reads the table.
   *
   * @param given the jobs of the command line
   * @throws ParameterException if that isn't one, or sets what a column sets
   * @throws InputFault if the table can't be read
   */
  static TableJobs of(CommandSpec spec, List<JobInputs.Source> given, Path file) {
    if (given.size() != 1) {
      throw new ParameterException(
          spec.commandLine(), "found " + given.size() + " jobs; --each takes one");
    }
    JobTable table = JobTable.read(file);
    JobInputs.Source template = given.get(0);
    for (Setting column :
        table.rows().stream().limit(1).flatMap(row -> row.settings().stream()).toList()) {
      String set = template.place(column.key()).key();
      if (set.startsWith("--")) {
        throw new ParameterException(
            spec.commandLine(),
            "found " + set + " and a column \"" + column.key() + "\" in " + file + "; keep one");
      }
    }
    return new TableJobs(template, table);
  }

  List<JobInputs.Source> sources() {
    return table.rows().stream().map(row -> template.with(row.name(), row.settings())).toList();
  }

  /**
   * Looks at every row before the first is planned.
   *
   * @throws InputFault if anything is wrong with it, all faults in one message
   */
  void check() {
    RowCheck.of(table, row -> template.with("", row).read(new Warnings()));
  }
}
