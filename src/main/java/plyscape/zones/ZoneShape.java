package plyscape.zones;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import plyscape.grid.GroundFrame;
import plyscape.job.LineWidth;
import plyscape.job.ZoneSpec;
import plyscape.planar.AreaUnion;
import plyscape.zones.map.MapFeature;
import plyscape.zones.map.MapShapes;
import plyscape.zones.map.PropertyPath;

/** Gathers the features of one zone on the panel, and what became of each. */
final class ZoneShape {

  /** Why a feature that lies elsewhere is left out. */
  static final String OUTSIDE = "outside the carved area";

  private final ZoneSpec spec;
  private final GroundFrame frame;
  private final double smallestToolMm;
  private final NarrowParts narrow;
  private final AreaUnion areas;
  private final List<Zone.Skipped> skipped = new ArrayList<>();
  private final List<String> repaired = new ArrayList<>();
  private int taken;
  private int used;
  private int swapped;
  private int widened;

  /**
   * Begins with nothing.
   *
   * @param smallestToolMm diameter, for zones that widen or drop what is narrower; 0 for none
   */
  ZoneShape(ZoneSpec spec, GroundFrame frame, double smallestToolMm) {
    this.spec = spec;
    this.frame = frame;
    this.smallestToolMm = smallestToolMm;
    this.narrow = new NarrowParts(smallestToolMm, frame.panel());
    this.areas = new AreaUnion(frame.panel());
  }

  /** Adds a feature that the zone picks. */
  void add(MapFeature feature, GroundMap map) {
    taken++;
    double widthMm = widthMm(feature);
    FeatureShape shape = new FeatureShape(map, widthMm);
    String why = feature.trouble();
    if (why.isEmpty() && (feature.geometry() == null || feature.geometry().isEmpty())) {
      why = "no geometry";
    }
    if (why.isEmpty()) {
      shape.add(feature.geometry());
      why = shape.isEmpty() ? shape.why() : tooNarrow(shape, widthMm);
    }
    if (why.isEmpty()) {
      draw(shape, widthMm);
      if (shape.repaired()) {
        repaired.add(feature.label());
      }
    } else {
      skipped.add(new Zone.Skipped(feature.label(), why));
      swapped += why.equals(OUTSIDE) && reachesSwapped(map, feature.geometry()) ? 1 : 0;
    }
  }

  /** Full width of a line on the panel; 0 when it has none. */
  private double widthMm(MapFeature feature) {
    double wanted = asked(feature);
    if (spec.keep() == ZoneSpec.Keep.WIDEN && wanted > 0 && wanted < narrow.cuttableMm()) {
      widened++;
      return narrow.cuttableMm();
    }
    return wanted;
  }

  private double asked(MapFeature feature) {
    LineWidth width = spec.width();
    if (width.by() != null) {
      ZoneSpec.WidthBy by = width.by();
      Double number = PropertyPath.number(PropertyPath.value(feature.properties(), by.property()));
      Double found =
          number == null || number <= 0 ? by.otherwise() : Double.valueOf(number * by.times());
      return found == null ? 0 : by.ground() ? found / frame.metresPerMm() : found;
    }
    if (width.mm() != null) {
      return width.mm();
    }
    return width.groundM() == null ? 0 : width.groundM() / frame.metresPerMm();
  }

  private String tooNarrow(FeatureShape shape, double widthMm) {
    boolean fits = widthMm >= smallestToolMm && !shape.lines().isEmpty();
    return spec.keep() == ZoneSpec.Keep.DROP && !fits && narrow.vanish(shape.areas())
        ? "narrower than the smallest cutter"
        : "";
  }

  @SuppressWarnings("ReferenceEquality") // the same list comes back when nothing was widened
  private void draw(FeatureShape shape, double widthMm) {
    used++;
    List<Geometry> shown = shape.areas();
    if (spec.keep() == ZoneSpec.Keep.WIDEN) {
      List<Geometry> wide = narrow.widened(shown);
      widened += wide != shown ? 1 : 0;
      shown = wide;
    }
    shown.forEach(areas::add);
    for (Coordinate[] line : shape.lines()) {
      areas.add(line, widthMm);
    }
  }

  private static boolean reachesSwapped(GroundMap map, Geometry geometry) {
    return geometry != null && map.reachesSwapped(geometry.getEnvelopeInternal());
  }

  /** The zone as gathered so far. */
  Zone zone() {
    return new Zone(spec, areas.union(MapShapes.FACTORY), used, List.copyOf(skipped));
  }

  /** How many features the zone picked. */
  int taken() {
    return taken;
  }

  /** How many of those outside would lie on the panel with x and y swapped. */
  int swapped() {
    return swapped;
  }

  /** How many were widened to what the smallest cutter needs. */
  int widened() {
    return widened;
  }

  /** Labels of features whose polygons had to be repaired. */
  List<String> repaired() {
    return repaired;
  }
}
