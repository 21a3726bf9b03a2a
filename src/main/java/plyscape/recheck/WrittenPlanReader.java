package plyscape.recheck;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import plyscape.fault.InputFault;
import plyscape.fault.Limit;
import plyscape.fault.Place;
import plyscape.files.InputFile;
import plyscape.files.PlanFiles;
import plyscape.gcode.GcodeParser;
import plyscape.gcode.HeadReader;
import plyscape.gcode.Program;
import plyscape.machine.Machine;
import plyscape.machine.SettingUp;
import plyscape.render.layer.SvgLayerReader;
import plyscape.report.json.FacesReader;
import plyscape.report.json.PlanFigures;
import plyscape.report.json.PlanJsonReader;
import plyscape.simulate.Target;

/** Reads plan, layers and programs of an output back from its files. */
public final class WrittenPlanReader {

  private final Path planFile;
  private final Path folder;
  private final KnownTools known;
  private final PlanFigures plan;

  private WrittenPlanReader(Path planFile, KnownTools known) {
    this.planFile = planFile;
    this.folder = planFile.toAbsolutePath().getParent();
    this.known = known;
    this.plan = PlanJsonReader.read(planFile.toString(), utf8(planFile));
  }

  /**
   * Reads plan, layers and programs.
   *
   * @param place an output directory of {@code plan}, or its plan.json
   * @param ncFiles programs in cutting order; empty for the plan's own
   * @param known over what the programs' heads say
   * @throws InputFault for what is missing or isn't as plyscape writes it
   */
  public static WrittenPlan read(Path place, List<Path> ncFiles, KnownTools known) {
    WrittenPlanReader reader = new WrittenPlanReader(planOf(place), known);
    List<Path> files = ncFiles.isEmpty() ? reader.ownPrograms() : ncFiles;
    List<String> texts = files.stream().map(WrittenPlanReader::latin1).toList();
    Machine machine = reader.machine(texts);
    List<WrittenPlan.WrittenProgram> programs = new ArrayList<>();
    for (int i = 0; i < files.size(); i++) {
      programs.add(reader.program(i, files.get(i), texts.get(i), machine));
    }
    return new WrittenPlan(reader.plan, machine, reader.targets(), List.copyOf(programs));
  }

  /** The plan.json of one panel; a landscape over several has none of its own. */
  private static Path planOf(Path place) {
    Path plan = PlanFiles.plan(place);
    List<String> panels = Files.exists(plan) ? List.of() : panels(place);
    if (!panels.isEmpty()) {
      throw new InputFault(
          Place.file(place.toString()),
          "a landscape over " + panels.size() + " panels, each with a plan of its own",
          "name one of them, such as "
              + place.resolve(panels.get(0))
              + (panels.size() > 1 ? "; there are " + String.join(", ", panels) : ""));
    }
    return plan;
  }

  private static List<String> panels(Path place) {
    if (!Files.exists(place.resolve(PlanFiles.TILES))) {
      return List.of();
    }
    try (Stream<Path> inside = Files.list(place)) {
      return inside
          .map(path -> path.getFileName().toString())
          .filter(name -> name.matches(PlanFiles.tilePattern()))
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private List<Path> ownPrograms() {
    Path passes = PlanFiles.passes(folder);
    return plan.files().stream().map(name -> within(passes, name)).toList();
  }

  private Path within(Path directory, String name) {
    Path path = directory.resolve(name).normalize();
    if (!directory.normalize().equals(path.getParent())) {
      throw new InputFault(
          Place.file(planFile.toString()),
          "a pass in \"" + name + "\"",
          "a plain file name is wanted");
    }
    return path;
  }

  /** Of the first program whose head tells it, unless it is known from elsewhere. */
  private Machine machine(List<String> texts) {
    if (known.machine() != null) {
      return overHighest(known.machine());
    }
    Machine said =
        texts.stream()
            .map(text -> HeadReader.read(text).machine())
            .flatMap(Optional::stream)
            .findFirst()
            .orElse(Machine.USUAL);
    SettingUp set = said.settingUp();
    return said.with(
        new SettingUp(
            set.zero(), set.zeroZ(), set.safeHeightMm(), set.toolChangeS(), plan.spinUpS()));
  }

  /** A job's machine with the safe height that the plan's programs have: over the highest place. */
  private Machine overHighest(Machine machine) {
    double rises =
        plan.bend() == null
            ? 0
            : plan.bend().readings().stream().mapToDouble(r -> r[2]).reduce(0, Math::max);
    SettingUp set = machine.settingUp();
    return machine.with(
        new SettingUp(
            set.zero(), set.zeroZ(), set.safeHeightMm() + rises, set.toolChangeS(), set.spinUpS()));
  }

  private WrittenPlan.WrittenProgram program(int index, Path file, String text, Machine machine) {
    String name = file.getFileName().toString();
    Program program =
        GcodeParser.parse(name, text, machine, plan.widthMm(), plan.heightMm(), plan.thicknessMm());
    return new WrittenPlan.WrittenProgram(
        program, text, ProgramTool.of(index, name, text, plan, known));
  }

  private List<Target> targets() {
    Path layers = PlanFiles.layers(folder);
    List<Path> files = list(layers);
    SculptedTargets faces = faces();
    List<Target> targets = new ArrayList<>();
    for (PlanFigures.PlyFigures ply : plan.plies()) {
      if (ply.areaMm2() <= 0) {
        continue;
      }
      SvgLayerReader.Layer layer =
          files.stream()
              .filter(f -> PlanFiles.isLayer(f.getFileName().toString(), ply.number()))
              .findFirst()
              .map(f -> SvgLayerReader.read(f.getFileName().toString(), utf8(f)))
              .orElseThrow(() -> noLayer(layers, ply));
      if (faces == null) {
        targets.add(
            new Target(ply.number(), ply.targetMm(), layer.exposed().toArray(double[][]::new)));
      } else {
        targets.addAll(faces.of(ply.number(), layer.exposed()));
      }
    }
    for (PlanFigures.CutoutFigures cutout : plan.cutouts()) {
      targets.add(
          new Target(
              0,
              cutout.depthMm(),
              cutout.rings().toArray(double[][]::new),
              null,
              cutout.slackMm(),
              WrittenPlan.level(cutout.depthMm(), cutout.plane())));
    }
    return List.copyOf(targets);
  }

  private static List<Path> list(Path layers) {
    try (Stream<Path> files = Files.list(layers)) {
      return files.sorted().toList();
    } catch (IOException e) {
      throw new InputFault(
          Place.file(layers.toString()),
          "the plan's layers can't be read",
          "they must lie beside plan.json",
          e);
    }
  }

  private static InputFault noLayer(Path layers, PlanFigures.PlyFigures ply) {
    return new InputFault(
        Place.file(layers.toString()),
        "no layer of ply " + ply.number() + " (" + ply.name() + ")",
        "write the plan again");
  }

  /** The faces of a sculpted plan, or null. */
  private SculptedTargets faces() {
    if (plan.faces() == null) {
      return null;
    }
    if (!plan.faces().equals(PlanFiles.FACES)) {
      throw new InputFault(
          Place.file(planFile.toString()),
          "faces in \"" + plan.faces() + "\"",
          "\"" + PlanFiles.FACES + "\" is wanted");
    }
    Path file = folder.resolve(PlanFiles.FACES);
    byte[] relief = bytes(folder.resolve(PlanFiles.relief()));
    return new SculptedTargets(
        file.toString(), FacesReader.read(file.toString(), utf8(file), relief));
  }

  private static byte[] bytes(Path file) {
    return InputFile.bytes(
        file,
        Limit.PROGRAM_BYTES.value(),
        "check the name",
        "is this the right file? " + Limit.PROGRAM_BYTES.help());
  }

  private static String utf8(Path file) {
    return new String(bytes(file), StandardCharsets.UTF_8);
  }

  /**
   * A program's text; bytes beyond ASCII are kept one by one, so that columns count as bytes do.
   */
  private static String latin1(Path file) {
    return new String(bytes(file), StandardCharsets.ISO_8859_1);
  }
}
