package plyscape.zones;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.grid.ClassGrid;
import plyscape.grid.GroundFrame;
import plyscape.job.ZoneSpec;
import plyscape.planar.AreaUnion;

/**
 * Reads the zones of a job: features picked by their properties, projected to the terrain's CRS,
 * laid on the panel, lines widened, clipped to the carved area and united. What is left out is
 * listed with why, and summed up in warnings.
 */
public final class ZoneReader {

  private static final String OUTSIDE = "outside the carved area";

  private final GroundFrame frame;
  private final Warnings warnings;
  private final Map<Path, MapFile> files = new HashMap<>();
  private final Map<Path, Map<String, GroundMap>> maps = new HashMap<>();
  private final Map<Path, ClassGrid> grids = new HashMap<>();
  private final Map<String, ClassBorders> borders = new HashMap<>();
  private final Function<Path, ClassGrid> rasters;
  private final double smallestToolMm;

  private ZoneReader(
      GroundFrame frame,
      Function<Path, ClassGrid> rasters,
      double smallestToolMm,
      Warnings warnings) {
    this.rasters = rasters;
    this.frame = frame;
    this.smallestToolMm = smallestToolMm;
    this.warnings = warnings;
  }

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
    ZoneReader reader = new ZoneReader(frame, rasters, smallestToolMm, warnings);
    return specs.stream().map(reader::zone).toList();
  }

  private static ClassGrid noRaster(Path file) {
    throw new InputFault(Place.file(file.toString()), "a raster", "wanted a map of features here");
  }

  private MapFile file(ZoneSpec spec) {
    if (spec.values() != null) {
      return ClassMap.of(
          grids.computeIfAbsent(spec.file(), rasters),
          spec.values(),
          frame,
          this::borders,
          warnings);
    }
    Path path = spec.file();
    if (!Files.isRegularFile(path)) {
      throw new InputFault(
          Place.file(path.toString()), "no such file", "name a map file, such as zones.geojson");
    }
    if (path.getFileName().toString().toLowerCase(Locale.ROOT).matches(".*\\.(tiff?|asc)")) {
      throw new InputFault(
          Place.file(path.toString()),
          "a raster, and the zone has no values",
          "set the zone's values to the classes that are meant, such as [41, 42]");
    }
    return files.computeIfAbsent(
        path, p -> GeoPackageReader.accepts(p) ? GeoPackageReader.read(p) : GeoJsonReader.read(p));
  }

  /** Made once a raster, so that its zones share their borders; rasters are few. */
  private ClassBorders borders(ClassGrid grid) {
    return borders.computeIfAbsent(grid.name(), name -> new ClassBorders(grid));
  }

  private Zone zone(ZoneSpec spec) {
    MapFile file = file(spec);
    Map<String, GroundMap> byCrs = maps.computeIfAbsent(spec.file(), p -> new HashMap<>());
    FeatureFilter filter = new FeatureFilter(spec.where());
    NarrowParts narrow = new NarrowParts(smallestToolMm, frame.panel());
    int widened = 0;
    AreaUnion areas = new AreaUnion(frame.panel());
    List<Zone.Skipped> skipped = new ArrayList<>();
    List<String> repaired = new ArrayList<>();
    int taken = 0;
    int used = 0;
    int swapped = 0;
    for (MapFeature feature : file.features()) {
      if (!filter.takes(feature)) {
        continue;
      }
      taken++;
      double widthMm = widthMm(spec, feature);
      if (spec.keep() == ZoneSpec.Keep.WIDEN && widthMm > 0 && widthMm < narrow.cuttableMm()) {
        widthMm = narrow.cuttableMm();
        widened++;
      }
      GroundMap map =
          byCrs.computeIfAbsent(feature.crs(), crs -> GroundMap.of(file.in(crs), frame, warnings));
      FeatureShape shape = new FeatureShape(map, widthMm);
      String why = feature.trouble();
      if (why.isEmpty() && (feature.geometry() == null || feature.geometry().isEmpty())) {
        why = "no geometry";
      }
      if (why.isEmpty()) {
        shape.add(feature.geometry());
        why = shape.isEmpty() ? shape.why() : "";
      }
      List<Geometry> shown = shape.areas();
      boolean fits = widthMm >= smallestToolMm && !shape.lines().isEmpty();
      if (why.isEmpty() && spec.keep() == ZoneSpec.Keep.DROP && !fits && narrow.vanish(shown)) {
        why = "narrower than the smallest cutter";
      }
      if (why.isEmpty() && spec.keep() == ZoneSpec.Keep.WIDEN) {
        List<Geometry> wide = narrow.widened(shown);
        widened += wide != shown ? 1 : 0;
        shown = wide;
      }
      if (why.isEmpty()) {
        used++;
        shown.forEach(areas::add);
        for (Coordinate[] line : shape.lines()) {
          areas.add(line, widthMm);
        }
        if (shape.repaired()) {
          repaired.add(feature.label());
        }
      } else {
        skipped.add(new Zone.Skipped(feature.label(), why));
        swapped += why.equals(OUTSIDE) && reachesSwapped(map, feature.geometry()) ? 1 : 0;
      }
    }
    warn(spec, file, taken, used, skipped, swapped, repaired);
    if (widened > 0) {
      warnings.add(
          "zone-widened",
          widened == 1
              ? "1 feature is narrower than the smallest cutter and was widened to it."
              : widened + " features are narrower than the smallest cutter and were widened to it.",
          "zone " + spec.name());
    }
    return new Zone(spec, areas.union(GeoJsonGeometry.FACTORY), used, List.copyOf(skipped));
  }

  private static boolean reachesSwapped(GroundMap map, Geometry geometry) {
    return geometry != null && map.reachesSwapped(geometry.getEnvelopeInternal());
  }

  private static String why(int swapped) {
    return swapped == 0
        ? ""
        : "; with x and y swapped it would lie there: GeoJSON has longitude first, then latitude";
  }

  /** Full width of a line on the panel; 0 when it has none. */
  private double widthMm(ZoneSpec spec, MapFeature feature) {
    ZoneSpec.WidthBy by = spec.widthBy();
    if (by != null) {
      Double number = PropertyPath.number(PropertyPath.value(feature.properties(), by.property()));
      Double width =
          number == null || number <= 0 ? by.otherwise() : Double.valueOf(number * by.times());
      return width == null ? 0 : by.ground() ? width / frame.metresPerMm() : width;
    }
    if (spec.widthMm() != null) {
      return spec.widthMm();
    }
    return spec.groundWidthM() == null ? 0 : spec.groundWidthM() / frame.metresPerMm();
  }

  private void warn(
      ZoneSpec spec,
      MapFile file,
      int taken,
      int used,
      List<Zone.Skipped> skipped,
      int swapped,
      List<String> repaired) {
    String where = "zone " + spec.name();
    if (taken == 0) {
      warnings.add(
          "zone-empty",
          file.features().isEmpty()
              ? file.name() + " has no features."
              : "None of the "
                  + file.features().size()
                  + " features of "
                  + file.name()
                  + " fits "
                  + new FeatureFilter(spec.where()).words()
                  + FoundValues.of(file, spec.where().keySet()),
          where);
      return;
    }
    Map<String, Integer> counts = new LinkedHashMap<>();
    skipped.forEach(s -> counts.merge(s.why(), 1, Integer::sum));
    Integer outside = counts.remove(OUTSIDE);
    if (outside != null && used == 0) {
      warnings.add(
          "zone-outside",
          "All that it picks ("
              + outside
              + (outside == 1 ? " feature" : " features")
              + ") lies outside the carved area"
              + why(swapped)
              + ".",
          where);
    }
    if (!counts.isEmpty()) {
      StringBuilder text = new StringBuilder();
      counts.forEach(
          (why, n) ->
              text.append(text.length() > 0 ? "; " : "").append(n).append(": ").append(why));
      warnings.add("zone-skipped", "Features left out: " + text + ".", where);
    }
    if (!repaired.isEmpty()) {
      warnings.add(
          "zone-repaired",
          (repaired.size() == 1
                  ? "1 polygon that crosses itself was repaired: "
                  : repaired.size() + " polygons that cross themselves were repaired: ")
              + String.join(", ", repaired)
              + ".",
          where);
    }
  }
}
