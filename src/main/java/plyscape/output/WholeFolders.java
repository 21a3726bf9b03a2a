package plyscape.output;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Folders in an output in the making that are worth something without the rest: each is filled
 * under a hidden name and gets its own when it is whole, so that what a stopped run leaves under
 * that name can be gone on from.
 */
final class WholeFolders {

  private WholeFolders() {}

  /** Where the files of a folder go until all are there. */
  static Path making(Path part, String folder) {
    return part.resolve("." + folder);
  }

  /** Gives a folder its name. */
  static void finish(Path part, String folder) throws IOException {
    Files.move(making(part, folder), part.resolve(folder), StandardCopyOption.ATOMIC_MOVE);
  }

  /** Those of a directory, which needn't be there. */
  static List<Path> in(Path part, Pattern names) throws IOException {
    if (names == null || !Files.isDirectory(part)) {
      return List.of();
    }
    try (Stream<Path> entries = Files.list(part)) {
      return entries
          .filter(Files::isDirectory)
          .filter(entry -> names.matcher(entry.getFileName().toString()).matches())
          .sorted()
          .toList();
    }
  }

  /** Deletes everything else in it. */
  static void alone(Path part, Pattern names) throws IOException {
    List<Path> kept = in(part, names);
    try (Stream<Path> entries = Files.list(part)) {
      for (Path entry : entries.filter(entry -> !kept.contains(entry)).toList()) {
        Leftovers.delete(entry);
      }
    }
  }

  /** Moves those that aren't there yet from one directory to another. */
  static void move(Path from, Path to, Pattern names) throws IOException {
    for (Path folder : in(from, names)) {
      Path place = to.resolve(folder.getFileName().toString());
      if (Files.notExists(place)) {
        Files.move(folder, place, StandardCopyOption.ATOMIC_MOVE);
      }
    }
  }
}
