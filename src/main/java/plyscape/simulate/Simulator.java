package plyscape.simulate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import plyscape.machine.Tool;

/**
 * Cuts parsed programs, in their order, into a panel and compares the surface with the targets.
 *
 * <p>Shares nothing with the path planner: it starts from the text's motions and the regions'
 * outlines, and has geometry of its own. The same input gives the same result on any number of
 * processors. See {@link HeightFieldCutter} for how exact the surface is, {@link Comparison} for
 * how it is judged, {@link FaceComparison} where faces follow the terrain.
 */
public final class Simulator {

  /** Collisions listed in full; more of them say nothing new. */
  private static final int MOST_COLLISIONS = 200;

  private Simulator() {}

  /**
   * Cuts and compares.
   *
   * @param cuts programs in cutting order, each with its tool
   * @param targets where each ply should show; elsewhere the panel stays uncut
   * @param tools all tools that were to choose from: the smallest decides what can be reached;
   *     where faces follow the terrain those that cut decide
   */
  public static CutResult run(Setup setup, List<Cut> cuts, List<Target> targets, List<Tool> tools) {
    HeightField field = HeightField.uncut(setup.panel(), setup.cellMm());
    List<Verification.Collision> collisions = cut(setup, cuts, field);
    Judgement comparison =
        targets.stream().anyMatch(target -> target.face() != null)
            ? new FaceComparison(
                field,
                setup.panel(),
                setup.carved(),
                targets,
                cuts.stream().map(Cut::tool).distinct().toList())
            : new Comparison(field, setup.panel(), setup.carved(), targets, tools);
    return new CutResult(
        comparison.verification(collisions),
        field,
        comparison.targetOf(),
        comparison.verdicts(),
        comparison.differences());
  }

  /** Cuts alone: the surface in {@code field}, and what went wrong on the way. */
  public static List<Verification.Collision> cut(Setup setup, List<Cut> cuts, HeightField field) {
    List<Stroke> all = new ArrayList<>();
    List<Found> found = new ArrayList<>();
    for (int i = 0; i < cuts.size(); i++) {
      List<Stroke> strokes = Strokes.of(cuts.get(i).program(), i);
      all.addAll(strokes);
      for (Verification.Collision c : MotionChecks.of(setup, cuts.get(i), strokes)) {
        found.add(new Found(i, c));
      }
    }
    List<Contact> contacts =
        new HeightFieldCutter(field, cuts.stream().map(Cut::tool).toList()).cut(all);
    for (Contact contact : contacts) {
      Stroke stroke = all.get(contact.stroke());
      found.add(new Found(stroke.program, collision(cuts.get(stroke.program), stroke, contact)));
    }
    found.sort(Comparator.comparingInt(Found::program).thenComparingInt(f -> f.collision().line()));
    List<Verification.Collision> list = new ArrayList<>();
    for (Found f : found) {
      if (list.size() == MOST_COLLISIONS) {
        Verification.Collision c = f.collision();
        list.add(
            new Verification.Collision(
                c.file(),
                c.line(),
                c.x(),
                c.y(),
                c.depthMm(),
                "and " + (found.size() - MOST_COLLISIONS) + " more from here on"));
        break;
      }
      list.add(f.collision());
    }
    return List.copyOf(list);
  }

  private record Found(int program, Verification.Collision collision) {}

  private static Verification.Collision collision(Cut cut, Stroke stroke, Contact contact) {
    double[] at = stroke.point(contact.t());
    String what =
        switch (contact.kind()) {
          case TOOL -> stroke.spindleOn ? "rapid through stock" : "cuts with the spindle off";
          case SHANK -> "the shank touches stock";
          case HOLDER -> "the holder touches stock";
        };
    return new Verification.Collision(
        cut.program().file(),
        stroke.line,
        at[0],
        at[1],
        at[2],
        what + String.format(Locale.ROOT, ", up to %.3f mm deep", contact.depthMm()));
  }
}
