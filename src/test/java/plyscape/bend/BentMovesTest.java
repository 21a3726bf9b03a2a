package plyscape.bend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import plyscape.fault.Place;
import plyscape.layup.Bottoms;
import plyscape.layup.CutAllowance;
import plyscape.layup.DepthModel;
import plyscape.layup.Depths;
import plyscape.layup.GlueLine;
import plyscape.layup.Layup;
import plyscape.layup.Measured;
import plyscape.layup.MeasuredPlace;
import plyscape.layup.Method;
import plyscape.layup.PanelPoint;
import plyscape.layup.Ply;
import plyscape.layup.Sanding;
import plyscape.layup.Top;
import plyscape.machine.ArcGeometry;
import plyscape.machine.Move;

class BentMovesTest {

  private static final CutAllowance CUT =
      new CutAllowance(0.1, Method.RSS, 0.03, new Sanding(0.1, 0.05), Top.LEAVE, 1);
  private static final double SAFE = 5;

  /** Every point of every move is within 0.005 mm of the bent depth, as written to 0.001 mm. */
  @Test
  void everyPoint_withinFiveMicrons() {
    for (int seed = 1; seed <= 12; seed++) {
      Random random = new Random(seed);
      Bend bend = bend(random, seed % 2 == 0);
      BentMoves bent = new BentMoves(bend, SAFE);
      List<Move> flat = path(random);
      double[] at = {0, 0, -SAFE};
      double[] lies = {0, 0, -SAFE};
      int arcs = 0;
      for (Move move : flat) {
        List<Move> pieces = bent.of(at[0], at[1], at[2], List.of(move));
        double gone = 0;
        double whole = length(at, move);
        for (Move piece : pieces) {
          double part = length(lies, piece);
          for (int i = 0; i <= 40; i++) {
            double[] p = point(lies, piece, i / 40.0);
            if (whole == 0 && i > 0 && i < 40) {
              continue; // straight up or down: only the ends count
            }
            double share = whole == 0 ? i / 40.0 : (gone + part * i / 40.0) / whole;
            double depth = at[2] + share * (move.depth() - at[2]);
            double off = p[2] - bent.belowMm(p[0], p[1], depth);
            assertTrue(Math.abs(off) <= 0.005, "seed " + seed + " off " + off + " " + piece);
          }
          gone += part;
          arcs += piece.isArc() ? 1 : 0;
          lies = new double[] {piece.x(), piece.y(), Math.rint(piece.depth() * 1000) / 1000};
        }
        at = new double[] {move.x(), move.y(), move.depth()};
      }
      assertTrue(arcs > 0);
    }
  }

  /** On a plane nothing is split: the change of Z is straight anyway. */
  @Test
  void plane_keepsLinesWhole_andSafeHeightLevel() {
    TopFace plane =
        TopMap.of(
                "t",
                List.of(
                    new TopReading(0, 0, 0, 1),
                    new TopReading(200, 0, 0.4, 2),
                    new TopReading(0, 200, -0.2, 3)),
                0)
            .face();
    Depths depths = depths(Measured.NOTHING);
    BentMoves bent = new BentMoves(Bend.of(depths, depths, plane), SAFE);
    List<Move> moves =
        List.of(Move.rapid(50, 50, -SAFE), Move.rapid(50, 50, 0.3), Move.line(100, 50, 0.3, 900));
    List<Move> out = bent.of(0, 0, -SAFE, moves);
    assertEquals(3, out.size());
    assertEquals(-SAFE, out.get(0).depth());
    assertEquals(0.3 - 0.05, out.get(1).depth(), 1e-12);
    assertEquals(0.3 - 0.15, out.get(2).depth(), 1e-12);
  }

  /** A depth in the middle of a ply is in the middle of that ply everywhere. */
  @Test
  void depthsFollowThePlies() {
    Measured measured =
        Measured.NOTHING.withPlaces(
            List.of(place(20, 20, 0.94, 3), place(220, 20, 1.0, 3), place(20, 220, 0.97, 3)));
    Depths depths = depths(measured);
    Bend bend = Bend.of(depths, depths, TopFace.FLAT);
    for (PanelPoint at : List.of(new PanelPoint(30, 200), new PanelPoint(210, 40))) {
      for (int ply = 2; ply <= 5; ply++) {
        assertEquals(
            depths.of(ply, at).targetMm(),
            bend.depthMm(at.xMm(), at.yMm(), depths.of(ply).targetMm()),
            1e-9);
      }
      double between = (depths.of(2).targetMm() + depths.of(3).targetMm()) / 2;
      assertEquals(
          (depths.of(2, at).targetMm() + depths.of(3, at).targetMm()) / 2,
          bend.depthMm(at.xMm(), at.yMm(), between),
          1e-9);
      assertEquals(-1, bend.depthMm(at.xMm(), at.yMm(), -1));
    }
    assertTrue(bend.stretch(240, 240) > 1.02 && bend.stretch(240, 240) < 1.1);
  }

  private static MeasuredPlace place(double x, double y, double share, int ply) {
    return new MeasuredPlace(
        new PanelPoint(x, y),
        new Bottoms(new TreeMap<>(Map.of(ply, share * (0.94 * ply - 0.04))), 0.01),
        "",
        Place.file("t"));
  }

  private static Depths depths(Measured measured) {
    List<Ply> plies = new ArrayList<>();
    for (int i = 1; i <= 5; i++) {
      plies.add(new Ply(i, "p" + i, 0, 0.9, 0.04, 0, ""));
    }
    return DepthModel.depths(
        new Layup("l", "", plies, new GlueLine(0.04, 0.01), measured, 0.08), CUT, true);
  }

  private static Bend bend(Random random, boolean grid) {
    List<TopReading> readings = new ArrayList<>();
    for (int i = 0; i < 25; i++) {
      double x = grid ? 10 + i % 5 * 55 : 240 * random.nextDouble();
      double y = grid ? 10 + i / 5 * 55 : 240 * random.nextDouble();
      readings.add(new TopReading(x, y, 0.8 * random.nextDouble() - 0.4, i));
    }
    Measured measured =
        Measured.NOTHING.withPlaces(
            List.of(
                place(15, 20, 0.95 + 0.02 * random.nextDouble(), 3),
                place(225, 30, 0.95 + 0.02 * random.nextDouble(), 4)));
    Depths depths = depths(measured);
    return Bend.of(depths, depths, TopMap.of("t", readings, 0.02).face());
  }

  private static List<Move> path(Random random) {
    List<Move> moves = new ArrayList<>();
    double x = 0;
    double y = 0;
    double depth = -SAFE;
    for (int i = 0; i < 25; i++) {
      double nx = 240 * random.nextDouble();
      double ny = 240 * random.nextDouble();
      switch (i % 5) {
        case 0 -> moves.add(Move.rapid(nx, ny, -SAFE));
        case 1 -> {
          depth = -1;
          moves.add(Move.rapid(x, y, depth));
          nx = x;
          ny = y;
        }
        case 2 -> {
          depth = 3.6 * random.nextDouble();
          moves.add(Move.line(nx, ny, depth, 900));
        }
        case 3 -> {
          double radius = 5 + 30 * random.nextDouble();
          double angle = 6 * random.nextDouble();
          double sweep = 0.3 + 2.5 * random.nextDouble();
          double cx = x - radius * Math.cos(angle);
          double cy = y - radius * Math.sin(angle);
          nx = cx + radius * Math.cos(angle + sweep);
          ny = cy + radius * Math.sin(angle + sweep);
          depth = i % 2 == 0 ? depth : 3.6 * random.nextDouble();
          moves.add(Move.arc(false, nx, ny, depth, cx, cy, 900));
        }
        default -> {
          nx = x;
          ny = y;
          depth = -SAFE;
          moves.add(Move.rapid(x, y, depth));
        }
      }
      x = nx;
      y = ny;
    }
    return moves;
  }

  private static double length(double[] from, Move move) {
    return move.isArc()
        ? Math.abs(
            ArcGeometry.of(from[0], from[1], 0, move).radius()
                * ArcGeometry.of(from[0], from[1], 0, move).sweep())
        : Math.hypot(move.x() - from[0], move.y() - from[1]);
  }

  private static double[] point(double[] from, Move move, double t) {
    double end = Math.rint(move.depth() * 1000) / 1000;
    double depth = from[2] + t * (end - from[2]);
    if (!move.isArc()) {
      return new double[] {
        from[0] + t * (move.x() - from[0]), from[1] + t * (move.y() - from[1]), depth
      };
    }
    ArcGeometry arc = ArcGeometry.of(from[0], from[1], 0, move);
    double angle = arc.startAngle() + t * arc.sweep();
    return new double[] {
      move.centreX() + arc.radius() * Math.cos(angle),
      move.centreY() + arc.radius() * Math.sin(angle),
      depth
    };
  }
}
