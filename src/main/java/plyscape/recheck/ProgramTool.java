package plyscape.recheck;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.gcode.HeadReader;
import plyscape.machine.CuttingData;
import plyscape.machine.Form;
import plyscape.machine.Tool;
import plyscape.report.json.PlanFigures;
import plyscape.text.NearestName;

/**
 * Finds the tool of a program: asked for, from the job by its name in the plan, from the program's
 * head, or from the plan.
 */
final class ProgramTool {

  private ProgramTool() {}

  /** The tool of the program at a place in the list, from 0. */
  static Tool of(int index, String file, String text, PlanFigures plan, KnownTools known) {
    Optional<Tool> head = HeadReader.read(text).tool();
    if (index < known.asked().size()) {
      return asked(known.asked().get(index), plan, known.tools());
    }
    String name =
        plan.passes().stream()
            .filter(p -> p.file().equals(file))
            .map(PlanFigures.PassFigures::tool)
            .findFirst()
            .orElse(head.map(Tool::name).orElse(null));
    if (name != null) {
      Optional<Tool> listed = named(known.tools(), name);
      if (listed.isPresent()) {
        return listed.get();
      }
    }
    if (head.isPresent()) {
      Tool t = head.get();
      return name == null
          ? t
          : t.named(name); // the head's name is in plain ASCII, the plan's as the user wrote it
    }
    Optional<PlanFigures.ToolFigures> figures =
        plan.tools().stream()
            .filter(t -> t.name().equals(name) || plan.tools().size() == 1)
            .findFirst();
    return figures
        .map(t -> plain(t.name(), Tool.Shape.FLAT, t.diameterMm(), 0))
        .orElseThrow(
            () ->
                new InputFault(
                    Place.file(file),
                    "the plan and the program's head don't say which tool cuts it",
                    "give --tool once a program, such as --tool flat:3"));
  }

  /** A tool of which only the form is known; what is 0 isn't checked. */
  static Tool plain(String name, Tool.Shape shape, double diameterMm, double fluteLengthMm) {
    return new Tool(name, Form.of(shape, diameterMm, fluteLengthMm), CuttingData.UNKNOWN);
  }

  private static Optional<Tool> named(List<Tool> tools, String name) {
    return tools.stream().filter(t -> t.name().equals(name)).findFirst();
  }

  /**
   * A name of the job's or the plan's, or SHAPE:DIAMETER[:FLUTE LENGTH], or
   * tapered:DIAMETER:FLUTE:TIP:DEGREES.
   */
  private static Tool asked(String text, PlanFigures plan, List<Tool> tools) {
    Optional<Tool> known = named(tools, text);
    if (known.isPresent()) {
      return known.get();
    }
    for (PlanFigures.ToolFigures t : plan.tools()) {
      if (t.name().equals(text)) {
        return plain(t.name(), Tool.Shape.FLAT, t.diameterMm(), 0);
      }
    }
    return form(text).orElseThrow(() -> notATool(text, plan));
  }

  /** A cutter by its sizes, or nothing if they aren't any. */
  private static Optional<Tool> form(String text) {
    String[] parts = text.split(":");
    double[] sizes = new double[4];
    Tool.Shape shape;
    try {
      shape = Tool.Shape.valueOf(parts[0].toUpperCase(Locale.ROOT));
      for (int i = 1; i < parts.length; i++) {
        sizes[i - 1] = Double.parseDouble(parts[i]);
      }
    } catch (IllegalArgumentException | ArrayIndexOutOfBoundsException e) {
      return Optional.empty();
    }
    boolean sane =
        parts.length >= 2
            && parts.length <= (shape == Tool.Shape.TAPERED ? 5 : 3)
            && sizes[0] >= 0.05
            && sizes[0] <= 60
            && sizes[1] >= 0
            && sizes[1] <= 300
            && sizes[2] >= 0
            && sizes[2] <= sizes[0]
            && sizes[3] >= 0
            && sizes[3] <= 85;
    if (!sane) {
      return Optional.empty();
    }
    Form form = new Form(shape, sizes[0], sizes[1], 2, sizes[2], sizes[3], Tool.Spiral.UNSAID);
    return Optional.of(new Tool(text, form, CuttingData.UNKNOWN));
  }

  private static InputFault notATool(String text, PlanFigures plan) {
    String names =
        plan.tools().isEmpty()
            ? ""
            : ", or a tool's name: "
                + NearestName.hint(
                    text, plan.tools().stream().map(PlanFigures.ToolFigures::name).toList());
    return new InputFault(
        Place.option("--tool"),
        "found \"" + text + "\"",
        "wanted such as flat:3, ball:6:20, tapered:6:20:0.5:10" + names);
  }
}
