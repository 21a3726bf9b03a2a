package plyscape.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import plyscape.terrain.AscText;

/**
 * A folder with jobs that plan in well under a second: a cone of ground on a panel of 30 x 30 mm,
 * three plies.
 */
public final class SmallJob {

  final Path folder;

  public SmallJob(Path folder) {
    this.folder = folder;
    write(
        "layup.yaml",
        """
        name: small
        plies:
          - {name: high, colour: "#dddddd", thickness: 1}
          - {name: low, colour: "#448844", thickness: 1}
          - {name: base, colour: "#884422", thickness: 1.2}
        """);
    write(
        "terrain.asc",
        AscText.of(12, 12, (column, row) -> 100 - 6 * Math.hypot(row - 5.5, column - 5.5)));
  }

  /** Writes a file and gives its path. */
  public Path write(String name, String text) {
    try {
      Path file = folder.resolve(name);
      Files.createDirectories(file.getParent());
      return Files.writeString(file, text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A job with extra keys. */
  public Path job(String name, String more) {
    return write(
        name,
        """
        layup: layup.yaml
        terrain: {file: terrain.asc, plies: [high, low], smoothing: 0, crs: "EPSG:32632"}
        panel: {width: 30, height: 30, border: 3}
        """
            + more);
  }

  /** Relative names to contents of all files in a directory. */
  public static SortedMap<String, String> contents(Path directory) throws IOException {
    SortedMap<String, String> out = new TreeMap<>();
    try (Stream<Path> walk = Files.walk(directory)) {
      for (Path file : walk.filter(Files::isRegularFile).toList()) {
        String text =
            new String(Files.readAllBytes(file), java.nio.charset.StandardCharsets.ISO_8859_1);
        out.put(directory.relativize(file).toString(), text);
      }
    }
    return out;
  }
}
