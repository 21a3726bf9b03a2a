package plyscape.terrain;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import plyscape.fault.Place;

/**
 * Reads the CRS from a .prj file (one line of well-known text) that lies beside a raster that can't
 * hold one.
 */
final class ProjectionFile {

  private ProjectionFile() {}

  /**
   * The CRS of the raster's .prj file.
   *
   * @return no CRS when there is no such file
   * @throws IOException when it can't be read
   */
  static GroundCrs beside(Path raster) throws IOException {
    String name = raster.getFileName().toString();
    int dot = name.lastIndexOf('.');
    String stem = dot > 0 ? name.substring(0, dot) : name;
    for (String ending : new String[] {".prj", ".PRJ"}) {
      Path file = raster.resolveSibling(stem + ending);
      if (Files.isRegularFile(file)) {
        String text = Files.readString(file, StandardCharsets.UTF_8).strip();
        if (text.contains("[")) {
          return CrsLookup.describe(text, Place.file(file.toString()));
        }
      }
    }
    return GroundCrs.NONE;
  }
}
