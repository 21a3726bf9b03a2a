package plyscape.job;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.text.NearestName;

/** Input files named in settings: resolved against the settings' folder, and there to be read. */
final class InputFiles {

  /** Names looked at in a folder for a near one; more isn't worth the time. */
  private static final int LOOKED_AT = 2000;

  private InputFiles() {}

  /**
   * The path that a node names.
   *
   * @throws InputFault if it isn't a path, or there is no readable file
   */
  static Path resolve(YamlNode node) {
    String text = node.text();
    Path path;
    try {
      path = Path.of(text);
    } catch (InvalidPathException e) {
      throw new InputFault(node.place(), "found " + node.found(), "that can't be a file name", e);
    }
    Path resolved = node.folder() == null ? path : node.folder().resolve(path);
    if (!Files.exists(resolved)) {
      throw missing(resolved, node.place(), null);
    }
    if (!Files.isRegularFile(resolved)) { // a pipe or device could be read for ever
      String what = Files.isDirectory(resolved) ? "is a directory" : "isn't a regular file";
      throw new InputFault(node.place(), "\"" + resolved + "\" " + what, "give a file");
    }
    if (!Files.isReadable(resolved)) {
      throw new InputFault(
          node.place(), "\"" + resolved + "\" may not be read", "check its permissions");
    }
    return resolved;
  }

  /** The fault for a file that isn't there, with the nearest name in its folder. */
  static InputFault missing(Path path, Place place, Throwable cause) {
    Path folder = path.toAbsolutePath().getParent();
    String wanted = path.getFileName() == null ? "" : path.getFileName().toString();
    String help = "check the name; relative paths count from the file that names them";
    if (folder != null && !Files.isDirectory(folder)) {
      help = "its folder isn't there either";
    } else if (folder != null) {
      help =
          NearestName.of(wanted, names(folder))
              .map(near -> "did you mean \"" + near + "\"?")
              .orElse(help);
    }
    return new InputFault(place, "no file \"" + path + "\"", help, cause);
  }

  private static List<String> names(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return files.limit(LOOKED_AT).map(file -> file.getFileName().toString()).sorted().toList();
    } catch (IOException e) {
      return List.of();
    }
  }
}
