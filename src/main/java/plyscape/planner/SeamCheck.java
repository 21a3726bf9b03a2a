package plyscape.planner;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import plyscape.fault.Warning;
import plyscape.grid.Box;
import plyscape.plan.Landscape;
import plyscape.region.Region;
import plyscape.region.Tiling;
import plyscape.text.Template;

/**
 * Finds what a seam leaves of a region on one panel as a strip that no cutter reaches: the whole's
 * regions are all wide enough, their pieces at a seam needn't be. Nothing is given away there, so
 * that both sides of the seam still agree.
 */
final class SeamCheck {

  /**
   * A cutter of exactly the width of a strip still counts as reaching it, in spite of chords and
   * rounding.
   */
  private static final double SLACK = 0.98;

  private SeamCheck() {}

  /**
   * A warning with code {@code seam-sliver}, or none.
   *
   * @param tile regions of one panel
   * @param smallestToolMm diameter
   */
  static List<Warning> of(Landscape tile, double smallestToolMm) {
    Tiling tiling = tile.tiling();
    double radius = SLACK * smallestToolMm / 2;
    int count = 0;
    double area = 0;
    List<Geometry> largest = new ArrayList<>();
    for (Region region : tiling.regions()) {
      if (tile.depths().of(region.plyNumber()).targetMm() > 0
          && touchesEdge(region.polygon().getEnvelopeInternal(), tiling.carved())
          && region.polygon().buffer(-radius).isEmpty()
          && unreachable(region, tiling, radius)) {
        count++;
        area += region.polygon().getArea();
        if (largest.isEmpty() || region.polygon().getArea() > largest.get(0).getArea()) {
          largest = List.of(region.polygon());
        }
      }
    }
    if (count == 0) {
      return List.of();
    }
    Envelope place = largest.get(0).getEnvelopeInternal();
    return List.of(
        new Warning(
            "seam-sliver",
            Template.fill(
                "%d %s beside a seam, %.2f mm2 in all, narrower than the smallest cutter, which"
                    + " stays uncut; move the seam with terrain.crop or another panel size",
                count, count == 1 ? "strip" : "strips", area),
            Template.fill("X%.2f Y%.2f", place.centre().x, place.centre().y)));
  }

  private static boolean touchesEdge(Envelope region, Box carved) {
    return region.getMinX() == carved.minX()
        || region.getMaxX() == carved.maxX()
        || region.getMinY() == carved.minY()
        || region.getMaxY() == carved.maxY();
  }

  /**
   * Whether the cutter, anywhere in the pocket, misses more than half of the region: a deeper
   * neighbour lends it room.
   */
  private static boolean unreachable(Region region, Tiling tiling, double radius) {
    Envelope near = new Envelope(region.polygon().getEnvelopeInternal());
    near.expandBy(4 * radius);
    Geometry window = region.polygon().getFactory().toGeometry(near);
    Geometry pocket =
        OverlayNGRobust.overlay(
            tiling.pockets().get(region.plyNumber()), window, OverlayNG.INTERSECTION);
    Geometry reached = pocket.buffer(-radius).buffer(radius);
    double left =
        OverlayNGRobust.overlay(region.polygon(), reached, OverlayNG.DIFFERENCE).getArea();
    return left > region.polygon().getArea() / 2;
  }
}
