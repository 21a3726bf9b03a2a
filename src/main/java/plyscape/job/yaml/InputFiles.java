package plyscape.job.yaml;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import plyscape.fault.InputFault;
import plyscape.files.InputFile;

/** Input files named in settings: resolved against the settings' folder, and there to be read. */
public final class InputFiles {

  private InputFiles() {}

  /**
   * The path that a node names.
   *
   * @throws InputFault if it isn't a path, or there is no readable file
   */
  public static Path resolve(YamlNode node) {
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

  /**
   * The paths that a node names: one, or with {@code *} or {@code ?} in the last part all files of
   * that folder whose names fit, in alphabetical order.
   *
   * @throws InputFault if there is none, or one can't be read
   */
  public static List<Path> resolveAll(YamlNode node) {
    String text = node.text();
    int slash = text.lastIndexOf('/');
    String pattern = text.substring(slash + 1);
    if (!pattern.contains("*") && !pattern.contains("?")) {
      return List.of(resolve(node));
    }
    Path folder = Path.of(slash < 0 ? "" : text.substring(0, slash + 1));
    Path resolved = node.folder() == null ? folder : node.folder().resolve(folder);
    Predicate<String> fits = Pattern.compile(regex(pattern)).asMatchPredicate();
    try (Stream<Path> files = Files.list(resolved.toAbsolutePath())) {
      List<Path> found =
          files
              .filter(file -> fits.test(file.getFileName().toString()) && Files.isRegularFile(file))
              .map(file -> resolved.resolve(file.getFileName()))
              .sorted()
              .toList();
      if (found.isEmpty()) {
        throw new InputFault(
            node.place(), "no file fits \"" + text + "\"", "check the folder and the pattern");
      }
      return found;
    } catch (IOException e) {
      throw InputFile.missing(resolved, node.place(), e);
    }
  }

  /** Only stars and question marks mean more than themselves. */
  private static String regex(String pattern) {
    return pattern
        .chars()
        .mapToObj(c -> c == '*' ? ".*" : c == '?' ? "." : Pattern.quote(Character.toString(c)))
        .collect(Collectors.joining());
  }
}
