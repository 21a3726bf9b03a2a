package plyscape.toolpath.order;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import plyscape.grid.Box;
import plyscape.machine.Tool;
import plyscape.toolpath.PathTrial;
import plyscape.toolpath.RandomPockets;
import plyscape.toolpath.cover.StepWork;
import plyscape.toolpath.depth.DepthStep;
import plyscape.toolpath.lattice.DistanceField;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.PocketEdges;
import plyscape.toolpath.lattice.Ring;
import plyscape.toolpath.ring.LevelField;
import plyscape.toolpath.ring.Piece;
import plyscape.toolpath.ring.RingTracer;
import plyscape.toolpath.task.PocketLevel;

/** Small islands stand until all around them has been cut. */
class IslandsTest {

  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final Lattice LATTICE = Lattice.over(new Box(2, 2, 92, 72), 3);
  private static final Tool TOOL = PathTrial.tool(6, 1800, 2, 0.45);

  private static Geometry box(double x0, double y0, double x1, double y1) {
    return FACTORY.toGeometry(new Envelope(x0, x1, y0, y1));
  }

  /** A pocket of 80 x 60 with an island of 5 x 5 at (32.5, 37.5) and one of 16 x 16. */
  private static LevelField field() {
    var shape =
        RandomPockets.multi(
            box(6, 6, 86, 66).difference(box(30, 35, 35, 40)).difference(box(56, 24, 72, 40)));
    return new LevelField(
        new PocketLevel(2, 1.2, shape, shape, 0),
        new DistanceField(new PocketEdges(shape), LATTICE));
  }

  private static List<Piece> pieces(LevelField field) {
    List<Ring> rings = new ArrayList<>(field.wallRings(new RingTracer(LATTICE), 3, 0));
    rings.addAll(
        field.innerRings(
            new RingTracer(LATTICE),
            field.field().distance,
            new LevelField.Spacing(3, TOOL.stepoverMm(), TOOL.stepoverMm()),
            null));
    List<Piece> pieces = new ArrayList<>();
    for (Ring ring : rings) {
      pieces.add(new Piece(ring.index(), ring.closed(), ring.x(), ring.y()));
    }
    return pieces;
  }

  private static double nearest(Piece piece, double x, double y) {
    int i = piece.nearest(x, y);
    return Math.hypot(piece.x()[i] - x, piece.y()[i] - y);
  }

  @Test
  void onlyTheRingAroundTheSmallIsland_isTold_eitherWayRound() {
    LevelField field = field();
    List<Piece> small = new ArrayList<>();
    for (Piece piece : pieces(field)) {
      boolean told = Islands.small(piece, field.field(), 6);
      assertEquals(told, Islands.small(piece.reversed(), field.field(), 6));
      if (told) {
        small.add(piece);
      }
    }
    assertEquals(1, small.size());
    assertTrue(nearest(small.get(0), 32.5, 37.5) < 7);
  }

  @Test
  void smallIsland_isFreedAfterAllAroundIt() {
    LevelField field = field();
    var step = new DepthStep(0, 1.2, true, 0);
    List<Piece> order = new ArrayList<>();
    new PieceOrder(
            List.of(new StepWork(step, field, pieces(field), TOOL.stepoverMm())),
            TOOL,
            PathTrial.MACHINE)
        .run(6, 6, (work, piece) -> order.add(piece));
    int island = -1;
    int last = -1;
    for (int p = 0; p < order.size(); p++) {
      if (Islands.small(order.get(p), field.field(), 6)) {
        island = p;
      } else if (nearest(order.get(p), 32.5, 37.5) < 2.5 + 3 + 6) {
        last = p;
      }
    }
    assertTrue(island >= 0 && last >= 0 && island > last, island + " and " + last);
  }
}
