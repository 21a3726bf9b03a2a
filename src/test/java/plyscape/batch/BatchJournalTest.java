package plyscape.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.JobFault;

class BatchJournalTest {

  private static final List<String> JOBS = List.of("a", "b", "c");

  @TempDir Path folder;

  @Test
  void whatHasEnded_standsThereAtOnce_andWhatIsToCome_asItWentBefore() {
    try (BatchJournal first = open(Share.ALL)) {
      first.took(result("a", 0, 5), false);
      first.took(result("b", 1, 7), false);
    }
    try (BatchJournal second = open(Share.ALL)) {
      assertEquals("[a before, b before]", state().toString());
      assertEquals(5, second.took(result("a", 0, 0.01), true).seconds());
      assertEquals(0, second.took(result("b", 0, 0.02), true).seconds()); // nobody knows
      second.took(result("c", 0, 3), false);
    }
    assertEquals("[a, b, c]", state().toString());
    assertEquals("[batch.json]", names());
  }

  @Test
  void secondsAreKnown_whateverTheSharesWereThen() {
    try (BatchJournal whole = open(Share.ALL)) {
      whole.took(result("b", 0, 7), false);
    }
    try (BatchJournal share = open(new Share(2, 3))) {
      assertEquals(7, share.took(result("b", 0, 0.01), true).seconds());
    }
  }

  @Test
  void oneRunAtATime_writesAFile_butOtherSharesDo() {
    try (BatchJournal one = open(new Share(1, 2));
        BatchJournal two = open(new Share(2, 2))) {
      JobFault fault = assertThrows(JobFault.class, () -> open(new Share(1, 2)));
      assertTrue(fault.getMessage().startsWith("another run is planning this series into "));
      one.took(result("a", 0, 1), false);
      two.took(result("b", 0, 1), false);
    }
    open(new Share(1, 2)).close();
  }

  @Test
  void whereNothingCanBeWritten_nothingBegins() throws IOException {
    Path file = Files.writeString(folder.resolve("file"), "");
    assertThrows(JobFault.class, () -> BatchJournal.open(file, Share.ALL, JOBS));
    assertThrows(JobFault.class, () -> BatchJournal.open(file.resolve("x"), Share.ALL, JOBS));
    Files.writeString(folder.resolve("batch.json"), "{}");
    assertThrows(JobFault.class, () -> open(Share.ALL));
    assertFalse(Files.exists(folder.resolve(".batch.json.lock")));
  }

  @Test
  void aFileThatCantBeWritten_endsNoJob_butTheRunFails() throws IOException {
    BatchJournal journal = open(Share.ALL);
    Path part = Files.createDirectory(folder.resolve(".batch.json.part")); // in the file's way
    journal.took(result("a", 0, 5), false);
    assertThrows(JobFault.class, journal::close);
    Files.delete(part);
    open(Share.ALL).close();
  }

  private BatchJournal open(Share share) {
    return BatchJournal.open(folder, share, JOBS);
  }

  private static JobResult result(String job, int exit, double seconds) {
    return new JobResult(job, exit, exit == 0 ? "" : "why", seconds, 0, new TreeMap<>());
  }

  private List<String> state() {
    return BatchFile.read(folder.resolve("batch.json")).results().stream()
        .map(one -> one.job() + (one.earlier() ? " before" : ""))
        .toList();
  }

  private String names() {
    try (var files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList().toString();
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }
}
