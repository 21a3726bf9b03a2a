package plyscape.files;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import java.util.function.ToLongFunction;

/**
 * What was read of input files, kept for the other jobs of a batch: digests, and contents by file
 * and digest, the least recently used let go when there are too many bytes of them. While one job
 * reads, others that want the same wait for it. Contents count only for a file that stands as it
 * stood when its digest was taken; what was read while it changed isn't kept. For use by several
 * threads; what is kept mustn't be changed.
 *
 * <p>There is one for the process, while a {@link Scope} is open; outside of one everything is read
 * each time.
 */
public final class InputCache {

  /** A digest takes some 300 bytes. */
  private static final int MOST_DIGESTS = 10_000;

  private static volatile InputCache now;

  private final long mostBytes;
  private final LongSupplier clockMs;
  private final Map<FileState, String> digests = new LinkedHashMap<>(64, 0.75f, true);
  private final Map<Key, Kept> kept = new LinkedHashMap<>(64, 0.75f, true);
  private long bytes;

  /** Contents of some files, read in a certain way. */
  private record Key(List<FileState> files, List<String> digests, String how) {}

  /** What one reads and others wait for. */
  private static final class Kept {
    private final CountDownLatch read = new CountDownLatch(1);
    private volatile Object value;
    private long bytes;
  }

  private InputCache(long mostBytes, LongSupplier clockMs) {
    this.mostBytes = mostBytes;
    this.clockMs = clockMs;
  }

  /** As long as it is open, what is read is kept; closing lets go of everything. */
  public static final class Scope implements AutoCloseable {
    private final InputCache before;

    private Scope(InputCache before) {
      this.before = before;
    }

    @Override
    public void close() {
      now = before;
    }
  }

  /** Begins to keep what is read. */
  public static Scope open(long mostBytes) {
    return open(mostBytes, System::currentTimeMillis);
  }

  /** The same, with the time of day from elsewhere, ms. */
  public static Scope open(long mostBytes, LongSupplier clockMs) {
    Scope scope = new Scope(now);
    now = new InputCache(mostBytes, clockMs);
    return scope;
  }

  /** Lets go of all contents, as memory has run out; how many bytes they were. */
  public static long clear() {
    InputCache cache = now;
    return cache == null ? 0 : cache.empty();
  }

  private synchronized long empty() {
    long freed = bytes;
    kept.clear();
    bytes = 0;
    return freed;
  }

  /** How many bytes may be kept; 0 when nothing is. */
  public static long mostBytes() {
    InputCache cache = now;
    return cache == null ? 0 : cache.mostBytes;
  }

  /** A file's digest: as it was taken before if the file stands as it did, else taken now. */
  static String digest(Path file, Supplier<String> take) {
    InputCache cache = now;
    try {
      if (cache == null) {
        return take.get();
      }
      FileState state = FileState.of(file);
      String known = cache.known(state);
      if (known != null) {
        return known;
      }
      long begun = cache.clockMs.getAsLong();
      String taken = take.get();
      if (state.settled(begun) && FileState.of(file).equals(state)) {
        cache.add(state, taken);
      }
      return taken;
    } catch (IOException e) {
      return take.get(); // says what is wrong with it
    }
  }

  private synchronized String known(FileState state) {
    return digests.get(state);
  }

  private synchronized void add(FileState state, String digest) {
    digests.put(state, digest);
    if (digests.size() > MOST_DIGESTS) {
      Iterator<FileState> oldest = digests.keySet().iterator();
      oldest.next();
      oldest.remove();
    }
  }

  /** Some files as they stand at one moment. */
  public static final class Source {

    /** One of which nothing is kept. */
    public static final Source NONE = new Source(null, List.of(), List.of());

    private final InputCache cache;
    private final List<FileState> states;
    private final List<String> digests;

    private Source(InputCache cache, List<FileState> states, List<String> digests) {
      this.cache = cache;
      this.states = states;
      this.digests = digests;
    }

    /**
     * Contents: those kept, else read now.
     *
     * @param how what is read, and in which way
     * @param read gives what isn't changed by anybody
     * @param size of it, bytes
     */
    public <T> T get(String how, Supplier<T> read, ToLongFunction<T> size) {
      return cache == null ? read.get() : cache.get(new Key(states, digests, how), read, size);
    }
  }

  /**
   * Files whose contents are wanted. Nothing is kept of them unless their digests have been taken
   * as they stand now.
   *
   * @param files all that the contents depend on
   */
  public static Source of(List<Path> files) {
    InputCache cache = now;
    Source source = cache == null ? null : cache.source(files);
    return source == null ? Source.NONE : source;
  }

  private Source source(List<Path> files) {
    List<FileState> states = new ArrayList<>();
    List<String> known = new ArrayList<>();
    try {
      for (Path file : files) {
        FileState state = FileState.of(file);
        String digest = known(state);
        if (digest == null) {
          return null;
        }
        states.add(state);
        known.add(digest);
      }
      return new Source(this, states, known);
    } catch (IOException e) {
      return null; // the reader says what is wrong
    }
  }

  @SuppressWarnings("unchecked") // what was put under a key is what is asked for under it
  private <T> T get(Key key, Supplier<T> read, ToLongFunction<T> size) {
    Kept mine = new Kept();
    Kept there;
    synchronized (this) {
      there = kept.putIfAbsent(key, mine);
    }
    if (there == null) {
      return first(key, mine, read, size);
    }
    try {
      there.read.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    Object value = there.value;
    return value == null ? read.get() : (T) value;
  }

  private <T> T first(Key key, Kept mine, Supplier<T> read, ToLongFunction<T> size) {
    boolean keeps = false;
    try {
      T value = read.get();
      mine.bytes = size.applyAsLong(value);
      keeps = mine.bytes <= mostBytes && stands(key);
      mine.value = keeps ? value : null;
      return value;
    } finally {
      settle(key, mine, keeps);
      mine.read.countDown();
    }
  }

  private static boolean stands(Key key) {
    try {
      for (FileState state : key.files()) {
        if (!FileState.of(state.path()).equals(state)) {
          return false;
        }
      }
      return true;
    } catch (IOException e) {
      return false;
    }
  }

  /** Counts what was read, or forgets it; the least recently used goes until the rest fits. */
  private synchronized void settle(Key key, Kept mine, boolean keeps) {
    if (!keeps || kept.get(key) != mine) { // cleared meanwhile
      kept.remove(key, mine);
      return;
    }
    bytes += mine.bytes;
    Iterator<Kept> oldest = kept.values().iterator();
    while (bytes > mostBytes && oldest.hasNext()) {
      Kept one = oldest.next();
      if (one != mine && one.value != null) {
        oldest.remove();
        bytes -= one.bytes;
      }
    }
  }
}
