package plyscape.zones.geojson;

import java.nio.file.Path;
import plyscape.zones.map.FeatureSink;
import plyscape.zones.map.MapFile;
import plyscape.zones.map.MapFormat;
import plyscape.zones.map.MapHead;
import plyscape.zones.map.MapQuery;

/** GeoJSON; the last to be tried, as it takes whatever no other format knows, and says why not. */
public final class GeoJsonFormat implements MapFormat {

  @Override
  public boolean accepts(MapHead head) {
    return true;
  }

  @Override
  public MapFile read(Path file, MapQuery query) {
    return GeoJsonReader.read(file, new FeatureSink(file.toString(), query));
  }
}
