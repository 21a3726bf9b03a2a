package plyscape.cli.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import plyscape.cli.Main;
import plyscape.cli.talk.Console;
import plyscape.output.OutputDirectory;
import plyscape.output.OutputKind;
import plyscape.plan.Plan;
import plyscape.render.HandPlan;

@Timeout(60)
class PreviewInTerminalTest {

  private static final Path EILDON = Path.of("samples", "eildon");

  @TempDir Path directory;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int run(String... args) {
    Console console =
        new Console(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            false,
            false,
            false);
    return Main.run(console, args);
  }

  @Test
  void letters_onRequest_tableAloneOtherwise() {
    assertEquals(
        0,
        run(
            "preview",
            EILDON.resolve("job.yaml").toString(),
            "--picture",
            "letters",
            "--columns",
            "30"));
    String text = out.toString(StandardCharsets.UTF_8);
    // 150 x 180 mm in 30 columns of 5 mm and 18 rows of 10 mm.
    String[] lines = text.split("\n");
    for (int row = 0; row < 18; row++) {
      assertTrue(lines[row].matches("[.A-E]{30}"), lines[row]);
    }
    assertEquals("", lines[18]);
    assertTrue(text.contains(" A  1 birch, uncut, "), text);
    assertTrue(text.contains("ply  name"), text);
    out.reset();
    assertEquals(0, run("preview", EILDON.resolve("job.yaml").toString()));
    assertTrue(
        out.toString(StandardCharsets.UTF_8).startsWith("ply  name"),
        "no picture when it isn't a terminal");
    assertEquals(2, run("preview", EILDON.resolve("job.yaml").toString(), "--columns", "3"));
    assertEquals(2, run("preview", EILDON.resolve("job.yaml").toString(), "--picture", "oil"));
  }

  @Test
  void watch_drawsAgainAfterAChange_andToldFaultsDontEndIt() throws Exception {
    for (String name : new String[] {"job.yaml", "layup.yaml", "eildon_utm30_60m.tif"}) {
      Files.copy(EILDON.resolve(name), directory.resolve(name));
    }
    Path layup = directory.resolve("layup.yaml");
    String good = Files.readString(layup);
    Thread watcher =
        new Thread(() -> run("preview", directory.resolve("job.yaml").toString(), "--watch"));
    watcher.start();
    await("bark", 1);
    Files.writeString(layup, good.replace("bark", "alder"));
    await("alder", 1);
    Files.writeString(layup, good.replace("bark", "bark, bark: 2"));
    awaitError("plyscape: ");
    Files.writeString(layup, good.replace("bark", "yew tree"));
    await("yew tree", 1);
    watcher.interrupt();
    watcher.join(20_000);
    assertFalse(watcher.isAlive());
  }

  private void await(String text, int times) throws InterruptedException {
    while (out.toString(StandardCharsets.UTF_8).split(text, -1).length <= times) {
      Thread.sleep(20);
    }
  }

  private void awaitError(String text) throws InterruptedException {
    while (!err.toString(StandardCharsets.UTF_8).contains(text)) {
      Thread.sleep(20);
    }
  }

  @Test
  void extras_areWrittenBesideTheUsualFiles() throws Exception {
    Plan plan = HandPlan.make();
    Set<String> usual = files(plan, "usual", EnumSet.noneOf(ExtraFile.class));
    Set<String> all = files(plan, "all", EnumSet.allOf(ExtraFile.class));
    assertTrue(all.containsAll(usual));
    all.removeAll(usual);
    assertEquals(
        "[block.png, layers/01-meadow.dxf, layers/01-meadow.geojson, layers/02-barley.dxf,"
            + " layers/02-barley.geojson, layers/03-brick.dxf, layers/03-brick.geojson,"
            + " layers/04-deep-blue.dxf, layers/04-deep-blue.geojson, risk.png, sheet.svg]",
        all.toString());
  }

  @Test
  void watch_replacesAnEarlierPreview_atTheFirstDrawingToo() throws Exception {
    for (String name : new String[] {"job.yaml", "layup.yaml", "eildon_utm30_60m.tif"}) {
      Files.copy(EILDON.resolve(name), directory.resolve(name));
    }
    Path out = directory.resolve("watched");
    assertEquals(0, run("preview", directory.resolve("job.yaml").toString(), "-o", out.toString()));
    Thread watcher =
        new Thread(
            () ->
                run(
                    "preview",
                    directory.resolve("job.yaml").toString(),
                    "-o",
                    out.toString(),
                    "--watch"));
    watcher.start();
    for (int i = 0; i < 200 && !err.toString(StandardCharsets.UTF_8).contains("watching"); i++) {
      Thread.sleep(50);
    }
    watcher.interrupt();
    watcher.join(20_000);
    assertFalse(err.toString(StandardCharsets.UTF_8).contains("--force"), err.toString());
  }

  private Set<String> files(Plan plan, String name, Set<ExtraFile> extras) {
    try (OutputDirectory target =
        OutputDirectory.open(directory.resolve(name), OutputKind.PLAN, false)) {
      new ExtraStages(new PlanStages(), extras).write(plan, target);
      target.publish();
      return new TreeSet<>(target.written().keySet());
    }
  }
}
