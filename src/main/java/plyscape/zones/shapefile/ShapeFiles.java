package plyscape.zones.shapefile;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import plyscape.zones.map.ZippedMap;

/** The files that make one shapefile, by their endings, wherever they are. */
interface ShapeFiles {

  /** The shapefile's name, for messages. */
  String name();

  /** The bytes of one of the files from its start, or null if there is none of that ending. */
  InputStream open(String ending) throws IOException;

  /** Files beside a {@code .shp}. */
  static ShapeFiles beside(Path shp) {
    String name = shp.getFileName().toString();
    String stem = name.replaceFirst("(?i)\\.shp$", "");
    return new ShapeFiles() {
      @Override
      public String name() {
        return shp.toString();
      }

      @Override
      public InputStream open(String ending) throws IOException {
        if (ending.equals(".shp")) {
          return new BufferedInputStream(Files.newInputStream(shp), 1 << 16);
        }
        for (String written : new String[] {ending, ending.toUpperCase(Locale.ROOT)}) {
          Path file = shp.resolveSibling(stem + written);
          if (Files.isRegularFile(file)) {
            return new BufferedInputStream(Files.newInputStream(file), 1 << 16);
          }
        }
        return null;
      }
    };
  }

  /** Entries of an archive. */
  static ShapeFiles in(ZippedMap zip, Path file, String shp) {
    String stem = shp.substring(0, shp.lastIndexOf('.'));
    return new ShapeFiles() {
      @Override
      public String name() {
        return file + "/" + shp;
      }

      @Override
      public InputStream open(String ending) throws IOException {
        InputStream in = zip.open(stem + ending);
        return in == null ? null : new BufferedInputStream(in, 1 << 16);
      }
    };
  }
}
