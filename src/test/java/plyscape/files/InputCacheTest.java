package plyscape.files;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.LongSupplier;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Contents of files that several jobs read. */
class InputCacheTest {

  /** Ten seconds on, so that files just written count as old. */
  private static final LongSupplier LATER = () -> System.currentTimeMillis() + 10_000;

  @TempDir Path folder;
  private final AtomicInteger reads = new AtomicInteger();
  private Path file;

  @BeforeEach
  void makeFile() throws IOException {
    file = Files.writeString(folder.resolve("a"), "first");
  }

  private String text(Path of, long size) {
    FileDigest.of(of, "as a job takes it first");
    return InputCache.of(List.of(of)).get("text", () -> read(of), text -> size);
  }

  private String text(Path of) {
    return text(of, 1);
  }

  private String read(Path of) {
    reads.incrementAndGet();
    try {
      return Files.readString(of);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void aFileThatStands_isReadOnce_withinTheScopeAlone() {
    try (InputCache.Scope scope = InputCache.open(100, LATER)) {
      assertEquals("first", text(file));
      assertEquals("first", text(file));
      assertEquals(1, reads.get());
    }
    assertEquals("first", text(file));
    assertEquals("first", text(file));
    assertEquals(3, reads.get());
  }

  @Test
  void aChangeOfTheSameSize_withItsTimePutBack_isSeen() throws IOException {
    try (InputCache.Scope scope = InputCache.open(100, LATER)) {
      text(file);
      String before = FileDigest.of(file, "").sha256();
      FileTime time = Files.getLastModifiedTime(file);
      Files.writeString(file, "other");
      Files.setLastModifiedTime(file, time);
      assertNotEquals(before, FileDigest.of(file, "").sha256());
      assertEquals("other", text(file));
    }
  }

  @Test
  void aFileChangedAMomentAgo_isNotBelieved() throws IOException {
    try (InputCache.Scope scope = InputCache.open(100)) {
      text(file);
      text(file);
      assertEquals(2, reads.get());
    }
  }

  @Test
  void whatIsReadWhileTheFileChanges_isNotKept() throws IOException {
    try (InputCache.Scope scope = InputCache.open(100, LATER)) {
      FileDigest.of(file, "");
      String torn =
          InputCache.of(List.of(file))
              .get(
                  "text",
                  () -> {
                    String text = read(file);
                    write("after");
                    return text;
                  },
                  text -> 1);
      assertEquals("first", torn);
      assertEquals("after", text(file));
    }
  }

  private void write(String text) {
    try {
      Files.writeString(file, text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void theLeastRecentlyUsedGoes_andWhatIsTooLargeIsNotKept() throws IOException {
    Path second = Files.writeString(folder.resolve("b"), "second");
    Path third = Files.writeString(folder.resolve("c"), "third");
    try (InputCache.Scope scope = InputCache.open(100, LATER)) {
      text(file, 40);
      text(second, 40);
      text(file, 40);
      text(third, 40); // second goes
      assertEquals(3, reads.get());
      text(file, 40);
      text(third, 40);
      assertEquals(3, reads.get());
      text(second, 40);
      assertEquals(4, reads.get());
      Path huge = Files.writeString(folder.resolve("d"), "huge");
      text(huge, 101);
      text(huge, 101);
      assertEquals(6, reads.get());
      InputCache.clear();
      text(second, 40);
      assertEquals(7, reads.get());
    }
  }

  @Test
  void oneReads_whileOthersWait() throws Exception {
    ExecutorService threads = Executors.newFixedThreadPool(8);
    try (InputCache.Scope scope = InputCache.open(100, LATER)) {
      FileDigest.of(file, "");
      List<Future<String>> texts = new ArrayList<>();
      for (int i = 0; i < 64; i++) {
        texts.add(threads.submit(() -> text(file)));
      }
      for (Future<String> text : texts) {
        assertEquals("first", text.get());
      }
      assertEquals(1, reads.get());
    } finally {
      threads.shutdown();
    }
  }

  @Test
  void aFault_isEveryReadersOwn() {
    try (InputCache.Scope scope = InputCache.open(100, LATER)) {
      FileDigest.of(file, "");
      for (int i = 0; i < 2; i++) {
        assertThrows(
            IllegalStateException.class,
            () ->
                InputCache.of(List.of(file))
                    .get(
                        "text",
                        () -> {
                          throw new IllegalStateException();
                        },
                        text -> 1));
      }
      assertEquals("first", text(file));
    }
  }
}
