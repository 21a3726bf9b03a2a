package plyscape.cli.job;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(30)
class FileWatchTest {

  @TempDir Path directory;

  @Test
  void changedFile_isNoticed_andAMissingOneThatAppears() throws Exception {
    Path there = Files.writeString(directory.resolve("a.yaml"), "one");
    Path missing = directory.resolve("b.yaml");
    FileWatch watch = new FileWatch(List.of(there, missing), 10);
    assertTrue(returnsAfter(watch, () -> Files.writeString(there, "longer")));
    assertTrue(returnsAfter(watch, () -> Files.writeString(missing, "new")));
    assertTrue(returnsAfter(watch, () -> Files.delete(there)));
  }

  @Test
  void nothingChanged_waitsOn() throws Exception {
    Path there = Files.writeString(directory.resolve("a.yaml"), "one");
    FileWatch watch = new FileWatch(List.of(there), 10);
    CountDownLatch back = start(watch);
    Files.writeString(directory.resolve("other.yaml"), "not watched");
    assertFalse(back.await(200, TimeUnit.MILLISECONDS));
    Files.writeString(there, "longer");
    assertTrue(back.await(20, TimeUnit.SECONDS));
  }

  private interface Change {
    void make() throws Exception;
  }

  private static boolean returnsAfter(FileWatch watch, Change change) throws Exception {
    CountDownLatch back = start(watch);
    change.make();
    return back.await(20, TimeUnit.SECONDS);
  }

  private static CountDownLatch start(FileWatch watch) {
    CountDownLatch back = new CountDownLatch(1);
    Thread thread =
        new Thread(
            () -> {
              try {
                watch.await();
                back.countDown();
              } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
              }
            });
    thread.setDaemon(true);
    thread.start();
    return back;
  }
}
