package plyscape.job;

import java.nio.file.Files;
import java.nio.file.Path;
import plyscape.fault.InputFault;
import plyscape.files.InputFile;
import plyscape.job.yaml.InputFiles;
import plyscape.job.yaml.Keys;
import plyscape.job.yaml.Keys.Range;
import plyscape.job.yaml.YamlNode;

/** Reads {@code panel.top_map}: which file holds the probed heights of the top face. */
final class TopMapKeys {

  private static final Range TOLERANCE = Range.mm(0, 1);

  private TopMapKeys() {}

  /**
   * The spec, or null where there is none.
   *
   * @param columns panels side by side, whose files must all be there
   */
  static TopMapSpec read(Keys panel, int columns, int rows) {
    if (!panel.has("top_map")) {
      return null;
    }
    Keys keys = panel.child("top_map", "file", "tolerance");
    YamlNode node = keys.required("file", "a file of readings, such as top.csv");
    String text = Keys.textOf(node, "a file of readings, such as top.csv");
    double tolerance = keys.number("tolerance", 0.02, TOLERANCE);
    if (!text.contains(TopMapSpec.TILE)) {
      if (columns * rows > 1) {
        throw new InputFault(
            node.place(),
            "one top map for " + columns * rows + " panels, which are pressed one by one",
            "put {tile} into its name: the panels' names are tile-1-1 and so on");
      }
      return new TopMapSpec(InputFiles.resolve(node).toString(), tolerance);
    }
    Path file = node.folder() == null ? Path.of(text) : node.folder().resolve(text);
    TopMapSpec spec = new TopMapSpec(file.toString(), tolerance);
    for (int row = 1; row <= rows; row++) {
      for (int column = 1; column <= columns; column++) {
        Path one = spec.fileOf(columns * rows == 1 ? "tile-1-1" : "tile-" + column + "-" + row);
        if (!Files.isRegularFile(one)) {
          throw InputFile.missing(one, node.place(), null);
        }
      }
    }
    return spec;
  }
}
