package plyscape.cli.job;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Collection;
import java.util.Map;
import java.util.TreeMap;

/**
 * Tells when files change, appear or go, by looking at their times and sizes every so often: works
 * on every file system, network ones too, where the system's own notices don't.
 */
final class FileWatch {

  private final long pauseMs;
  private Map<Path, String> seen;

  /** Watches files from now on. */
  FileWatch(Collection<Path> files, long pauseMs) {
    this.pauseMs = pauseMs;
    seen = look(files);
  }

  /**
   * Waits until one of the files differs from when it was last looked at, and stays the same for
   * one pause (editors write in steps).
   *
   * @throws InterruptedException if the thread is asked to stop
   */
  void await() throws InterruptedException {
    Map<Path, String> before = seen;
    Map<Path, String> now = before;
    boolean changed = false;
    while (!changed || !now.equals(before)) {
      before = now;
      Thread.sleep(pauseMs);
      now = look(seen.keySet());
      changed |= !now.equals(seen);
    }
    seen = now;
  }

  private static Map<Path, String> look(Collection<Path> files) {
    Map<Path, String> out = new TreeMap<>();
    for (Path file : files) {
      try {
        BasicFileAttributes a = Files.readAttributes(file, BasicFileAttributes.class);
        out.put(file, a.lastModifiedTime().toMillis() + " " + a.size());
      } catch (IOException e) {
        out.put(file, "missing");
      }
    }
    return out;
  }
}
