package plyscape.zones.geopackage;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import plyscape.zones.map.MapFile;
import plyscape.zones.map.MapFormat;
import plyscape.zones.map.MapHead;
import plyscape.zones.map.MapQuery;

/** GeoPackage. */
public final class GeoPackageFormat implements MapFormat {

  private static final byte[] MAGIC = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);

  @Override
  public boolean accepts(MapHead head) {
    return head.startsWith(MAGIC);
  }

  @Override
  public MapFile read(Path file, MapQuery query) {
    return GeoPackageReader.read(file, query);
  }
}
