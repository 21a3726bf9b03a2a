package plyscape.output;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** The lock by which other runs see that an output is still being written. */
final class OutputLock {

  private OutputLock() {}

  /**
   * Takes it; closing the channel lets go. Another run that clears up may delete the file before it
   * is locked, so it must still be there after.
   *
   * @throws IOException if there is none to be had after so many attempts
   */
  static FileChannel take(Path file, int attempts) throws IOException {
    Leftovers.claim(file);
    for (int attempt = 0; attempt < attempts; attempt++) {
      FileChannel channel =
          FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      if (held(channel) && Files.exists(file)) {
        return channel;
      }
      channel.close();
    }
    throw new IOException("no lock to be had on " + file.getFileName());
  }

  /** A file system without locks, as of some clusters, is written to all the same. */
  private static boolean held(FileChannel channel) {
    try {
      return channel.tryLock() != null;
    } catch (IOException e) {
      return true;
    }
  }
}
