package plyscape.toolpath.motion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import plyscape.grid.Box;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.PocketEdges;
import plyscape.toolpath.lattice.Stock;

/** Ways at depth past a corner of a wall, held against JTS's distances. */
class ClearwayTest {

  private static final double RADIUS = 0.75;
  private static final GeometryFactory SHAPES = new GeometryFactory();

  /** An L: the wall has a corner at (5, 5) that juts into the pocket. */
  private static final Polygon POCKET =
      SHAPES.createPolygon(
          new Coordinate[] {
            new Coordinate(0, 0),
            new Coordinate(5, 0),
            new Coordinate(5, 5),
            new Coordinate(10, 5),
            new Coordinate(10, 10),
            new Coordinate(0, 10),
            new Coordinate(0, 0)
          });

  private static Clearway way() {
    Lattice lattice = Lattice.over(new Box(0, 0, 10, 10), RADIUS);
    MultiPolygon pocket = SHAPES.createMultiPolygon(new Polygon[] {POCKET});
    DistanceField field = new DistanceField(new PocketEdges(pocket), lattice);
    return new Clearway(field, new Stock(lattice), RADIUS, 1);
  }

  @Test
  void openWayIsStraight() {
    assertEquals(2, way().round(2, 2, 4, 8).length);
  }

  @Test
  void wayPastACornerIsLaidAside() {
    // Both ends on the arc that the cutter's centre runs on round the corner.
    double[][] points = way().round(5 - RADIUS, 5, 5, 5 + RADIUS);
    assertEquals(3, points.length);
    LineString line =
        SHAPES.createLineString(
            new Coordinate[] {
              new Coordinate(points[0][0], points[0][1]),
              new Coordinate(points[1][0], points[1][1]),
              new Coordinate(points[2][0], points[2][1])
            });
    double off = POCKET.getExteriorRing().distance(line);
    assertTrue(off > RADIUS - 0.01, "comes as near to the wall as " + off);
    assertTrue(line.getLength() < 3 * RADIUS, "shorter than round a square");
  }

  @Test
  void longWayPastACornerIsNotOpen() {
    assertNull(way().round(4, 3, 7, 6));
  }
}
