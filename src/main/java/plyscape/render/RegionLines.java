package plyscape.render;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.coverage.CoverageSimplifier;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.PolygonExtracter;
import plyscape.region.Tiling;
import plyscape.render.layer.SvgPath;

/**
 * Lines between the regions for a small drawing: SVG path data, mm of the panel, Y down. Within the
 * tolerance of the exact outlines; parts that would be specks are left out.
 */
public final class RegionLines {

  /** Parts of less than so many squares of the tolerance are specks. */
  private static final double SPECK = 30;

  private RegionLines() {}

  /** The data; {@code heightMm} is the panel's, at which Y down starts. */
  public static String data(Tiling tiling, double heightMm, double toleranceMm) {
    Geometry[] exposed = tiling.exposed().values().toArray(new Geometry[0]);
    List<Polygon> kept = new ArrayList<>();
    for (Geometry area : CoverageSimplifier.simplify(exposed, toleranceMm)) {
      for (Object part : PolygonExtracter.getPolygons(area)) {
        Polygon polygon = (Polygon) part;
        if (polygon.getArea() > SPECK * toleranceMm * toleranceMm) {
          kept.add(polygon);
        }
      }
    }
    MultiPolygon all = exposed[0].getFactory().createMultiPolygon(kept.toArray(new Polygon[0]));
    return SvgPath.data(all, heightMm);
  }
}
