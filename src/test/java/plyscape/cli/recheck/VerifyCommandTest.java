package plyscape.cli.recheck;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.cli.Run;
import plyscape.cli.SmallJob;
import plyscape.fault.InputFault;
import plyscape.gcode.GcodeParser;
import plyscape.recheck.KnownTools;
import plyscape.recheck.Outcome;
import plyscape.recheck.WrittenPlan;
import plyscape.recheck.WrittenPlanReader;
import plyscape.simulate.Cut;
import plyscape.simulate.CutResult;
import plyscape.simulate.Simulator;

/** A small job is planned once; then its programs are verified, spoiled and resumed. */
class VerifyCommandTest {

  @TempDir static Path folder;
  private static Path plan;
  private static Path program;
  private static List<String> lines;

  @BeforeAll
  static void planOnce() throws Exception {
    Path job = new SmallJob(folder).job("job.yaml", "minimum_floor: 0.3\n");
    plan = folder.resolve("out");
    Run run = Run.of("plan", job, "-o", plan, "-q");
    assertEquals(0, run.code(), run.err());
    try (var list = Files.list(plan.resolve("passes"))) {
      program = list.sorted().findFirst().orElseThrow();
    }
    lines = Files.readAllLines(program);
  }

  private static Path spoiled(List<String> text) throws Exception {
    return Files.write(folder.resolve(program.getFileName()), text);
  }

  private static JsonNode verify(int code, Object... args) throws Exception {
    List<Object> all = new ArrayList<>(List.of("verify", "--json"));
    all.addAll(List.of(args));
    Run run = Run.of(all.toArray());
    assertEquals(code, run.code(), run.out() + run.err());
    return new ObjectMapper().readTree(run.out());
  }

  /**
   * Index of a line in the deep part of the program: the middle one of those that only cut in the
   * plane.
   */
  private static int cuttingLine() {
    List<Integer> found = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      if (lines.get(i).matches("(G1 )?X\\S+ Y\\S+")) {
        found.add(i);
      }
    }
    return found.get(found.size() / 2);
  }

  private static double[] position(int index) {
    double[] at = new double[2];
    for (String line : lines.subList(0, index + 1)) {
      if (!line.startsWith("(")) {
        for (String word : line.split(" ")) {
          if (word.startsWith("X")) {
            at[0] = Double.parseDouble(word.substring(1));
          } else if (word.startsWith("Y")) {
            at[1] = Double.parseDouble(word.substring(1));
          }
        }
      }
    }
    return at;
  }

  @Test
  void plungeFasterThanTheFeed_isNoFault() throws Exception {
    Path out = folder.resolve("plunge");
    Run run =
        Run.of(
            "plan",
            folder.resolve("job.yaml"),
            "-o",
            out,
            "-q",
            "--set",
            "tools.1.feed=200",
            "--set",
            "tools.1.plunge=300");
    assertEquals(0, run.code(), run.err());
    Run verified = Run.of("verify", out);
    assertEquals(0, verified.code(), verified.out() + verified.err());
  }

  @Test
  void ownPlan_passesAndSaysTheSameAsPlanJson() throws Exception {
    JsonNode found = verify(0, plan);
    JsonNode written =
        new ObjectMapper().readTree(plan.resolve("plan.json").toFile()).get("verification");
    for (String key :
        List.of(
            "cell_mm",
            "matched_share",
            "gouged_mm2",
            "uncut_mm2",
            "unreachable_mm2",
            "bite_max_mm",
            "bite_max_share")) {
      assertEquals(written.get(key).asDouble(), found.get(key).asDouble(), 1e-9, key);
    }
    double time = 0;
    for (JsonNode p : found.get("programs")) {
      time += p.get("time_s").asDouble();
    }
    JsonNode planned = new ObjectMapper().readTree(plan.resolve("plan.json").toFile()).get("time");
    assertEquals(planned.get("total_s").asDouble(), time, 1e-6);
    for (JsonNode ply : found.get("plies")) {
      assertEquals(
          ply.get("planned_mm2").asDouble(), ply.get("shown_mm2").asDouble(), 6, ply.toString());
    }
    assertEquals(0, found.get("glue_line_mm2").asDouble());
  }

  @Test
  void text_namesProgramsPliesAndShare() {
    Run run = Run.of("verify", plan, "--cell", "0.2");
    assertEquals(0, run.code(), run.err());
    assertTrue(run.out().contains(program.getFileName().toString()), run.out());
    assertTrue(run.out().contains("% of the carved area matches, 0.00 mm2 gouged"), run.out());
  }

  @Test
  void depthWrongByATenth_isFoundAtItsPlace() throws Exception {
    List<String> text = new ArrayList<>(lines);
    int at = cuttingLine();
    double[] place = position(at);
    text.add(at + 1, "G91 G1 Z-0.1 F100");
    text.add(at + 2, "Z0.1");
    text.add(at + 3, "G90");
    JsonNode found = verify(3, plan.resolve("plan.json"), spoiled(text));
    JsonNode worst = found.get("differences").get(0);
    assertEquals("gouged", worst.get("kind").asText());
    assertEquals(place[0], worst.get("x").asDouble(), 1);
    assertEquals(place[1], worst.get("y").asDouble(), 1);
    assertEquals(0.1, worst.get("depth_mm").asDouble() - worst.get("target_mm").asDouble(), 0.01);
  }

  @Test
  void rapidAtDepth_isFoundAtItsLineAndPlace() throws Exception {
    List<String> text = new ArrayList<>(lines);
    int at = cuttingLine();
    double[] place = position(at);
    text.add(at + 1, "G0 X1 Y1");
    text.add(at + 2, "X" + place[0] + " Y" + place[1]);
    if (!text.get(at + 3).startsWith("G")) {
      text.set(at + 3, "G1 " + text.get(at + 3));
    }
    JsonNode first = verify(3, plan.resolve("plan.json"), spoiled(text)).get("collisions").get(0);
    assertEquals(at + 2, first.get("line").asInt());
    assertTrue(first.get("what").asText().startsWith("rapid through stock"), first.toString());
  }

  @Test
  void droppedLines_areFound() throws Exception {
    List<String> text = new ArrayList<>(lines);
    text.subList(text.size() / 3, text.size() - 3).clear(); // the rest is lift, M5 and M30
    assertEquals("G0 Z4.000", text.get(text.size() - 3));
    Run run = Run.of("verify", plan.resolve("plan.json"), spoiled(text));
    assertEquals(3, run.code(), run.out());
  }

  @Test
  void biteOverTheStepdown_isNamedWithLineAndPlace() throws Exception {
    List<String> text = new ArrayList<>(lines);
    text.replaceAll(line -> line.replaceFirst("stepdown [0-9.]+ mm", "stepdown 0.2 mm"));
    Run run = Run.of("verify", plan.resolve("plan.json"), spoiled(text));
    assertEquals(3, run.code(), run.out());
    assertTrue(run.err().contains("the stepdown is 0.2"), run.err());
    String place = " line [0-9]+, X[0-9.]+ Y[0-9.]+, [0-9.]+ mm deep: bites [0-9.]+ mm at once";
    assertTrue(
        run.out().lines().anyMatch(line -> line.matches("\\S+\\.nc" + place + ".*")), run.out());
  }

  /** Spoiled texts that would cut the same panel. */
  @Test
  void textThatIsNotThePlans_isNamedWithItsLine() throws Exception {
    int at = cuttingLine();
    textFault(at, "M4 S16000", "M4: turns the spindle backwards");
    textFault(at, "G4 P1", "G4: a dwell");
    textFault(at, "G64", "G64: not a word of this dialect");
    textFault(at, "N10", "N: not a word of this dialect");
    textFault(at, "M0", "M0: stops the program");
    textFault(at, "S99", "S99, the cutter's speed is 16000");
    textFault(at, "F99999", "F99999, the cutter's greatest feed is");
    for (String figure : List.of("diameter", "feed", "plunge", "stepdown")) {
      List<String> text = new ArrayList<>(lines);
      text.replaceAll(
          line -> line.startsWith("(") ? line.replaceFirst(figure + " \\d", figure + " 9") : line);
      Run run = Run.of("verify", plan.resolve("plan.json"), spoiled(text));
      assertEquals(3, run.code(), figure + run.out());
      assertTrue(run.out().contains(":1: the head says " + figure + " 9"), run.out());
    }
  }

  private static void textFault(int at, String line, String message) throws Exception {
    List<String> text = new ArrayList<>(lines);
    text.add(at, line);
    JsonNode found = verify(3, plan.resolve("plan.json"), spoiled(text)).get("text_faults").get(0);
    assertTrue(found.get("message").asText().startsWith(message), found + " " + line);
    assertTrue(Math.abs(found.get("line").asInt() - at - 1) <= 1, found + " " + at);
  }

  @Test
  void wrongCutter_isFound() throws Exception {
    JsonNode found = verify(3, plan.resolve("plan.json"), program, "--tool", "flat:4");
    assertEquals(0.5, found.get("gouge_max_mm").asDouble(), 0.12);
  }

  @Test
  void notUnderstood_isInputFaultWithPlace() throws Exception {
    List<String> text = new ArrayList<>(lines);
    text.set(20, "G1 X10 Y10 E5");
    Run run = Run.of("verify", plan.resolve("plan.json"), spoiled(text));
    assertEquals(2, run.code());
    assertTrue(run.err().contains(program.getFileName() + ":21:12: letter E"), run.err());
  }

  @Test
  void through_andPicture() throws Exception {
    Path picture = folder.resolve("difference.png");
    JsonNode half =
        verify(
            0,
            plan,
            "--through",
            program.getFileName() + ":" + lines.size() / 2,
            "--picture",
            picture);
    assertTrue(half.get("matched_share").asDouble() < 0.95, half.toString());
    assertEquals((byte) 'P', Files.readAllBytes(picture)[1]);
    JsonNode first = verify(0, plan, "--through-pass", "1");
    assertTrue(first.get("matched_share").asDouble() < 1);
    assertEquals(1, Run.of("verify", plan, "--picture", picture).code()); // is there already
    assertEquals(
        2, Run.of("verify", plan, "--through", program.getFileName() + ":99999999").code());
    assertEquals(2, Run.of("verify", plan, "--through-pass", "999").code());
    assertEquals(2, Run.of("verify", plan, "--tool", "round:3").code());
    assertEquals(2, Run.of("verify", folder.resolve("nothing")).code());
  }

  @Test
  void resume_fromAnywhere_makesTheSamePanel() throws Exception {
    Random random = new Random(11);
    Path out = folder.resolve("rest.nc");
    int first = 0;
    while (!lines.get(first).startsWith("(ply")) {
      first++;
    }
    for (int k = 0; k < 12; k++) {
      int line = first + 2 + random.nextInt(lines.size() - first - 6);
      Run run =
          Run.of(
              "resume", plan, "--from", program.getFileName() + ":" + line, "-o", out, "--force");
      assertEquals(0, run.code(), "line " + line + ": " + run.err());
      String text = Files.readString(out);
      assertTrue(text.contains("(down again over what is cut)\n"), text.substring(0, 1500));
    }
    assertEquals(
        1,
        Run.of(
                "resume",
                plan,
                "--from",
                program.getFileName() + ":" + line("M30"),
                "-o",
                out,
                "--force")
            .code());
  }

  private static int line(String text) {
    return lines.indexOf(text) + 1;
  }

  /** One line in a hundred changed at random, 500 times: whatever changes the panel is reported. */
  @Test
  void mutations_whateverChangesThePanelIsReported() {
    WrittenPlan input =
        WrittenPlanReader.read(plan, List.of(), new KnownTools(null, List.of(), List.of()));
    CutResult good = Simulator.run(input.setup(0.2), input.cuts(), input.targets(), input.tools());
    int faults = 0;
    int harmless = 0;
    int reported = 0;
    for (int seed = 1; seed <= 500; seed++) {
      List<String> text = mutated(new Random(seed));
      List<Cut> cuts = new ArrayList<>(input.cuts());
      try {
        cuts.set(
            0,
            new Cut(
                GcodeParser.parse(
                    program.getFileName().toString(),
                    String.join("\n", text) + "\n",
                    input.machine(),
                    input.plan().widthMm(),
                    input.plan().heightMm(),
                    input.plan().thicknessMm()),
                input.programs().get(0).tool()));
      } catch (InputFault e) {
        assertTrue(e.place().line() > 0, "seed " + seed + ": " + e.getMessage());
        faults++;
        continue;
      }
      CutResult result = Simulator.run(input.setup(0.2), cuts, input.targets(), input.tools());
      int changed = 0;
      for (int i = 0; i < good.field().depth().length; i++) {
        changed += Math.abs(good.field().depth()[i] - result.field().depth()[i]) > 0.05 ? 1 : 0;
      }
      boolean said = !new Outcome(input, cuts, result, false).faults().isEmpty();
      if (changed * good.field().cellAreaMm2() > 1) {
        assertTrue(
            said, "seed " + seed + " changes " + changed + " cells and " + result.verification());
        reported++;
      } else {
        harmless++;
      }
    }
    assertTrue(
        faults > 50 && harmless > 20 && reported > 30, faults + " " + harmless + " " + reported);
  }

  private static List<String> mutated(Random random) {
    List<String> text = new ArrayList<>(lines);
    int count = Math.max(1, text.size() / 100);
    for (int k = 0;
        k < (random.nextInt(3) == 0 ? count : 1);
        k++) { // one alone, or the full hundredth
      int i = random.nextInt(text.size() - 1);
      String line = text.get(i);
      int at = line.isEmpty() ? 0 : random.nextInt(line.length());
      switch (random.nextInt(7)) {
        case 0 -> text.remove(i);
        case 1 -> text.add(i, line);
        case 2 -> Collections.swap(text, i, i + 1);
        case 3 ->
            text.set(
                i,
                line.substring(0, at)
                    + (char) ('0' + random.nextInt(10))
                    + line.substring(Math.min(line.length(), at + 1)));
        case 4 ->
            text.set(i, line.substring(0, at) + line.substring(Math.min(line.length(), at + 1)));
        case 5 ->
            text.set(
                i,
                line.contains("-")
                    ? line.replaceFirst("-", "")
                    : line.replaceFirst("([XYZIJ])", "$1-"));
        default ->
            text.set(
                i, line.substring(0, at) + (char) (32 + random.nextInt(95)) + line.substring(at));
      }
    }
    return text;
  }
}
