package plyscape.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.JobFault;

class OutputDirectoryTest {

  private static final String PLAN = "{\"schema\": \"plyscape-plan-1\"}\n";

  @TempDir Path folder;

  private static void fill(OutputDirectory out, String plan) {
    out.write("plan.json", plan);
    out.write("layers/01-oak.svg", "<svg/>");
  }

  private void make(Path target, boolean force, String plan) {
    try (OutputDirectory out = OutputDirectory.open(target, OutputKind.PLAN, force)) {
      fill(out, plan);
      out.publish();
    }
  }

  /** All names under the folder, hidden ones too. */
  private List<String> names() throws IOException {
    try (Stream<Path> walk = Files.walk(folder)) {
      return walk.filter(Files::isRegularFile)
          .map(p -> folder.relativize(p).toString())
          .sorted()
          .toList();
    }
  }

  @Test
  void published_isWholeAndNothingElseIsThere() throws IOException {
    make(folder.resolve("a/b/out"), false, PLAN);
    assertEquals(List.of("a/b/out/layers/01-oak.svg", "a/b/out/plan.json"), names());
  }

  @Test
  void nothingUnderTheAskedName_untilPublished() throws IOException {
    Path target = folder.resolve("out");
    try (OutputDirectory out = OutputDirectory.open(target, OutputKind.PLAN, false)) {
      fill(out, PLAN);
      assertFalse(Files.exists(target));
      assertEquals(6L, out.written().get("layers/01-oak.svg"));
    }
    assertEquals(List.of(), names());
  }

  @Test
  void closedUnpublished_takesMadeParentsAway() throws IOException {
    Files.createDirectory(folder.resolve("a"));
    OutputDirectory.open(folder.resolve("a/b/c/out"), OutputKind.PLAN, false).close();
    assertTrue(Files.exists(folder.resolve("a")));
    assertFalse(Files.exists(folder.resolve("a/b")));
  }

  @Test
  void emptyDirectory_isFilled() throws IOException {
    Path target = Files.createDirectory(folder.resolve("out"));
    make(target, false, PLAN);
    assertEquals(List.of("out/layers/01-oak.svg", "out/plan.json"), names());
  }

  @Test
  void earlierOutput_isReplacedOnlyByForce() throws IOException {
    Path target = folder.resolve("out");
    make(target, false, PLAN);
    JobFault fault = assertThrows(JobFault.class, () -> make(target, false, PLAN + " "));
    assertTrue(
        fault.getMessage().endsWith("choose another directory, or replace it with --force"),
        fault.getMessage());
    assertEquals(PLAN, Files.readString(target.resolve("plan.json")));
    make(target, true, PLAN + " ");
    assertEquals(PLAN + " ", Files.readString(target.resolve("plan.json")));
    assertEquals(List.of("out/layers/01-oak.svg", "out/plan.json"), names());
  }

  @Test
  void failureWithForce_keepsTheEarlierOutput() throws IOException {
    Path target = folder.resolve("out");
    make(target, false, PLAN);
    try (OutputDirectory out = OutputDirectory.open(target, OutputKind.PLAN, true)) {
      out.write("plan.json", "half");
    }
    assertEquals(PLAN, Files.readString(target.resolve("plan.json")));
    assertEquals(2, names().size());
  }

  @Test
  void directoryWithTheUsersFiles_isNeverReplaced() throws IOException {
    Path target = folder.resolve("out");
    make(target, false, PLAN);
    Files.writeString(target.resolve("notes.txt"), "mine");
    JobFault fault = assertThrows(JobFault.class, () -> make(target, true, PLAN));
    assertTrue(fault.getMessage().contains("\"notes.txt\""), fault.getMessage());
    Path other = Files.createDirectory(folder.resolve("other"));
    Files.writeString(other.resolve("preview.png"), "mine");
    assertThrows(JobFault.class, () -> make(other, true, PLAN));
    Files.writeString(other.resolve("plan.json"), "{\"some\": \"plan\"}");
    assertThrows(JobFault.class, () -> make(other, true, PLAN));
    assertEquals("mine", Files.readString(target.resolve("notes.txt")));
    assertEquals("mine", Files.readString(other.resolve("preview.png")));
  }

  @Test
  void fileInTheWay_isAFault() throws IOException {
    Path file = Files.writeString(folder.resolve("out"), "mine");
    assertThrows(JobFault.class, () -> make(file, true, PLAN));
    JobFault under = assertThrows(JobFault.class, () -> make(file.resolve("x"), true, PLAN));
    assertTrue(under.getMessage().contains("isn't a directory"), under.getMessage());
    assertEquals("mine", Files.readString(file));
    assertThrows(JobFault.class, () -> make(Path.of("/"), true, PLAN));
  }

  @Test
  void somethingPutThereMeanwhile_isNotLost() throws IOException {
    Path target = folder.resolve("out");
    try (OutputDirectory out = OutputDirectory.open(target, OutputKind.PLAN, false)) {
      fill(out, PLAN);
      Files.createDirectory(target);
      Files.writeString(target.resolve("notes.txt"), "mine");
      assertThrows(JobFault.class, out::publish);
    }
    assertEquals(List.of("out/notes.txt"), names());
  }

  @Test
  void linkToADirectory_staysALink() throws IOException {
    Path real = folder.resolve("real");
    make(real, false, PLAN);
    Path link = Files.createSymbolicLink(folder.resolve("link"), real);
    make(link, true, PLAN + " ");
    assertTrue(Files.isSymbolicLink(link));
    assertEquals(PLAN + " ", Files.readString(real.resolve("plan.json")));
  }

  @Test
  void linkInsideAnEarlierOutput_isNotFollowedWhenDeleting() throws IOException {
    Path target = folder.resolve("out");
    make(target, false, PLAN);
    Path mine = Files.writeString(folder.resolve("mine.svg"), "mine");
    Files.delete(target.resolve("layers/01-oak.svg"));
    Files.createSymbolicLink(target.resolve("layers/02-oak.svg"), mine);
    make(target, true, PLAN);
    assertEquals("mine", Files.readString(mine));
  }

  @Test
  void namesThatLeadOut_areRefused() {
    try (OutputDirectory out =
        OutputDirectory.open(folder.resolve("out"), OutputKind.PLAN, false)) {
      for (String name :
          List.of(
              "../plan.json",
              "/plan.json",
              "layers/../../x.svg",
              "layers/a/b.svg",
              "x",
              "a\0.svg")) {
        assertThrows(IllegalArgumentException.class, () -> out.write(name, "x"), name);
      }
    }
  }

  @Test
  void leftoversOfKilledRuns_areCleared_andAnOldOutputPutBack() throws IOException {
    Path part = Files.createDirectories(folder.resolve(".out.plyscape-zz-1.part/layers"));
    Files.writeString(part.resolve("x.svg"), "half");
    Files.createFile(folder.resolve(".out.plyscape-zz-1.lock"));
    Path old = Files.createDirectories(folder.resolve(".out.plyscape-zz-2.old"));
    Files.writeString(old.resolve("plan.json"), PLAN);
    Path other = Files.createDirectories(folder.resolve(".other.plyscape-zz-2.part"));
    JobFault fault = assertThrows(JobFault.class, () -> make(folder.resolve("out"), false, PLAN));
    assertTrue(fault.getMessage().contains("exists and isn't empty"), fault.getMessage());
    assertEquals(List.of("out/plan.json"), names());
    assertTrue(Files.exists(other));
  }

  @Test
  void dry_writesNothing_andRefusesWhatARunWouldRefuse() throws IOException {
    Path target = folder.resolve("a/out");
    try (OutputDirectory out = OutputDirectory.dry(target, OutputKind.PLAN, false)) {
      fill(out, PLAN);
      assertEquals(2, out.written().size());
      assertThrows(IllegalStateException.class, out::publish);
    }
    assertEquals(List.of(), names());
    make(target, false, PLAN);
    assertThrows(JobFault.class, () -> OutputDirectory.dry(target, OutputKind.PLAN, false));
    OutputDirectory.dry(target, OutputKind.PLAN, true).close();
  }

  @Test
  void severalAtATime_dontClearEachOther() throws IOException {
    Path target = folder.resolve("out");
    try (OutputDirectory first = OutputDirectory.open(target, OutputKind.PLAN, false);
        OutputDirectory second = OutputDirectory.open(target, OutputKind.PLAN, false)) {
      fill(first, PLAN);
      fill(second, PLAN + " ");
      second.publish();
      assertThrows(JobFault.class, first::publish);
    }
    assertEquals(PLAN + " ", Files.readString(target.resolve("plan.json")));
    assertEquals(2, names().size());
  }

  /** Replacing it would leave the shell in a folder that is no more. */
  @Test
  void theFolderThatTheProgramRunsIn_isNotReplaced() {
    for (Path here : new Path[] {Path.of("."), Path.of("..")}) {
      JobFault fault =
          assertThrows(
              JobFault.class, () -> OutputDirectory.open(here, OutputKind.PLAN, true).close());
      assertTrue(fault.getMessage().contains("the shell stands in"), fault.getMessage());
    }
  }
}
