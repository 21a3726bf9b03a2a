package plyscape.toolpath.bound;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import plyscape.grid.Box;
import plyscape.machine.Tool;
import plyscape.machine.Workshop;
import plyscape.toolpath.task.PocketLevel;

class CutterSharesTest {

  private static final Box CARVED = new Box(6, 6, 106, 86);

  private static PocketLevel level(int ply, double depth, double x, double y, double w, double h) {
    GeometryFactory factory = new GeometryFactory();
    MultiPolygon pocket =
        factory.createMultiPolygon(
            new Polygon[] {(Polygon) factory.toGeometry(new Envelope(x, x + w, y, y + h))});
    return new PocketLevel(ply, depth, pocket, pocket);
  }

  private static Tool tool(double diameter) {
    return Workshop.endMill(diameter, 12);
  }

  /**
   * Opening of a 40 x 30 rectangle by a disk of radius 3: 1192.2743 mm2; of the corners' 7.7257 the
   * small cutter leaves (4 - pi) r2 = 0.4829 (references.md section 6).
   */
  @Test
  void rectangle_cornersAreTheSmallOnes() {
    CutterShares shares =
        CutterShares.of(
            List.of(level(2, 1.5, 20, 20, 40, 30)), List.of(tool(1.5), tool(6)), CARVED, 0.1);
    double[] both = shares.seconds(new boolean[] {true, true});
    assertEquals(1192.2743 / (Math.sqrt(0.45) * 6 * 30), both[1], 0.004 * both[1]);
    assertEquals((7.7257 - 0.4829) / (Math.sqrt(0.45) * 1.5 * 30), both[0], 0.1 * both[0]);
    double[] small = shares.seconds(new boolean[] {true, false});
    assertEquals(1199.5171 / (Math.sqrt(0.45) * 1.5 * 30), small[0], 0.004 * small[0]);
    assertEquals(0, small[1]);
  }

  /** Whatever cutters there are, their shares add up to the bound with them. */
  @Test
  void anyChoice_addsUpToItsBound() {
    List<PocketLevel> levels =
        List.of(
            level(2, 1.4, 10, 10, 90, 70),
            level(3, 2.9, 20, 15, 60, 50),
            level(4, 5.2, 30, 20, 5, 40));
    List<Tool> tools = List.of(tool(8), tool(1.5), tool(3), tool(6));
    CutterShares shares = CutterShares.of(levels, tools, CARVED, 0.25);
    for (int choice = 0; choice < 16; choice++) {
      boolean[] chosen = new boolean[4];
      for (int t = 0; t < 4; t++) {
        chosen[t] = (choice >> t & 1) == 1;
      }
      List<Tool> some = IntStream.range(0, 4).filter(t -> chosen[t]).mapToObj(tools::get).toList();
      double bound = LowerBound.seconds(levels, some, CARVED, 0.25);
      double sum = Arrays.stream(shares.seconds(chosen)).sum();
      assertEquals(bound, sum, 1e-9 * bound, "choice " + choice);
    }
  }

  @Test
  void nothingWithinReach_costsNothing() {
    CutterShares shares =
        CutterShares.of(List.of(level(2, 1.4, 10, 10, 2, 70)), List.of(tool(3)), CARVED, 0.2);
    assertArrayEquals(new double[] {0}, shares.seconds(new boolean[] {true}));
  }
}
