package plyscape.region;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.coverage.CoverageValidator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;

/**
 * What src/contract.md, section 4, says of every tiling, checked by JTS's own validators and not by
 * the code that made it.
 */
final class TilingChecks {

  private TilingChecks() {}

  static void check(Tiling tiling, String hint) {
    double area = 0;
    List<Geometry> polygons = new ArrayList<>();
    for (Region region : tiling.regions()) {
      assertTrue(region.polygon().isValid(), () -> hint + ": invalid region " + region);
      area += region.polygon().getArea();
      polygons.add(region.polygon());
    }
    assertEquals(
        tiling.carved().area(), area, 1e-6 * tiling.carved().area(), hint + ": areas don't add up");
    Geometry[] coverage = polygons.toArray(new Geometry[0]);
    assertTrue(
        !CoverageValidator.hasInvalidResult(CoverageValidator.validate(coverage)),
        hint + ": overlap or gap");
    double below = 0;
    for (int k = tiling.pockets().lastKey(); k >= 1; k--) {
      MultiPolygon pocket = tiling.pockets().get(k);
      assertTrue(pocket.isValid(), hint + ": invalid pocket " + k);
      MultiPolygon shown = tiling.exposed().get(k);
      if (shown != null) {
        assertTrue(shown.isValid(), hint + ": invalid exposed part " + k);
        below += shown.getArea();
      }
      assertEquals(below, pocket.getArea(), 1e-6 * tiling.carved().area(), hint + ": pocket " + k);
      for (Coordinate c : pocket.getCoordinates()) {
        assertEquals(Math.rint(c.x * 1000) / 1000, c.x, 0, hint + ": off the grid");
        assertEquals(Math.rint(c.y * 1000) / 1000, c.y, 0, hint + ": off the grid");
      }
    }
    assertEquals(
        tiling.carved().area(),
        tiling.pockets().get(1).getArea(),
        1e-6 * tiling.carved().area(),
        hint);
  }

  /**
   * Whether each pocket lies in the one above: nothing of it is left when the one above is taken
   * off.
   */
  static void checkNesting(Tiling tiling, String hint) {
    for (int k = 2; k <= tiling.pockets().lastKey(); k++) {
      Geometry sticksOut = tiling.pockets().get(k).difference(tiling.pockets().get(k - 1));
      assertEquals(0, sticksOut.getArea(), 1e-9, hint + ": pocket " + k + " sticks out");
    }
  }

  static Polygon onlyShownPolygon(Tiling tiling, int ply) {
    MultiPolygon shown = tiling.exposed().get(ply);
    assertEquals(1, shown.getNumGeometries());
    return (Polygon) shown.getGeometryN(0);
  }
}
