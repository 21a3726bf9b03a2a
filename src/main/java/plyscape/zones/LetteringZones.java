package plyscape.zones;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.PolygonExtracter;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import plyscape.fault.InputFault;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.GroundFrame;
import plyscape.job.LetterStyle;
import plyscape.job.LetteringSpec;
import plyscape.job.LineWidth;
import plyscape.job.MapPick;
import plyscape.job.ZoneSpec;
import plyscape.lettering.Align;
import plyscape.lettering.Legibility;
import plyscape.lettering.MapSigns;
import plyscape.lettering.NameLayout;
import plyscape.lettering.Placing;
import plyscape.lettering.StrokeTypeface;
import plyscape.lettering.TrueTypeface;
import plyscape.lettering.Typeface;
import plyscape.text.Numbers;
import plyscape.text.Template;
import plyscape.zones.map.MapFeature;
import plyscape.zones.map.MapFile;
import plyscape.zones.map.MapShapes;

/**
 * Letters, scale bar and north arrow as zones on top of all others. What can't be cut so that it
 * can be read is warned of, with the height from which it could; names without room are left out
 * and listed.
 */
public final class LetteringZones {

  /** Strokes are so much wider than the smallest cutter, mm: it must get in. */
  private static final double ROOM_MM = 0.05;

  private final GroundFrame frame;
  private final double cutterMm;
  private final Warnings warnings;
  private final Map<Path, Typeface> fonts = new HashMap<>();
  private final Typeface strokes;

  private LetteringZones(GroundFrame frame, double cutterMm, Warnings warnings) {
    this.frame = frame;
    this.cutterMm = cutterMm;
    this.warnings = warnings;
    strokes = new StrokeTypeface(cutterMm + ROOM_MM);
  }

  /**
   * A zone a text, a zone for all names of a map, one for scale bar and arrow each.
   *
   * @param cutterMm diameter of the smallest cutter
   * @throws InputFault if something would stand outside the carved area
   */
  public static List<Zone> of(
      LetteringSpec spec, GroundFrame frame, double cutterMm, Warnings warnings) {
    return spec.isEmpty() ? List.of() : new LetteringZones(frame, cutterMm, warnings).all(spec);
  }

  private List<Zone> all(LetteringSpec spec) {
    List<Zone> zones = new ArrayList<>();
    spec.names().forEach(names -> zones.add(names(names)));
    for (LetteringSpec.Text text : spec.texts()) {
      Typeface face = face(text.style());
      check(text.text(), text.style(), face);
      Geometry line = face.line(text.text(), text.style().heightMm());
      Placing way =
          new Placing(
              text.at().x(),
              text.at().y(),
              Align.valueOf(text.align().name()),
              text.angleDegrees());
      zones.add(zone("\"" + text.text() + "\"", text.style(), way.of(line), text.at()));
    }
    if (spec.scaleBar() != null) {
      zones.add(scaleBar(spec.scaleBar()));
    }
    if (spec.north() != null) {
      zones.add(north(spec.north()));
    }
    return zones;
  }

  private Typeface face(LetterStyle style) {
    return style.font() == null ? strokes : fonts.computeIfAbsent(style.font(), TrueTypeface::of);
  }

  private Zone scaleBar(LetteringSpec.ScaleBar bar) {
    Typeface face = face(bar.style());
    double lengthMm = bar.lengthM() / frame.metresPerMm();
    Geometry drawn =
        MapSigns.scaleBar(
            lengthMm, bar.lengthM(), cutterMm + ROOM_MM, face, bar.style().heightMm());
    Placing way = new Placing(bar.at().x(), bar.at().y(), Align.LEFT, 0);
    return zone("scale bar", bar.style(), way.of(drawn), bar.at());
  }

  private Zone north(LetteringSpec.North north) {
    Geometry drawn =
        MapSigns.northArrow(north.style().heightMm(), face(north.style()), frame.turn().degrees());
    Placing way = new Placing(north.at().x(), north.at().y(), Align.LEFT, 0);
    return zone("north arrow", north.style(), way.of(drawn), north.at());
  }

  private Zone zone(String name, LetterStyle style, Geometry area, LetteringSpec.Spot at) {
    Box carved = frame.panel();
    Envelope box = area.getEnvelopeInternal();
    if (!carved.contains(box.getMinX(), box.getMinY())
        || !carved.contains(box.getMaxX(), box.getMaxY())) {
      throw new InputFault(
          at.place(),
          Template.fill(
              "%s would reach from %.2f, %.2f to %.2f, %.2f mm, beyond the carved area",
              name, box.getMinX(), box.getMinY(), box.getMaxX(), box.getMaxY()),
          Template.fill(
              "move it or make it smaller: the carved area is from %.2f, %.2f to %.2f, %.2f mm",
              carved.minX(), carved.minY(), carved.maxX(), carved.maxY()));
    }
    return new Zone(
        spec(name, style, new MapPick(Path.of(""), "", new TreeMap<>())),
        multi(area),
        1,
        List.of());
  }

  private static ZoneSpec spec(String name, LetterStyle style, MapPick map) {
    return new ZoneSpec(
        name, map, style.plyNumber(), style.sink(), LineWidth.NONE, null, ZoneSpec.Keep.MERGE);
  }

  private static MultiPolygon multi(Geometry area) {
    List<?> parts = PolygonExtracter.getPolygons(area);
    return MapShapes.FACTORY.createMultiPolygon(parts.toArray(new Polygon[0]));
  }

  private Zone names(LetteringSpec.Names names) {
    ZoneSpec spec = spec("names " + names.name(), names.style(), names.map());
    ZoneMaps maps = new ZoneMaps(List.of(spec), frame, file -> null, warnings);
    MapFile file = maps.file(spec);
    FeatureFilter filter = new FeatureFilter(spec.where());
    Typeface face = face(names.style());
    NameLayout layout = new NameLayout(frame.panel(), cutterMm);
    List<Zone.Skipped> skipped = new ArrayList<>();
    List<Geometry> placed = new ArrayList<>();
    TreeSet<String> seen = new TreeSet<>();
    for (MapFeature feature : file.features()) {
      if (!filter.takes(feature.properties())) {
        continue;
      }
      Optional<String> name = nameOf(feature, names.property());
      Optional<Coordinate> at = placeOf(feature, maps.way(spec, file, feature.crs()));
      if (name.isEmpty() || at.isEmpty()) {
        skipped.add(
            new Zone.Skipped(
                name.orElse(feature.label()),
                name.isEmpty() ? "no " + names.property() : "not on the panel"));
        continue;
      }
      Geometry line = face.line(name.get(), names.style().heightMm());
      Optional<Geometry> area = layout.place(line, at.get().x, at.get().y, names.offsetMm());
      if (area.isPresent()) {
        placed.add(area.get());
        seen.add(name.get());
      } else {
        skipped.add(new Zone.Skipped(name.get(), "no room"));
      }
    }
    if (!seen.isEmpty()) {
      check(String.join(" ", seen), names.style(), face);
    }
    warnLeftOut(spec.name(), skipped);
    Geometry all =
        placed.isEmpty() ? MapShapes.FACTORY.createMultiPolygon() : UnaryUnionOp.union(placed);
    return new Zone(spec, multi(all), placed.size(), skipped);
  }

  private static Optional<String> nameOf(MapFeature feature, String property) {
    Object value = feature.properties().get(property);
    if (value instanceof Double number) {
      return Optional.of(Numbers.trimmed(number, 6));
    }
    return value == null || value.toString().isBlank()
        ? Optional.empty()
        : Optional.of(value.toString().strip());
  }

  /** Where a feature lies on the panel: its point, or a point inside it. */
  private Optional<Coordinate> placeOf(MapFeature feature, GroundMap way) {
    if (feature.geometry() == null || feature.geometry().isEmpty()) {
      return Optional.empty();
    }
    Coordinate point = feature.geometry().getInteriorPoint().getCoordinate();
    Coordinate[] panel = way.toPanel(new Coordinate[] {point});
    return panel == null || !frame.panel().contains(panel[0].x, panel[0].y)
        ? Optional.empty()
        : Optional.of(panel[0]);
  }

  private void warnLeftOut(String zone, List<Zone.Skipped> skipped) {
    List<String> noRoom =
        skipped.stream().filter(s -> s.why().equals("no room")).map(Zone.Skipped::feature).toList();
    if (!noRoom.isEmpty()) {
      warnings.add(
          "names-left-out",
          noRoom.size()
              + (noRoom.size() == 1 ? " name has" : " names have")
              + " no room beside the others and off the rim: "
              + String.join(", ", noRoom.subList(0, Math.min(10, noRoom.size())))
              + (noRoom.size() > 10 ? " ..." : "")
              + "; a smaller height or fewer names, by where, would make room",
          "zone " + zone);
    }
  }

  private void check(String text, LetterStyle style, Typeface face) {
    String lacking = face.lacking(text);
    if (!lacking.isEmpty()) {
      warnings.add(
          "letters-missing",
          "no shape for " + lacking + (style.font() == null ? "; a font file may have them" : ""),
          "lettering \"" + text + "\"");
    }
    Legibility legibility = new Legibility(face, cutterMm);
    if (!legibility.readable(text, style.heightMm())) {
      warnings.add(
          "lettering-small",
          Template.fill(
              "at a height of %.1f mm stems or counters are narrower than the smallest cutter, %.2f"
                  + " mm: from %.1f mm on it could be read, or with a thinner cutter",
              style.heightMm(), cutterMm, legibility.neededMm(text)),
          "lettering \"" + text + "\"");
    }
  }
}
