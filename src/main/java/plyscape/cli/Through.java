package plyscape.cli;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import plyscape.report.PlanFigures;
import plyscape.simulate.Cut;

/**
 * A point in the run of several programs: a line of one of them.
 *
 * @param program its index
 * @param line of it, from 1; it is still run
 */
record Through(int program, int line) {

  /** From {@code [FILE:]LINE}; the file may be left out when there is only one. */
  static Through line(CommandSpec spec, String option, String text, VerifyInput input) {
    int colon = text.lastIndexOf(':');
    String number = text.substring(colon + 1);
    if (!number.matches("\\d{1,9}") || Integer.parseInt(number) < 1) {
      throw new ParameterException(
          spec.commandLine(),
          "found " + option + " " + text + "; wanted [FILE:]LINE, such as 1200");
    }
    List<String> files = input.programs().stream().map(VerifyInput.Nc::file).toList();
    int program = colon < 0 ? 0 : files.indexOf(text.substring(0, colon));
    if (program < 0 || colon < 0 && files.size() > 1) {
      throw new ParameterException(
          spec.commandLine(),
          "found "
              + option
              + " "
              + text
              + "; wanted one of "
              + String.join(", ", files)
              + " before the line, with a colon");
    }
    int line = Integer.parseInt(number);
    long lines = input.programs().get(program).text().lines().count();
    if (line > lines) {
      throw new ParameterException(
          spec.commandLine(),
          "found " + option + " " + text + "; " + files.get(program) + " has " + lines + " lines");
    }
    return new Through(program, line);
  }

  /** The last line of a pass, counted from 1 as in plan.json. */
  static Through pass(CommandSpec spec, int number, VerifyInput input) {
    List<PlanFigures.PassFigures> passes = input.plan().passes();
    if (number < 1 || number > passes.size()) {
      throw new ParameterException(
          spec.commandLine(),
          "found --through-pass " + number + "; the plan has passes 1 to " + passes.size());
    }
    String file = passes.get(number - 1).file();
    long within = passes.subList(0, number).stream().filter(p -> p.file().equals(file)).count();
    for (int i = 0; i < input.programs().size(); i++) {
      if (input.programs().get(i).file().equals(file)) {
        return new Through(i, lastLine(input.programs().get(i).text(), within));
      }
    }
    throw new ParameterException(
        spec.commandLine(),
        "pass " + number + " is in " + file + ", which isn't among the programs");
  }

  /** Each pass begins with a comment that names its ply. */
  private static int lastLine(String text, long pass) {
    int line = 0;
    long seen = 0;
    for (String words : (Iterable<String>) text.lines()::iterator) {
      if (words.startsWith("(ply ") && ++seen > pass) {
        return line;
      }
      line++;
    }
    return line;
  }

  /** What has been run by then. */
  List<Cut> run(List<Cut> all) {
    List<Cut> cuts = new ArrayList<>(all.subList(0, program));
    cuts.add(new Cut(all.get(program).program().through(line), all.get(program).tool()));
    return cuts;
  }
}
