package plyscape.job;

import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import plyscape.fault.InputFault;
import plyscape.fault.Warnings;
import plyscape.job.yaml.Setting;
import plyscape.layup.Layup;

/** A folder with a small layup, terrain and map, and ways to read jobs in it. */
final class JobFixture {

  static final String LAYUP =
      """
      plies:
        - {name: meadow, colour: "#8fbf5a", thickness: 0.9}
        - {name: wood, colour: "#3f7d3a", thickness: 0.8, tolerance: 0.04, grain: 90, wood: dyed poplar}
        - {name: oak, colour: "#abc", thickness: 0.9}
        - {name: deep blue, colour: "#203080", thickness: 0.9}
      """;

  final Path folder;
  final Warnings warnings = new Warnings();

  JobFixture(Path folder) {
    this.folder = folder;
    file("layup.yaml", LAYUP);
    file("terrain.asc", "ncols 1\nnrows 1\nxllcorner 0\nyllcorner 0\ncellsize 1\n5\n");
    file("zones.geojson", "{}");
  }

  Path file(String name, String text) {
    return bytes(name, text.getBytes(StandardCharsets.UTF_8));
  }

  Path bytes(String name, byte[] bytes) {
    try {
      return Files.write(folder.resolve(name), bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  Job job(String text, Setting... settings) {
    return JobReader.read(file("job.yaml", text), List.of(settings), warnings);
  }

  Layup layup(String text) {
    return LayupReader.read(file("layup.yaml", text));
  }

  /** The message of the fault, without the folder's name. */
  String jobFault(String text, Setting... settings) {
    return shown(assertThrows(InputFault.class, () -> job(text, settings), text));
  }

  String layupFault(String text) {
    return shown(assertThrows(InputFault.class, () -> layup(text), text));
  }

  String shown(InputFault fault) {
    return fault.getMessage().replace(folder + "/", "");
  }
}
