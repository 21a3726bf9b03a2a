package plyscape.simulate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import plyscape.grid.CellFrame;
import plyscape.machine.Tool;
import plyscape.simulate.stroke.Stroke;
import plyscape.simulate.stroke.Strokes;
import plyscape.text.Numbers;

/**
 * A panel that is cut program by program, so that a first one can be cut while a later one is still
 * being planned; the outcome is that of all of them at once. But for {@link #help}, not for several
 * threads at a time.
 */
public final class Simulation {

  /** Collisions listed in full; more of them say nothing new. */
  private static final int MOST_COLLISIONS = 200;

  private final Setup setup;
  private final HeightField field;
  private final List<Target> targets;
  private final boolean sculpted;
  private final float[] uncut;
  // One of the two, made when first asked for, so that the planner needn't wait for it.
  private Walls walls;
  private FaceWalls faceWalls;
  private final List<Bite> bites = new ArrayList<>();
  private final List<Cut> cuts = new ArrayList<>();
  private final List<Verification.Collision> found = new ArrayList<>();
  private volatile HeightFieldCutter cutter;

  /**
   * An uncut panel.
   *
   * @param targets where each ply should show; elsewhere the panel stays uncut
   * @throws plyscape.fault.JobFault if its cells don't fit into memory
   */
  public Simulation(Setup setup, List<Target> targets) {
    this(setup, targets, HeightField.uncut(setup.panel(), setup.cellMm()));
  }

  /** A panel with the surface that a field gives, which is cut further. */
  Simulation(Setup setup, List<Target> targets, HeightField field) {
    this.setup = setup;
    this.field = field;
    this.targets = targets;
    sculpted = targets.stream().anyMatch(target -> target.face() != null);
    uncut = setup.bent() == null ? null : lay(field, setup.bent());
  }

  /** Puts the top face of a bent panel into an uncut field; gives a copy of it. */
  private static float[] lay(HeightField field, BentPanel bent) {
    CellFrame frame = field.frame();
    IntStream.range(0, frame.rows())
        .parallel()
        .forEach(
            row -> {
              for (int column = 0; column < frame.columns(); column++) {
                field.depth()[row * frame.columns() + column] =
                    (float) bent.faceMm(frame.centreX(column), frame.centreY(row));
              }
            });
    return field.depth().clone();
  }

  private HeightField flattened() {
    if (setup.bent() == null) {
      return field;
    }
    double widest =
        cuts.stream()
            .map(Cut::tool)
            .filter(tool -> tool.shape() == Tool.Shape.FLAT && !sculpted)
            .mapToDouble(Tool::radiusMm)
            .max()
            .orElse(0);
    return new FlattenedField(setup.bent(), targets, widest).of(field, uncut);
  }

  private void makeWalls() {
    if (sculpted && faceWalls == null) {
      faceWalls = new FaceWalls(setup.panel(), targets, setup.bent());
    } else if (!sculpted && walls == null) {
      walls = new Walls(setup.panel(), targets);
    }
  }

  private boolean rim(double x, double y, double depthMm) {
    if (sculpted) {
      return faceWalls.wallWithin(x, y, Comparison.LEFT_ON_WALL_MM, depthMm - Comparison.DEPTH_MM);
    }
    double flat = setup.bent() == null ? depthMm : setup.bent().flatMm(x, y, depthMm);
    double below = flat - Comparison.DEPTH_MM;
    return walls.distanceTo(x, y, Comparison.LEFT_ON_WALL_MM, below, below)
        <= Comparison.LEFT_ON_WALL_MM;
  }

  /** Takes part in a cut that another thread has begun, if there is one and as far as it can. */
  public void help() {
    HeightFieldCutter now = cutter;
    if (now != null) {
      now.help();
    }
  }

  /** Cuts the next program. */
  public void cut(Cut cut) {
    makeWalls();
    List<Stroke> strokes = Strokes.of(cut.program());
    List<Verification.Collision> own = new ArrayList<>(MotionChecks.of(setup, cut, strokes));
    cutter =
        new HeightFieldCutter(
            field, cut.tool(), setup.flatnessMm(), this::rim, uncut, -setup.risesMm());
    for (Contact contact : cutter.cut(strokes)) {
      own.add(collision(cut, strokes.get(contact.stroke()), contact));
    }
    SpindleCheck.of(setup.machine(), cut, strokes, cutter.deepest().firstContact())
        .ifPresent(own::add);
    Bite bite = cutter.deepest().of(cut, strokes);
    if (bite != null) {
      bites.add(bite);
    }
    own.sort(Comparator.comparingInt(Verification.Collision::line));
    found.addAll(own);
    cuts.add(cut);
  }

  /**
   * Compares what was cut with the targets.
   *
   * @param tools all tools that were to choose from: the smallest decides what can be reached;
   *     where faces follow the terrain those that cut decide
   */
  public CutResult compare(List<Tool> tools) {
    makeWalls();
    HeightField surface = flattened();
    Judgement comparison =
        sculpted
            ? new FaceComparison(
                field, faceWalls, setup, targets, cuts.stream().map(Cut::tool).distinct().toList())
            : new Comparison(surface, walls, setup.carved(), targets, tools);
    return new CutResult(
        comparison.verification(collisions(), List.copyOf(bites)),
        surface,
        comparison.targetOf(),
        comparison.verdicts(),
        comparison.differences());
  }

  /** What went wrong on the way, program by program, by line. */
  List<Verification.Collision> collisions() {
    if (found.size() <= MOST_COLLISIONS) {
      return List.copyOf(found);
    }
    List<Verification.Collision> list = new ArrayList<>(found.subList(0, MOST_COLLISIONS));
    Verification.Collision c = found.get(MOST_COLLISIONS);
    list.add(
        new Verification.Collision(
            c.file(),
            c.line(),
            c.x(),
            c.y(),
            c.depthMm(),
            "and " + (found.size() - MOST_COLLISIONS) + " more from here on"));
    return List.copyOf(list);
  }

  private Verification.Collision collision(Cut cut, Stroke stroke, Contact contact) {
    double[] at = stroke.point(contact.t());
    String what =
        switch (contact.kind()) {
          case TOOL -> stroke.spindleOn() ? "rapid through stock" : "cuts with the spindle off";
          case FACE -> "a rapid nearer to the face than its flatness";
          case SHANK -> "the shank touches stock";
          case HOLDER -> "the holder touches stock";
        };
    String much =
        contact.kind() == Contact.Kind.FACE
            ? ": %.3f mm over it, flat to " + Numbers.trimmed(setup.flatnessMm(), 3)
            : ", up to %.3f mm deep";
    double figure =
        contact.kind() == Contact.Kind.FACE
            ? setup.flatnessMm() - contact.depthMm()
            : contact.depthMm();
    return new Verification.Collision(
        cut.program().file(),
        stroke.line(),
        at[0],
        at[1],
        at[2],
        what + String.format(Locale.ROOT, much, figure));
  }
}
