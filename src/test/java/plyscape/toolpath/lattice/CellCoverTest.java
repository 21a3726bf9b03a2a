package plyscape.toolpath.lattice;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Point;
import plyscape.grid.Box;

class CellCoverTest {

  private static final Lattice LATTICE = Lattice.over(new Box(0, 0, 5, 5), 0.75);

  private final GeometryFactory factory = new GeometryFactory();
  private final CellCover cover = new CellCover(LATTICE);

  /** Distances by JTS, which shares no code with the chords. */
  @Test
  void partsWhoseCentresLieWithinTheRadiusOfTheWayAreCovered() {
    Random random = new Random(7);
    for (int trial = 0; trial < 60; trial++) {
      double ax = 5 * random.nextDouble();
      double ay = 5 * random.nextDouble();
      double bx = trial % 3 == 0 ? ax : ax + random.nextGaussian();
      double by = trial % 4 == 0 ? ay : ay + random.nextGaussian();
      double radius = 0.05 + 1.5 * random.nextDouble();
      LineString way =
          factory.createLineString(
              new Coordinate[] {new Coordinate(ax, ay), new Coordinate(bx, by)});
      cover.set(ax, ay, bx, by, radius);
      for (int row = 0; row < LATTICE.rows(); row++) {
        for (int column = 0; column < LATTICE.columns(); column++) {
          assertEquals(within(way, radius, column, row), cover.of(column, row));
        }
      }
    }
  }

  private long within(LineString way, double radius, int column, int row) {
    double part = LATTICE.stepMm() / CellCover.SIDE;
    double first = -0.5 * (CellCover.SIDE - 1) * part;
    long parts = 0;
    for (int k = 0; k < CellCover.SIDE * CellCover.SIDE; k++) {
      double x = LATTICE.x(column) + first + k % CellCover.SIDE * part;
      double y = LATTICE.y(row) + first + k / CellCover.SIDE * part;
      Point centre = factory.createPoint(new Coordinate(x, y));
      parts |= way.distance(centre) <= radius ? 1L << k : 0;
    }
    return parts;
  }

  @Test
  void aDiskWithoutARadiusCoversNothing() {
    cover.set(1, 1, 3, 3, -0.1);
    assertEquals(0, cover.of(10, 10));
  }
}
