package plyscape.job;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import plyscape.fault.InputFault;
import plyscape.files.InputFile;

/** Input files named in settings: resolved against the settings' folder, and there to be read. */
final class InputFiles {

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
      throw InputFile.missing(resolved, node.place(), null);
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
}
