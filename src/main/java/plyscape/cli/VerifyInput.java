package plyscape.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import plyscape.fault.InputFault;
import plyscape.fault.IoReason;
import plyscape.fault.Limit;
import plyscape.fault.Place;
import plyscape.gcode.GcodeHead;
import plyscape.gcode.GcodeParser;
import plyscape.gcode.Program;
import plyscape.grid.Box;
import plyscape.machine.Machine;
import plyscape.machine.Tool;
import plyscape.render.SvgLayerReader;
import plyscape.report.FacesJson;
import plyscape.report.FacesReader;
import plyscape.report.PlanFigures;
import plyscape.report.PlanJson;
import plyscape.report.PlanJsonReader;
import plyscape.simulate.Cut;
import plyscape.simulate.Setup;
import plyscape.simulate.Target;

/**
 * What {@code verify} and {@code resume} work on: a plan's figures and layers, and programs with
 * the tools that run them.
 *
 * @param plan the figures
 * @param machine the router
 * @param targets where each ply should show
 * @param programs in cutting order
 */
record VerifyInput(PlanFigures plan, Machine machine, List<Target> targets, List<Nc> programs) {

  /** A program, its text and its tool. */
  record Nc(Program program, String text, Tool tool) {

    String file() {
      return program.file();
    }
  }

  /**
   * Where tool and machine come from when the program's head doesn't say, or shouldn't be believed.
   */
  record Shop(Machine machine, List<Tool> tools, List<String> asked) {}

  /** The plan.json that a directory or the file itself stands for. */
  static Path planFile(Path place) {
    return Files.isDirectory(place) ? place.resolve("plan.json") : place;
  }

  /**
   * Reads plan, layers and programs.
   *
   * @param place an output directory of {@code plan}, or its plan.json
   * @param ncFiles programs in cutting order; empty for the plan's own
   * @param shop over what the programs' heads say
   */
  static VerifyInput read(Path place, List<Path> ncFiles, Shop shop) {
    Path planFile = planFile(place);
    PlanFigures plan = PlanJsonReader.read(planFile.toString(), text(planFile));
    Path folder = planFile.toAbsolutePath().getParent();
    List<Path> files = new ArrayList<>(ncFiles);
    if (files.isEmpty()) {
      plan.files().forEach(name -> files.add(within(folder.resolve("passes"), name, planFile)));
    }
    List<String> texts = files.stream().map(VerifyInput::text).toList();
    Machine machine = shop.machine();
    for (int i = 0; i < texts.size() && machine == null; i++) {
      machine = GcodeHead.read(texts.get(i)).machine().orElse(null);
    }
    machine = machine == null ? Machine.USUAL : machine;
    List<Nc> programs = new ArrayList<>();
    for (int i = 0; i < files.size(); i++) {
      String name = files.get(i).getFileName().toString();
      Program program =
          GcodeParser.parse(
              name, texts.get(i), machine, plan.widthMm(), plan.heightMm(), plan.thicknessMm());
      programs.add(new Nc(program, texts.get(i), VerifyTool.of(i, name, texts.get(i), plan, shop)));
    }
    return new VerifyInput(
        plan,
        machine,
        targets(folder.resolve("layers"), plan, faces(folder, plan, planFile)),
        List.copyOf(programs));
  }

  private static Path within(Path folder, String name, Path planFile) {
    Path path = folder.resolve(name).normalize();
    if (!folder.normalize().equals(path.getParent())) {
      throw new InputFault(
          Place.file(planFile.toString()),
          "a pass in \"" + name + "\"",
          "a plain file name is wanted");
    }
    return path;
  }

  /** The faces of a sculpted plan, or null. */
  private static VerifyFaces faces(Path folder, PlanFigures plan, Path planFile) {
    if (plan.faces() == null) {
      return null;
    }
    if (!plan.faces().equals(PlanJson.FACES)) {
      throw new InputFault(
          Place.file(planFile.toString()),
          "faces in \"" + plan.faces() + "\"",
          "\"" + PlanJson.FACES + "\" is wanted");
    }
    Path file = folder.resolve(PlanJson.FACES);
    byte[] relief =
        text(file.resolveSibling(FacesJson.RELIEF)).getBytes(StandardCharsets.ISO_8859_1);
    return new VerifyFaces(file.toString(), FacesReader.read(file.toString(), text(file), relief));
  }

  private static List<Target> targets(Path layers, PlanFigures plan, VerifyFaces faces) {
    List<Path> files;
    try (Stream<Path> list = Files.list(layers)) {
      files = list.filter(f -> f.getFileName().toString().endsWith(".svg")).sorted().toList();
    } catch (IOException e) {
      throw new InputFault(
          Place.file(layers.toString()),
          "the plan's layers can't be read",
          "they must lie beside plan.json",
          e);
    }
    List<Target> targets = new ArrayList<>();
    for (PlanFigures.PlyFigures ply : plan.plies()) {
      if (ply.areaMm2() <= 0) {
        continue;
      }
      SvgLayerReader.Layer layer =
          files.stream()
              .filter(f -> f.getFileName().toString().matches("0*" + ply.number() + "-.*"))
              .findFirst()
              .map(f -> SvgLayerReader.read(f.getFileName().toString(), text(f)))
              .orElseThrow(
                  () ->
                      new InputFault(
                          Place.file(layers.toString()),
                          "no layer of ply " + ply.number() + " (" + ply.name() + ")",
                          "write the plan again"));
      if (faces != null) {
        targets.addAll(faces.of(ply.number(), layer.exposed()));
        continue;
      }
      targets.add(
          new Target(ply.number(), ply.targetMm(), layer.exposed().toArray(double[][]::new)));
    }
    return List.copyOf(targets);
  }

  /**
   * A file's text; bytes beyond ASCII are kept one by one, so that columns count as an editor's do
   * for ASCII.
   */
  private static String text(Path file) {
    try {
      if (Files.exists(file) && !Files.isRegularFile(file)) {
        throw new InputFault(Place.file(file.toString()), "not a file", "check the name");
      }
      if (Files.size(file) > Limit.PROGRAM_BYTES.value()) {
        throw new InputFault(
            Place.file(file.toString()),
            "more than " + Limit.PROGRAM_BYTES.value() + " bytes",
            "is this the right file? " + Limit.PROGRAM_BYTES.help());
      }
      byte[] bytes = Files.readAllBytes(file);
      boolean program = !file.toString().endsWith(".json") && !file.toString().endsWith(".svg");
      return new String(bytes, program ? StandardCharsets.ISO_8859_1 : StandardCharsets.UTF_8);
    } catch (NoSuchFileException e) {
      throw new InputFault(
          Place.file(file.toString()), "there is no such file", "check the name", e);
    } catch (IOException e) {
      throw new InputFault(
          Place.file(file.toString()),
          "can't be read: " + IoReason.of(e),
          "check the file and its rights",
          e);
    }
  }

  /** The panel on its machine. */
  Setup setup(double cellMm) {
    Box panel = new Box(0, 0, plan.widthMm(), plan.heightMm());
    return new Setup(panel, plan.thicknessMm(), plan.carved(), machine, cellMm);
  }

  /** All programs with their tools. */
  List<Cut> cuts() {
    return programs.stream().map(p -> new Cut(p.program(), p.tool())).toList();
  }

  /** The plan's tools, with what is known of those that cut. */
  List<Tool> tools() {
    List<Tool> tools = new ArrayList<>();
    for (PlanFigures.ToolFigures figures : plan.tools()) {
      tools.add(
          programs.stream()
              .map(Nc::tool)
              .filter(t -> t.name().equals(figures.name()))
              .findFirst()
              .orElse(VerifyTool.plain(figures.name(), Tool.Shape.FLAT, figures.diameterMm(), 0)));
    }
    if (tools.isEmpty()) {
      programs.forEach(p -> tools.add(p.tool()));
    }
    return tools;
  }
}
