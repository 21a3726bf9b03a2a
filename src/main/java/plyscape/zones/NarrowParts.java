package plyscape.zones;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import plyscape.grid.Box;
import plyscape.zones.map.MapShapes;

/** What of a shape a round cutter can't enter, and the shape made wide enough for it. */
final class NarrowParts {

  /** Wider than the cutter by this, mm: outlines are rounded and straightened by less. */
  private static final double SPARE_MM = 0.05;

  /** Leftovers below this, mm2, are corner fillets and don't count as narrow. */
  private static final double FILLET_MM2 = 0.2;

  /** Shapes are widened in this many equal steps, until they are wide enough. */
  private static final int STEPS = 4;

  private final double toolMm;
  private final Geometry carved;

  NarrowParts(double toolMm, Box panel) {
    this.toolMm = toolMm;
    carved =
        MapShapes.FACTORY.toGeometry(
            new Envelope(panel.minX(), panel.maxX(), panel.minY(), panel.maxY()));
  }

  /** Least width that can be cut, mm; 0 without a tool. */
  double cuttableMm() {
    return toolMm > 0 ? toolMm + SPARE_MM : 0;
  }

  /** Whether the cutter fits nowhere into any of the shapes. */
  boolean vanish(List<Geometry> shapes) {
    return toolMm > 0 && shapes.stream().allMatch(s -> buffer(s, -toolMm / 2).isEmpty());
  }

  /** The shapes, widened where they are too narrow; the same list when they are nowhere. */
  @SuppressWarnings(
      "ReferenceEquality") // whether it is still the one shape, not whether it is like it
  List<Geometry> widened(List<Geometry> shapes) {
    if (toolMm <= 0) {
      return shapes;
    }
    List<Geometry> out = new ArrayList<>();
    boolean changed = false;
    for (Geometry shape : shapes) {
      Geometry narrow = narrow(shape);
      Geometry wide = shape;
      for (int step = 1; step <= STEPS && !narrow.isEmpty(); step++) {
        // By an eighth of the tool on both sides a step: after the last, whatever was a line is as
        // wide as the tool.
        wide =
            OverlayNGRobust.overlay(
                shape, buffer(narrow(shape), cuttableMm() / 2 * step / STEPS), OverlayNG.UNION);
        narrow = narrow(wide);
      }
      changed |= wide != shape;
      out.add(
          wide == shape ? shape : OverlayNGRobust.overlay(wide, carved, OverlayNG.INTERSECTION));
    }
    return changed ? out : shapes;
  }

  private Geometry narrow(Geometry shape) {
    Geometry centres = buffer(shape, -toolMm / 2);
    Geometry rest =
        centres.isEmpty()
            ? shape
            : OverlayNGRobust.overlay(
                shape, buffer(centres, toolMm / 2 + SPARE_MM / 4), OverlayNG.DIFFERENCE);
    List<Polygon> parts = new ArrayList<>();
    for (int i = 0; i < rest.getNumGeometries(); i++) {
      if (rest.getGeometryN(i) instanceof Polygon polygon
          && (centres.isEmpty() || polygon.getArea() > FILLET_MM2)) {
        parts.add(polygon);
      }
    }
    return MapShapes.FACTORY.createMultiPolygon(parts.toArray(new Polygon[0]));
  }

  private static Geometry buffer(Geometry geometry, double distance) {
    return BufferOp.bufferOp(geometry, distance, 12);
  }
}
