package plyscape.cli.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.cli.Main;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.job.Job;
import plyscape.job.JobReader;
import plyscape.job.yaml.Setting;

class SecondCompilerTest {

  private static final Path SAMPLES = Path.of("samples", "tarn-hollow");

  /** A job of the samples, or one that can't be read. */
  private record Source(String name) implements JobInputs.Source {
    @Override
    public JobInputs.Source with(String other, List<Setting> more) {
      return new Source(other);
    }

    @Override
    public Job read(Warnings warnings) {
      if (name.isEmpty()) {
        throw new InputFault(Place.option("--set"), "found nothing", "wanted a job");
      }
      return JobReader.read(SAMPLES.resolve(name), List.of(), warnings);
    }

    @Override
    public Place place(String key) {
      return Place.option(key);
    }
  }

  private static boolean pays(String name, int jobs) {
    return SecondCompiler.pays(Collections.nCopies(jobs, new Source(name)));
  }

  @Test
  void pays_sculptedOrMoreThanThreeJobs() {
    assertFalse(pays("job.yaml", 1));
    assertFalse(pays("job.yaml", 3));
    assertTrue(pays("job.yaml", 4));
    assertTrue(pays("sculpted.yaml", 1));
  }

  @Test
  void pays_moreThanThreePanels(@TempDir Path folder) throws IOException {
    assertFalse(SecondCompiler.pays(List.of(wall(folder, "[3, 1]"))));
    assertTrue(SecondCompiler.pays(List.of(wall(folder, "[2, 2]"))));
  }

  private static JobInputs.Source wall(Path folder, String tiles) throws IOException {
    Path samples = SAMPLES.toAbsolutePath();
    Path job =
        Files.writeString(
            folder.resolve("wall.yaml"),
            """
            layup: %s
            terrain: {file: %s, plies: [limestone, heather, meadow, barley]}
            panel: {width: 100, height: 100, border: 3, tiles: %s}
            """
                .formatted(samples.resolve("layup.yaml"), samples.resolve("terrain.tif"), tiles));
    return new JobInputs.FileSource("wall", job, List.of());
  }

  @Test
  void pays_jobThatCantBeRead_isLeftToTheRunToComplainOf() {
    assertFalse(pays("", 1));
  }

  @Test
  void missing_withoutTheLauncher_isNot() {
    assertFalse(SecondCompiler.missing(List.of(new Source("sculpted.yaml"))));
  }

  @Test
  void main_isTheProgramsEntry() {
    assertEquals(Main.class.getName(), SecondCompiler.MAIN);
  }

  @Test
  void command_packedJar_keepsOtherOptionsAndTheManifest() {
    List<String> command =
        SecondCompiler.command(
            Path.of("java"),
            List.of(
                "-XX:TieredStopAtLevel=1",
                "-XX:Tier3BackEdgeThreshold=4000",
                "-Dplyscape.compiler=first",
                "-Xmx8g"),
            "lib/plyscape.jar",
            List.of("plan", "a job.yaml"));
    assertEquals(
        List.of(
            "java",
            "-Xmx8g",
            "-XX:InlineSmallCode=1000",
            "-XX:MaxInlineLevel=9",
            "-XX:FreqInlineSize=200",
            "-XX:TypeProfileLevel=0",
            "-jar",
            "lib/plyscape.jar",
            "plan",
            "a job.yaml"),
        command);
  }
}
