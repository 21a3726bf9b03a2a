package plyscape.output;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import plyscape.fault.JobFault;

/**
 * What lies already where an output is to go: only an earlier output of the same kind, with nothing
 * else in it, is ever replaced.
 */
final class EarlierOutput {

  /** Entries of an existing target that are looked at: far more than any output has. */
  private static final int LOOKED_AT = 20_000;

  private EarlierOutput() {}

  /**
   * Lets pass a target that isn't there, is empty, or may be replaced.
   *
   * @param asked the directory as the user wrote it, for messages
   * @param target the same, links followed
   * @param kind what is to be written there
   * @throws JobFault if something is there that may not be replaced
   */
  static void refuseIfTaken(Path asked, Path target, OutputKind kind, boolean force)
      throws IOException {
    if (Files.notExists(target, LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
    if (!Files.isDirectory(target)) {
      throw new JobFault(asked + " exists and isn't a directory", "choose another directory");
    }
    List<String> files = files(target);
    if (files.isEmpty()) {
      return;
    }
    if (!force) {
      throw new JobFault(
          asked + " exists and isn't empty",
          "choose another directory"
              + (kind.keyText().isEmpty() ? "" : ", or replace it with --force"));
    }
    if (underfoot(target)) {
      throw new JobFault(
          asked
              + " is the folder that the shell stands in, or above it: another would be put in its"
              + " place, and the shell left in none",
          "name a folder in it, such as -o out, or go to another folder");
    }
    requireOurs(asked, target, files, kind);
  }

  /** That all of it was written by this program, by a command of the same kind. */
  private static void requireOurs(Path asked, Path target, List<String> files, OutputKind kind)
      throws IOException {
    OutputKind found = found(target, kind);
    for (String file : files) {
      if (!found.owns(file) || files.size() >= LOOKED_AT - 1) {
        throw new JobFault(
            asked
                + " holds \""
                + file
                + "\", which plyscape didn't write there, so it isn't replaced",
            "move that away, or choose another directory");
      }
    }
    if (!isOurs(target, found)) {
      throw new JobFault(
          asked
              + " isn't an output of this command (no "
              + kind.keyFile()
              + " of its kind), so it isn't replaced",
          "choose another directory");
    }
  }

  /** Whether the program runs in a folder, or in one under it: it mustn't be moved away then. */
  static boolean underfoot(Path target) throws IOException {
    return Path.of("").toRealPath().startsWith(target);
  }

  private static OutputKind found(Path target, OutputKind kind) throws IOException {
    for (OutputKind one : kind.replaces()) {
      if (isOurs(target, one)) {
        return one;
      }
    }
    return kind;
  }

  private static boolean isOurs(Path target, OutputKind one) throws IOException {
    Path file = target.resolve(one.keyFile());
    if (!Files.isRegularFile(file)) {
      return false;
    }
    try (InputStream in = Files.newInputStream(file)) {
      byte[] head = in.readNBytes(OutputKind.KEY_REACH);
      return new String(head, StandardCharsets.UTF_8).contains(one.keyText());
    }
  }

  /**
   * Files and links in it as relative names with slashes, sorted; the first few thousand, to answer
   * soon for any directory.
   */
  static List<String> files(Path directory) throws IOException {
    try (Stream<Path> walk = Files.walk(directory)) {
      return walk.limit(LOOKED_AT)
          .filter(
              path ->
                  !path.equals(directory) && !Files.isDirectory(path, LinkOption.NOFOLLOW_LINKS))
          .map(path -> directory.relativize(path).toString().replace('\\', '/'))
          .sorted()
          .toList();
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }
}
