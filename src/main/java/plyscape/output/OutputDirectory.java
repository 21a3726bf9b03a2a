package plyscape.output;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import plyscape.fault.IoReason;
import plyscape.fault.JobFault;

/**
 * A directory in the making. Files are written beside the target; {@link #publish} moves all of
 * them into place at once; closing without publishing leaves nothing. Not for use by several
 * threads, but several may be open at a time.
 */
public final class OutputDirectory implements FileSink, AutoCloseable {

  private static final AtomicLong RUNS = new AtomicLong();

  /** At something that runs beside this one may undo. */
  private static final int ATTEMPTS = 20;

  private final Path asked;
  private final Path target;
  private final OutputKind kind;
  private final boolean force;
  private final boolean dry;
  private final String key;
  private final List<Path> madeParents = new ArrayList<>();
  private final SortedMap<String, Long> written = new TreeMap<>();
  private final Thread onExit = new Thread(this::abandon, "plyscape-output");
  private FileChannel lock;
  private boolean open = true;

  /** Folders that stay when the run is stopped; null for none. */
  private Pattern kept;

  /** Whether it failed for a reason that has nothing to do with what is written. */
  private boolean full;

  private OutputDirectory(Path asked, Path target, OutputKind kind, boolean force, boolean dry) {
    this.dry = dry;
    this.asked = asked;
    this.target = target;
    this.kind = kind;
    this.force = force;
    this.kept = kind.folder();
    this.key =
        Long.toString(ProcessHandle.current().pid(), 36)
            + "-"
            + Long.toString(RUNS.incrementAndGet(), 36);
  }

  /**
   * Starts a directory.
   *
   * @param asked the directory that the user asked for; may exist if it is empty
   * @param kind what it will look like
   * @param force whether an earlier output of this kind may be replaced
   * @throws JobFault if it can't be written there, or something is there that may not be replaced
   */
  public static OutputDirectory open(Path asked, OutputKind kind, boolean force) {
    OutputDirectory out = new OutputDirectory(asked, real(asked), kind, force, false);
    try {
      out.begin();
      return out;
    } catch (IOException e) {
      out.close();
      throw new JobFault(
          "can't write to " + asked + ": " + IoReason.of(e), "choose another directory");
    } catch (RuntimeException e) {
      out.close();
      throw e;
    }
  }

  /**
   * A directory that is only thought of: nothing is written, {@link #written} tells what would be.
   *
   * @throws JobFault if something is there that may not be replaced
   */
  public static OutputDirectory dry(Path asked, OutputKind kind, boolean force) {
    OutputDirectory out = new OutputDirectory(asked, real(asked), kind, force, true);
    try {
      EarlierOutput.refuseIfTaken(asked, out.target, kind, force);
      return out;
    } catch (IOException e) {
      throw new JobFault(
          "can't write to " + asked + ": " + IoReason.of(e), "choose another directory");
    }
  }

  /** A link to a directory is followed, so that the link stays and its directory is replaced. */
  private static Path real(Path asked) {
    try {
      Path absolute = asked.toAbsolutePath().normalize();
      if (absolute.getFileName() == null) {
        throw new JobFault(
            "can't write to " + asked + ": it is the root of the file system",
            "choose another directory");
      }
      return Files.isDirectory(absolute) ? absolute.toRealPath() : absolute;
    } catch (IOException e) {
      throw new JobFault(
          "can't write to " + asked + ": " + IoReason.of(e), "choose another directory");
    }
  }

  private void begin() throws IOException {
    Runtime.getRuntime().addShutdownHook(onExit);
    for (int attempt = 1; ; attempt++) {
      makeParents(target.getParent());
      try {
        beginThere();
        return;
      } catch (NoSuchFileException e) { // a run beside this one made the folder, and took it back
        if (attempt == ATTEMPTS) {
          throw e;
        }
      }
    }
  }

  private void beginThere() throws IOException {
    Leftovers.clear(target, kept);
    EarlierOutput.refuseIfTaken(asked, target, kind, force);
    lock = OutputLock.take(aside("lock"), ATTEMPTS);
    Files.createDirectory(aside("part"));
  }

  private void makeParents(Path parent) throws IOException {
    List<Path> missing = new ArrayList<>();
    for (Path p = parent; p != null && Files.notExists(p); p = p.getParent()) {
      missing.add(p);
    }
    Collections.reverse(missing);
    for (Path p : missing) {
      try {
        Files.createDirectory(p);
        madeParents.add(p);
      } catch (java.nio.file.FileAlreadyExistsException e) {
        // Made by a run beside this one.
      }
    }
  }

  private Path aside(String ending) {
    return Leftovers.name(target, key, ending);
  }

  /**
   * Takes over the whole folders that stopped runs for this output have left, see {@link #left}; or
   * deletes them.
   */
  public void goOn(boolean take) {
    if (dry || kept == null) {
      return;
    }
    try {
      if (take) {
        Leftovers.take(target, kept, aside("part"));
      } else {
        Leftovers.clear(target, null);
      }
    } catch (IOException e) {
      throw new JobFault(
          "can't clear up beside " + asked + ": " + IoReason.of(e), "choose another directory");
    }
  }

  /** A folder that a stopped run has left whole. */
  public Optional<Path> left(String folder) {
    Path place = aside("part").resolve(folder);
    return Files.isDirectory(place) ? Optional.of(place) : Optional.empty();
  }

  /** Makes such a folder a part of this output, or deletes it. */
  public synchronized void settle(String folder, boolean keep) {
    Path place = aside("part").resolve(folder);
    try {
      if (keep) {
        for (String file : EarlierOutput.files(place)) {
          written.put(folder + "/" + file, Files.size(place.resolve(file)));
        }
      } else {
        Leftovers.delete(place);
      }
    } catch (IOException e) {
      throw unwritable(folder, e);
    }
  }

  /** Writes a folder that gets its name when all its files are there. */
  public void whole(String folder, Consumer<FileSink> files) {
    Path making = WholeFolders.making(aside("part"), folder);
    files.accept((name, bytes) -> write(folder + "/" + name, making.resolve(name), bytes));
    synchronized (this) {
      try {
        if (!dry) {
          requireOpen();
          WholeFolders.finish(aside("part"), folder);
        }
      } catch (IOException e) {
        throw unwritable(folder, e);
      }
    }
  }

  /** Nothing of this run is worth keeping, unless it is for want of room: it can't be done. */
  public void discard() {
    kept = full ? kept : null;
  }

  /**
   * Writes a file.
   *
   * @param name relative path with {@code /}, one that the kind owns
   * @throws JobFault if it can't be written, as on a full disk
   * @throws IllegalArgumentException if the name leads out of the directory or isn't of the kind
   */
  @Override
  public void write(String name, byte[] bytes) {
    write(name, inside(aside("part"), name), bytes);
  }

  private synchronized void write(String name, Path file, byte[] bytes) {
    requireOpen();
    inside(aside("part"), name);
    if (!dry) {
      try {
        Files.createDirectories(file.getParent());
        Files.write(file, bytes, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
      } catch (IOException e) {
        throw unwritable(name, e);
      }
    }
    written.put(name, (long) bytes.length);
  }

  private void requireOpen() {
    if (!open) {
      throw new JobFault("the run was broken off", "start it again");
    }
  }

  private JobFault unwritable(String name, IOException e) {
    full = true;
    return new JobFault(
        "can't write " + name + " for " + asked + ": " + IoReason.of(e),
        kept == null
            ? "make room or choose another directory; nothing was left behind"
            : "make room; what is done is kept, and the same command goes on from there");
  }

  private Path inside(Path part, String name) {
    try {
      Path file = part.resolve(name).normalize();
      if (file.startsWith(part) && kind.owns(name)) {
        return file;
      }
    } catch (InvalidPathException e) {
      throw new IllegalArgumentException("bad name " + name, e);
    }
    throw new IllegalArgumentException("\"" + name + "\" isn't a file of this output");
  }

  /** Names and sizes in bytes of what was written so far, sorted. */
  public SortedMap<String, Long> written() {
    return Collections.unmodifiableSortedMap(written);
  }

  /**
   * Moves everything into place. An earlier output is set aside first and deleted last, so that
   * there is always a whole one to be had.
   *
   * @throws JobFault if something was put there meanwhile, or the system refuses
   */
  public synchronized void publish() {
    if (!open || dry) {
      throw new IllegalStateException("closed or dry");
    }
    full = true; // whatever comes, it is whole
    try {
      EarlierOutput.refuseIfTaken(asked, target, kind, force);
      boolean replace = force && Files.exists(target) && !EarlierOutput.files(target).isEmpty();
      if (replace) {
        Files.move(target, aside("old"), StandardCopyOption.ATOMIC_MOVE);
      }
      moveIn(replace);
    } catch (IOException e) {
      throw new JobFault(
          "can't put the output into " + asked + ": " + IoReason.of(e), "choose another directory");
    }
    madeParents.clear();
    close();
  }

  private void moveIn(boolean replaced) throws IOException {
    if (!replaced && Files.exists(target) && EarlierOutput.underfoot(target)) {
      fill();
      return;
    }
    try {
      Files.move(aside("part"), target, StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException e) {
      if (replaced) {
        Files.move(aside("old"), target, StandardCopyOption.ATOMIC_MOVE);
      }
      throw e;
    }
  }

  /**
   * Moves what was written into the empty folder that the shell stands in, which must stay; the key
   * file last, so that nothing half done looks like an output.
   */
  private void fill() throws IOException {
    List<Path> entries = new ArrayList<>();
    try (Stream<Path> files = Files.list(aside("part"))) {
      files.forEach(entries::add);
    }
    entries.sort(
        Comparator.comparing((Path file) -> file.endsWith(kind.keyFile()))
            .thenComparing(Comparator.naturalOrder()));
    for (Path entry : entries) {
      Files.move(entry, target.resolve(entry.getFileName()), StandardCopyOption.ATOMIC_MOVE);
    }
  }

  /**
   * Leaves nothing of an unpublished directory, but for whole folders that the next run may go on
   * from.
   */
  @Override
  public synchronized void close() {
    if (!open || dry) {
      return;
    }
    abandon();
    try {
      Runtime.getRuntime().removeShutdownHook(onExit);
    } catch (IllegalStateException e) {
      return; // the program is ending and the hook runs anyway
    }
  }

  private synchronized void abandon() {
    open = false;
    try {
      Leftovers.settle(target, key, kept);
      if (lock != null) {
        Files.deleteIfExists(aside("lock"));
        lock.close();
      }
      for (int i = madeParents.size() - 1; i >= 0; i--) {
        Files.deleteIfExists(madeParents.get(i));
      }
    } catch (IOException | UncheckedIOException e) {
      return; // what stays is hidden, named as ours, and cleared by the next run
    } finally {
      Leftovers.release(aside("lock"));
    }
  }
}
