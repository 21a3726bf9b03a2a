package plyscape.output;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import plyscape.files.BrokenSwap;

/**
 * The hidden names beside a target, and what killed runs left under them.
 *
 * <p>A run for {@code out} works under {@code .out.plyscape-KEY.part}, sets an old output aside as
 * {@code .old}, and holds a lock on {@code .lock} all the while. The system drops the lock however
 * the run ends, so whatever can be locked is left over: a {@code .part} is deleted, unless there
 * are folders in it that the next run may go on from; an {@code .old} is put back when the target
 * isn't there (the run was killed between its two renames), else deleted.
 */
final class Leftovers {

  /**
   * Keys of this process's own runs: closing a second channel on a file drops the locks on it, so
   * never open those.
   */
  private static final Set<Path> OURS = Collections.newSetFromMap(new ConcurrentHashMap<>());

  private Leftovers() {}

  /** The hidden name for a target: {@code ending} is {@code part}, {@code old} or {@code lock}. */
  static Path name(Path target, String key, String ending) {
    return target.resolveSibling(prefix(target) + key + "." + ending);
  }

  static void claim(Path lock) {
    OURS.add(lock);
  }

  static void release(Path lock) {
    OURS.remove(lock);
  }

  private static String prefix(Path target) {
    return BrokenSwap.prefix(target.getFileName().toString());
  }

  /**
   * Clears up after killed runs for the target. What can't be cleared stays for the next run.
   *
   * @param kept names of folders for whose sake an unfinished output stays; null for none
   */
  static void clear(Path target, Pattern kept) throws IOException {
    for (String key : keys(target)) {
      locked(target, key, () -> settle(target, key, kept));
    }
  }

  /** Takes the folders of that name over from stopped runs, and clears up after these. */
  static void take(Path target, Pattern names, Path into) throws IOException {
    for (String key : keys(target)) {
      locked(
          target,
          key,
          () -> {
            WholeFolders.move(name(target, key, "part"), into, names);
            settle(target, key, null);
          });
    }
  }

  private static Set<String> keys(Path target) throws IOException {
    Set<String> keys = new TreeSet<>();
    String prefix = prefix(target);
    try (DirectoryStream<Path> files =
        Files.newDirectoryStream(
            target.toAbsolutePath().getParent(), file -> named(file, prefix))) {
      for (Path file : files) {
        String name = file.getFileName().toString();
        keys.add(name.substring(prefix.length(), name.lastIndexOf('.')));
      }
    }
    return keys;
  }

  private static boolean named(Path file, String prefix) {
    String name = file.getFileName().toString();
    return name.startsWith(prefix)
        && name.substring(prefix.length()).matches("[0-9a-z-]+\\.(part|old|lock)");
  }

  /** What is done about a run that has ended. */
  private interface Step {
    void run() throws IOException;
  }

  /** Does something under a run's lock, unless that run is still going. */
  private static void locked(Path target, String key, Step step) throws IOException {
    Path lock = name(target, key, "lock");
    if (OURS.contains(lock)) {
      return;
    }
    try (FileChannel channel =
            FileChannel.open(lock, StandardOpenOption.WRITE, StandardOpenOption.CREATE);
        FileLock held = tried(channel)) {
      if (held == null) {
        return;
      }
      step.run();
      Files.deleteIfExists(lock);
    } catch (OverlappingFileLockException e) {
      return; // another thread's, just begun
    }
  }

  /** Null where another run holds it; where there are no locks, nobody knows whether one does. */
  private static FileLock tried(FileChannel channel) {
    try {
      return channel.tryLock();
    } catch (IOException e) {
      return null;
    }
  }

  /**
   * Puts an old output back if its place is empty, and deletes the rest of one run's hidden
   * directories.
   *
   * @param kept names of folders for whose sake an unfinished output stays; null for none
   */
  static void settle(Path target, String key, Pattern kept) throws IOException {
    Path old = name(target, key, "old");
    if (Files.isDirectory(old) && Files.notExists(target)) {
      Files.move(old, target);
    }
    Path part = name(target, key, "part");
    if (WholeFolders.in(part, kept).isEmpty()) {
      delete(part);
    } else {
      WholeFolders.alone(part, kept);
    }
    delete(old);
  }

  /** Deletes a directory with all that is in it; links in it are removed, not followed. */
  static void delete(Path directory) throws IOException {
    if (Files.notExists(directory, java.nio.file.LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
    List<Path> paths = new ArrayList<>();
    try (Stream<Path> walk = Files.walk(directory)) {
      walk.forEach(paths::add);
    }
    Collections.reverse(paths);
    for (Path path : paths) {
      Files.deleteIfExists(path);
    }
  }
}
