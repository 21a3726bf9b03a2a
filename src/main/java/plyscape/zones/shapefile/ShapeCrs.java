package plyscape.zones.shapefile;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.terrain.crs.CrsLookup;
import plyscape.terrain.crs.ProjectionFile;

/**
 * The CRS that the {@code .prj} names. Immutable.
 *
 * @param id code or WKT; WGS 84 where there is none
 * @param stated whether there is one
 */
record ShapeCrs(String id, boolean stated) {

  /** A text of some kilobytes; more isn't one. */
  private static final int MOST_BYTES = 100_000;

  static ShapeCrs of(ShapeFiles files) throws IOException {
    try (InputStream in = files.open(".prj")) {
      String text = in == null ? "" : new String(in.readNBytes(MOST_BYTES), StandardCharsets.UTF_8);
      if (text.isBlank()) {
        return new ShapeCrs(CrsLookup.WGS_84, false);
      }
      String id = ProjectionFile.id(text);
      if (id.isEmpty()) {
        throw new InputFault(
            Place.file(files.name()),
            "its .prj names a CRS that isn't understood",
            "put its code there, such as EPSG:32632");
      }
      return new ShapeCrs(id, true);
    }
  }
}
