package plyscape.zones;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.Function;
import plyscape.fault.Warnings;
import plyscape.grid.ClassGrid;
import plyscape.grid.GroundFrame;
import plyscape.job.ZoneSpec;
import plyscape.zones.map.MapFile;
import plyscape.zones.map.MapQuery;

/**
 * The maps of all zones of a job, and their ways to the panel. A file that several zones use is
 * read once, for all of them together.
 */
final class ZoneMaps {

  private record Source(Path file, String layer) {

    static Source of(ZoneSpec spec) {
      return new Source(spec.file(), spec.map().layer());
    }
  }

  private record Way(Source source, String crs) {}

  private final List<ZoneSpec> specs;
  private final GroundFrame frame;
  private final Function<Path, ClassGrid> rasters;
  private final Warnings warnings;
  private final Map<Source, MapFile> files = new HashMap<>();
  private final Map<Way, GroundMap> ways = new HashMap<>();
  private final Map<Path, ClassGrid> grids = new HashMap<>();
  private final Map<String, ClassBorders> borders = new HashMap<>();

  /**
   * Reads nothing yet.
   *
   * @param specs all zones that will ask
   * @param rasters reads the raster of a zone that has values
   */
  ZoneMaps(
      List<ZoneSpec> specs,
      GroundFrame frame,
      Function<Path, ClassGrid> rasters,
      Warnings warnings) {
    this.specs = specs;
    this.frame = frame;
    this.rasters = rasters;
    this.warnings = warnings;
  }

  /** The zone's map: at least the features that it picks. */
  MapFile file(ZoneSpec spec) {
    if (spec.values() != null) {
      return ClassMap.of(
          grids.computeIfAbsent(spec.file(), rasters),
          spec.values(),
          frame,
          // Made once a raster, so that its zones share their borders; rasters are few.
          grid -> borders.computeIfAbsent(grid.name(), name -> new ClassBorders(grid)),
          warnings);
    }
    return files.computeIfAbsent(Source.of(spec), this::read);
  }

  private MapFile read(Source source) {
    List<FeatureFilter> filters = new ArrayList<>();
    TreeSet<String> asked = new TreeSet<>();
    for (ZoneSpec spec : specs) {
      if (spec.values() == null && Source.of(spec).equals(source)) {
        filters.add(new FeatureFilter(spec.where()));
        asked.addAll(spec.where().keySet());
      }
    }
    MapQuery query =
        new MapQuery(
            source.layer(),
            asked,
            properties -> filters.stream().anyMatch(filter -> filter.takes(properties)),
            crs -> GroundMap.reach(crs, frame, source.file().toString()));
    MapFile map = MapOpener.read(source.file(), query);
    ExtentCheck.check(map, frame, warnings);
    if (!map.notes().isEmpty()) {
      List<String> texts = new ArrayList<>();
      map.notes().forEach((what, count) -> texts.add(what + ": " + count));
      warnings.add(
          "map-broken", "Left out or mended: " + String.join("; ", texts) + ".", map.name());
    }
    return map;
  }

  /**
   * The way from a map's coordinates to the panel.
   *
   * @param crs of the feature where it isn't the file's, or ""
   */
  GroundMap way(ZoneSpec spec, MapFile file, String crs) {
    return ways.computeIfAbsent(
        new Way(Source.of(spec), crs), way -> GroundMap.of(file.in(crs), frame, warnings));
  }
}
