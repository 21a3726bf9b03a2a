package plyscape.zones;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.zones.geojson.GeoJsonFormat;
import plyscape.zones.geopackage.GeoPackageFormat;
import plyscape.zones.gpx.GpxFormat;
import plyscape.zones.kml.KmlFormat;
import plyscape.zones.map.MapFile;
import plyscape.zones.map.MapFormat;
import plyscape.zones.map.MapHead;
import plyscape.zones.map.MapQuery;
import plyscape.zones.osm.OsmFormat;
import plyscape.zones.shapefile.ShapefileFormat;

/** Opens a map of features in whatever format it is, found by what the file holds. */
public final class MapOpener {

  /** Tried in this order; the last takes what no other knows. */
  private static final List<MapFormat> FORMATS =
      List.of(
          new GeoPackageFormat(),
          new OsmFormat(),
          new GpxFormat(),
          new KmlFormat(),
          new ShapefileFormat(),
          new GeoJsonFormat());

  private MapOpener() {}

  /**
   * Reads what is asked for of a map.
   *
   * @throws InputFault if there is no such file, or it isn't a map that can be read
   */
  public static MapFile read(Path file, MapQuery query) {
    if (!Files.isRegularFile(file)) {
      throw new InputFault(
          Place.file(file.toString()), "no such file", "name a map file, such as zones.geojson");
    }
    MapHead head = MapHead.of(file);
    if (head.endsWith(".tif") || head.endsWith(".tiff") || head.endsWith(".asc")) {
      throw new InputFault(
          Place.file(file.toString()),
          "a raster, and the zone has no values",
          "set the zone's values to the classes that are meant, such as [41, 42]");
    }
    MapFormat format = FORMATS.stream().filter(one -> one.accepts(head)).findFirst().orElseThrow();
    return SharedMaps.read(format, file, query);
  }
}
