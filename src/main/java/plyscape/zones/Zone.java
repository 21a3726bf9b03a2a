package plyscape.zones;

import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.geom.util.PolygonExtracter;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import plyscape.grid.Box;
import plyscape.job.ZoneSpec;

/**
 * A zone on the panel. Immutable.
 *
 * @param spec what was asked for
 * @param area polygonal, in panel mm, clipped to the carved area; may be empty
 * @param features how many features were used
 * @param skipped features left out, with why
 */
public record Zone(ZoneSpec spec, Geometry area, int features, List<Skipped> skipped) {

  /**
   * A part of it on a panel of its own; features, used and skipped, stay the whole's.
   *
   * @param part of the carved area, mm
   * @param own where that part lies on its own panel, mm; of the same size
   */
  public Zone part(Box part, Box own) {
    Geometry box =
        area.getFactory()
            .toGeometry(new Envelope(part.minX(), part.maxX(), part.minY(), part.maxY()));
    Geometry cut = OverlayNGRobust.overlay(area, box, OverlayNG.INTERSECTION);
    List<?> polygons = PolygonExtracter.getPolygons(cut);
    MultiPolygon inside = area.getFactory().createMultiPolygon(polygons.toArray(new Polygon[0]));
    AffineTransformation move =
        AffineTransformation.translationInstance(
            own.minX() - part.minX(), own.minY() - part.minY());
    return new Zone(spec, move.transform(inside), features, skipped);
  }

  /**
   * A feature left out.
   *
   * @param feature its id, name or index
   * @param why a short reason
   */
  public record Skipped(String feature, String why) {}
}
