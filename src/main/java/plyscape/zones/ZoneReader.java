package plyscape.zones;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.grid.ClassGrid;
import plyscape.grid.GroundFrame;
import plyscape.job.ZoneSpec;
import plyscape.zones.map.MapFeature;
import plyscape.zones.map.MapFile;

/**
 * Reads the zones of a job: features picked by their properties, projected to the terrain's CRS,
 * laid on the panel, lines widened, clipped to the carved area and united. What is left out is
 * listed with why, and summed up in warnings.
 */
public final class ZoneReader {

  private ZoneReader() {}

  /** The same for maps of features only and without a tool: {@code keep} does nothing then. */
  public static List<Zone> read(List<ZoneSpec> specs, GroundFrame frame, Warnings warnings) {
    return read(specs, frame, 0, warnings);
  }

  /** The same for maps of features only. */
  static List<Zone> read(
      List<ZoneSpec> specs, GroundFrame frame, double smallestToolMm, Warnings warnings) {
    return read(specs, frame, ZoneReader::noRaster, smallestToolMm, warnings);
  }

  /**
   * All zones in the order given. A file that several zones use is read once.
   *
   * @param rasters reads the raster of a zone that has values
   * @param smallestToolMm diameter, for zones that widen or drop what is narrower
   */
  public static List<Zone> read(
      List<ZoneSpec> specs,
      GroundFrame frame,
      Function<Path, ClassGrid> rasters,
      double smallestToolMm,
      Warnings warnings) {
    ZoneMaps maps = new ZoneMaps(specs, frame, rasters, warnings);
    List<Zone> zones = new ArrayList<>();
    for (ZoneSpec spec : specs) {
      MapFile file = maps.file(spec);
      FeatureFilter filter = new FeatureFilter(spec.where());
      ZoneShape shape = new ZoneShape(spec, frame, smallestToolMm);
      for (MapFeature feature : file.features()) {
        if (filter.takes(feature.properties())) {
          shape.add(feature, maps.way(spec, file, feature.crs()));
        }
      }
      Zone zone = shape.zone();
      new ZoneNotes(spec, warnings).add(file, shape, zone);
      zones.add(zone);
    }
    return List.copyOf(zones);
  }

  private static ClassGrid noRaster(Path file) {
    throw new InputFault(Place.file(file.toString()), "a raster", "wanted a map of features here");
  }
}
