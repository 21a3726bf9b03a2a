package plyscape.output;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import plyscape.fault.IoReason;
import plyscape.fault.JobFault;

/** A single file that is whole or not there: written beside its place, then moved into it. */
public final class OutputFile {

  private OutputFile() {}

  /**
   * Checks early, before any work, that a file may be written.
   *
   * @throws JobFault if it is there and may not be replaced, or is a directory
   */
  public static void require(Path file, boolean force) {
    if (Files.isDirectory(file)) {
      throw new JobFault(file + " is a directory", "choose another file");
    }
    if (!force && Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
      throw new JobFault(file + " exists", "choose another file, or replace it with --force");
    }
  }

  /**
   * Writes a text in UTF-8.
   *
   * @throws JobFault if it is there and may not be replaced, or can't be written
   */
  public static void write(Path file, String text, boolean force) {
    write(file, text.getBytes(StandardCharsets.UTF_8), force);
  }

  /**
   * Writes bytes.
   *
   * @throws JobFault if it is there and may not be replaced, or can't be written
   */
  public static void write(Path file, byte[] bytes, boolean force) {
    require(file, force);
    Path target = file.toAbsolutePath();
    Path aside =
        target.resolveSibling(
            "." + target.getFileName() + "." + ProcessHandle.current().pid() + ".part");
    try {
      try {
        Files.write(aside, bytes, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        if (force) {
          Files.move(aside, target, StandardCopyOption.ATOMIC_MOVE);
        } else {
          Files.move(aside, target);
        }
      } finally {
        Files.deleteIfExists(aside);
      }
    } catch (FileAlreadyExistsException e) {
      throw new JobFault(
          "can't write " + file + ": something was put there meanwhile", "choose another file");
    } catch (IOException e) {
      throw new JobFault(
          "can't write "
              + file
              + ": "
              + (Files.isDirectory(target.getParent()) ? IoReason.of(e) : "no such directory"),
          "choose another file");
    }
  }
}
