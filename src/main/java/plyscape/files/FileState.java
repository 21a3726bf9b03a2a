package plyscape.files;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;

/**
 * How a file stands in its file system, without reading it. Of two alike nothing was written
 * between them, if the first was taken a while after the last change ({@link #settled}). Immutable.
 *
 * @param path absolute
 * @param key what the file system knows the file by; null where it doesn't say
 * @param size bytes
 * @param modified when its contents were changed, as it says, which programs may set
 * @param changed when anything of it was changed, which they can't; where the file system doesn't
 *     know, the same as {@code modified}
 */
record FileState(Path path, Object key, long size, FileTime modified, FileTime changed) {

  /** File systems count in steps of up to this, ms (FAT: 2 s). */
  private static final long COARSEST_MS = 2000;

  /**
   * How it stands now.
   *
   * @throws IOException if it isn't there or doesn't tell
   */
  static FileState of(Path file) throws IOException {
    BasicFileAttributes known = Files.readAttributes(file, BasicFileAttributes.class);
    FileTime changed = known.lastModifiedTime();
    if (file.getFileSystem().supportedFileAttributeViews().contains("unix")) {
      changed = (FileTime) Files.getAttribute(file, "unix:ctime");
    }
    return new FileState(
        file.toAbsolutePath().normalize(),
        known.fileKey(),
        known.size(),
        known.lastModifiedTime(),
        changed);
  }

  /** Whether the last change lies so far back that another would show. */
  boolean settled(long nowMs) {
    long last = Math.max(modified.toMillis(), changed.toMillis());
    return nowMs - last > COARSEST_MS;
  }
}
