package plyscape.simulate.stroke;

import java.util.ArrayList;
import java.util.List;
import plyscape.gcode.Program;
import plyscape.machine.ArcGeometry;
import plyscape.machine.Move;

/** Turns a program's motions into strokes: arcs of more than half a turn become several. */
public final class Strokes {

  private Strokes() {}

  /** All strokes of a program, in order. */
  public static List<Stroke> of(Program program) {
    List<Stroke> strokes = new ArrayList<>(program.blocks().size());
    double x = program.startX();
    double y = program.startY();
    double z = program.startDepth();
    for (Program.Block block : program.blocks()) {
      Move move = block.move();
      Stroke.Origin origin =
          new Stroke.Origin(
              block.line(),
              move.kind() == Move.Kind.RAPID || !block.spindleOn(),
              block.spindleOn());
      if (move.isArc()) {
        arc(strokes, move, origin, x, y, z);
      } else {
        Stroke.Ends ends = new Stroke.Ends(x, y, z, move.x(), move.y(), move.depth());
        strokes.add(new LineStroke(ends, origin));
      }
      x = move.x();
      y = move.y();
      z = move.depth();
    }
    return strokes;
  }

  private static void arc(
      List<Stroke> strokes, Move move, Stroke.Origin origin, double x, double y, double z) {
    ArcGeometry whole = ArcGeometry.of(x, y, z, move);
    int parts = Math.max(1, (int) Math.ceil(Math.abs(whole.sweep()) / Math.PI - 1e-9));
    double endRadius = Math.hypot(move.x() - move.centreX(), move.y() - move.centreY());
    double px = x;
    double py = y;
    double pz = z;
    for (int k = 1; k <= parts; k++) {
      double t = (double) k / parts;
      double angle = whole.startAngle() + whole.sweep() * t;
      double r = whole.radius() + (endRadius - whole.radius()) * t;
      double qx = k == parts ? move.x() : move.centreX() + r * Math.cos(angle);
      double qy = k == parts ? move.y() : move.centreY() + r * Math.sin(angle);
      double qz = z + (move.depth() - z) * t;
      ArcGeometry part =
          new ArcGeometry(
              whole.radius(),
              whole.startAngle() + whole.sweep() * (k - 1) / parts,
              whole.sweep() / parts,
              0);
      strokes.add(
          new ArcStroke(
              new Stroke.Ends(px, py, pz, qx, qy, qz),
              origin,
              move.centreX(),
              move.centreY(),
              part));
      px = qx;
      py = qy;
      pz = qz;
    }
  }
}
