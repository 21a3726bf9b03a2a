package plyscape.zones;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.operation.overlayng.LineLimiter;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.operation.overlayng.RingClipper;
import plyscape.grid.Box;
import plyscape.zones.map.MapRepair;
import plyscape.zones.map.MapShapes;

/**
 * Turns one feature into polygons, repaired where needed and clipped, and into lines to be widened,
 * on the panel.
 */
final class FeatureShape {

  private static final GeometryFactory FACTORY = MapShapes.FACTORY;

  private final GroundMap map;
  private final Envelope carved;
  private final Geometry carvedArea;
  private final double widthMm;
  private final List<Geometry> areas = new ArrayList<>();
  private final List<Coordinate[]> lines = new ArrayList<>();
  private boolean repaired;
  private boolean unmappable;
  private boolean lineWithoutWidth;
  private boolean point;
  private boolean outside;
  private boolean scribble;

  /**
   * Prepares for one feature.
   *
   * @param widthMm full width of lines on the panel, or 0 when they have none
   */
  FeatureShape(GroundMap map, double widthMm) {
    this.map = map;
    this.widthMm = widthMm;
    Box box = map.frame().panel();
    carved = new Envelope(box.minX(), box.maxX(), box.minY(), box.maxY());
    carvedArea = FACTORY.toGeometry(carved);
  }

  /** Adds a geometry in the file's coordinates. */
  @SuppressWarnings("ReferenceEquality") // a single geometry gives itself as its first part
  void add(Geometry geometry) {
    if (geometry.isEmpty()) {
      return;
    }
    if (geometry instanceof Polygon || geometry instanceof LineString) {
      for (double turn : map.turns(geometry.getEnvelopeInternal())) {
        Geometry here =
            turn == 0
                ? geometry
                : AffineTransformation.translationInstance(turn, 0).transform(geometry);
        if (here instanceof Polygon polygon) {
          addPolygon(polygon);
        } else {
          addLine((LineString) here);
        }
      }
    } else if (geometry.getNumGeometries() > 1 || geometry.getGeometryN(0) != geometry) {
      for (int i = 0; i < geometry.getNumGeometries(); i++) {
        add(geometry.getGeometryN(i));
      }
    } else {
      point = true;
    }
  }

  private void addPolygon(Polygon polygon) {
    if (!polygon.getEnvelopeInternal().intersects(map.reach())) {
      outside = true;
      return;
    }
    LinearRing shell = ring(polygon.getExteriorRing());
    if (shell == null) {
      return;
    }
    List<LinearRing> holes = new ArrayList<>();
    for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
      LinearRing hole = ring(polygon.getInteriorRingN(i));
      if (hole != null) {
        holes.add(hole);
      }
    }
    Geometry area = FACTORY.createPolygon(shell, holes.toArray(new LinearRing[0]));
    if (!area.isValid()) {
      // A ring that was cut at the reach may run along it twice: that is ours, not the file's.
      repaired |= map.reach().contains(polygon.getEnvelopeInternal());
      if (MapRepair.crossings(area) > MapRepair.MOST_CROSSINGS) {
        scribble = true;
        return;
      }
      area = GeometryFixer.fix(area);
    }
    addArea(area);
  }

  /** A ring on the panel; null when nothing of it is left or it can't be mapped. */
  private LinearRing ring(LinearRing ring) {
    Coordinate[] points = ring.getCoordinates();
    if (!map.reach().contains(ring.getEnvelopeInternal())) {
      points = new RingClipper(map.reach()).clip(points);
    }
    if (points.length < 4) {
      return null;
    }
    Coordinate[] panel = map.toPanel(points);
    if (panel == null) {
      unmappable = true;
      return null;
    }
    panel[panel.length - 1] = panel[0].copy();
    return FACTORY.createLinearRing(panel);
  }

  private void addLine(LineString line) {
    if (widthMm <= 0) {
      lineWithoutWidth = true;
      return;
    }
    if (!line.getEnvelopeInternal().intersects(map.reach())) {
      outside = true;
      return;
    }
    List<Coordinate[]> sections =
        map.reach().contains(line.getEnvelopeInternal())
            ? java.util.Collections.singletonList(line.getCoordinates())
            : new LineLimiter(map.reach()).limit(line.getCoordinates());
    for (Coordinate[] section : sections) {
      Coordinate[] panel = map.toPanel(section);
      if (panel == null) {
        unmappable = true;
      } else {
        widen(panel);
      }
    }
  }

  private void widen(Coordinate[] panel) {
    LineString line = FACTORY.createLineString(panel);
    Envelope near = new Envelope(carved);
    near.expandBy(widthMm / 2);
    if (!line.getEnvelopeInternal().intersects(near) || line.distance(carvedArea) >= widthMm / 2) {
      outside = true;
      return;
    }
    // Sections go on so far beyond the edge that their round ends don't show.
    near.expandBy(widthMm / 2);
    if (near.contains(line.getEnvelopeInternal())) {
      lines.add(panel);
    } else {
      lines.addAll(new LineLimiter(near).limit(panel));
    }
  }

  private void addArea(Geometry area) {
    Geometry clipped =
        carved.contains(area.getEnvelopeInternal())
            ? area
            : carved.intersects(area.getEnvelopeInternal())
                ? OverlayNGRobust.overlay(area, carvedArea, OverlayNG.INTERSECTION)
                : FACTORY.createPolygon();
    boolean some = false;
    for (int i = 0; i < clipped.getNumGeometries(); i++) {
      if (clipped.getGeometryN(i) instanceof Polygon polygon && !polygon.isEmpty()) {
        areas.add(polygon);
        some = true;
      }
    }
    outside |= !some;
  }

  /** Polygons on the panel, mm, within the carved area; they may overlap. */
  List<Geometry> areas() {
    return areas;
  }

  /**
   * Lines on the panel, mm, each to be widened to the full width; they may leave the carved area.
   */
  List<Coordinate[]> lines() {
    return lines;
  }

  /** Whether nothing came of the feature. */
  boolean isEmpty() {
    return areas.isEmpty() && lines.isEmpty();
  }

  /** Whether a polygon of the file had to be repaired. */
  boolean repaired() {
    return repaired;
  }

  /** Why nothing came of the feature. */
  String why() {
    if (lineWithoutWidth) {
      return "a line, and the zone has no width";
    }
    if (scribble) {
      return "crosses itself more than " + MapRepair.MOST_CROSSINGS + " times";
    }
    if (unmappable) {
      return "can't be projected to the terrain's CRS";
    }
    if (outside) {
      return "outside the carved area";
    }
    return point ? "a point" : "nothing to draw";
  }
}
