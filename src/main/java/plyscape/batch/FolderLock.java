package plyscape.batch;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import plyscape.fault.IoReason;
import plyscape.fault.JobFault;

/**
 * A lock on a file of a folder, held until it is closed or the process ends, however it ends. On a
 * file system without locks there is none, and two runs at a time would only do each job twice.
 */
final class FolderLock implements AutoCloseable {

  private final Path file;
  private final FileChannel channel;

  private FolderLock(Path file, FileChannel channel) {
    this.file = file;
    this.channel = channel;
  }

  /**
   * Takes it.
   *
   * @param name of the file that is to be written by one run at a time
   * @throws JobFault if another run has it, or nothing can be written there
   */
  static FolderLock take(Path folder, String name) {
    Path file = folder.resolve("." + name + ".lock");
    try {
      return open(folder, file);
    } catch (IOException e) {
      throw new JobFault(
          "can't write to " + folder + ": " + IoReason.of(e), "choose another directory");
    }
  }

  /** Who gives it up deletes the file, so it must still be there once it is locked. */
  private static FolderLock open(Path folder, Path file) throws IOException {
    while (true) {
      FileChannel channel =
          FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      if (!locked(channel)) {
        channel.close();
        throw new JobFault(
            "another run is planning this series into " + folder,
            "wait until it ends, give each its --share, or choose another directory");
      }
      if (Files.exists(file)) {
        return new FolderLock(file, channel);
      }
      channel.close();
    }
  }

  private static boolean locked(FileChannel channel) {
    try {
      return channel.tryLock() != null;
    } catch (OverlappingFileLockException e) {
      return false;
    } catch (IOException e) {
      return true; // the file system has no locks
    }
  }

  @Override
  public void close() {
    try (channel) {
      Files.deleteIfExists(file);
    } catch (IOException e) {
      return; // an empty hidden file stays, which the next run takes
    }
  }
}
