package plyscape.recheck;

import java.util.ArrayList;
import java.util.List;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.gcode.PassComment;
import plyscape.report.json.PlanFigures;
import plyscape.simulate.Cut;

/**
 * A point in the run of several programs: a line of one of them.
 *
 * @param program its index
 * @param line of it, from 1; it is still run
 */
public record StopPoint(int program, int line) {

  /**
   * From {@code [FILE:]LINE}; the file may be left out when there is only one.
   *
   * @param option that gives it, for messages
   * @throws InputFault if there is no such line
   */
  public static StopPoint line(String option, String text, WrittenPlan plan) {
    int colon = text.lastIndexOf(':');
    String number = text.substring(colon + 1);
    if (!number.matches("\\d{1,9}") || Integer.parseInt(number) < 1) {
      throw fault(option, "found " + text, "wanted [FILE:]LINE, such as 1200");
    }
    List<String> files = plan.programs().stream().map(WrittenPlan.WrittenProgram::file).toList();
    int program = colon < 0 ? 0 : files.indexOf(text.substring(0, colon));
    if (program < 0 || program >= files.size() || colon < 0 && files.size() > 1) {
      throw fault(
          option,
          "found " + text,
          "wanted one of " + String.join(", ", files) + " before the line, with a colon");
    }
    int line = Integer.parseInt(number);
    long lines = plan.programs().get(program).text().lines().count();
    if (line > lines) {
      throw fault(option, "found " + text, files.get(program) + " has " + lines + " lines");
    }
    return new StopPoint(program, line);
  }

  /**
   * The last line of a pass, counted from 1 as in plan.json.
   *
   * @param option that gives it, for messages
   * @throws InputFault if there is no such pass
   */
  public static StopPoint pass(String option, int number, WrittenPlan plan) {
    List<PlanFigures.PassFigures> passes = plan.plan().passes();
    if (number < 1 || number > passes.size()) {
      throw fault(option, "found " + number, "the plan has passes 1 to " + passes.size());
    }
    String file = passes.get(number - 1).file();
    long within = passes.subList(0, number).stream().filter(p -> p.file().equals(file)).count();
    for (int i = 0; i < plan.programs().size(); i++) {
      if (plan.programs().get(i).file().equals(file)) {
        return new StopPoint(i, PassComment.lastLine(plan.programs().get(i).text(), within));
      }
    }
    throw fault(
        option, "found " + number, "that pass is in " + file + ", which isn't among the programs");
  }

  private static InputFault fault(String option, String found, String wanted) {
    return new InputFault(Place.option(option), found, wanted);
  }

  /** What has been run by then. */
  public List<Cut> run(List<Cut> all) {
    List<Cut> cuts = new ArrayList<>(all.subList(0, program));
    cuts.add(new Cut(all.get(program).program().through(line), all.get(program).tool()));
    return cuts;
  }
}
