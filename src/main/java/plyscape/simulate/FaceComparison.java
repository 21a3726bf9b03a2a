package plyscape.simulate;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.machine.Tool;
import plyscape.simulate.stroke.ToolForm;

/**
 * Compares a cut surface with targets whose faces follow the terrain: like {@link Comparison}, with
 * the wanted depth worked out at each cell's centre.
 *
 * <p>On a panel that lies bent, depths are compared as they are cut there, each place at its own;
 * only floors that flat cutters leave may lie off by the slope over their radius ({@link
 * RimSlack}).
 *
 * <p>A cell matches when it is at most 0.01 mm too deep and at most the cusp and 0.01 mm too high.
 * Cut deeper it is a gouge unless some place within 0.02 mm of it is to be that deep. Left higher,
 * it is unreachable when no flat cutter that ran can bring it down to its target's shallowest
 * depth, or when none of the rounded ones (without any, the flat ones) can take off more than the
 * cusp and 0.01 mm of what is left; else it is uncut, but for the 0.05 mm along a wall.
 */
final class FaceComparison implements Judgement {

  /** A tapered cutter with a sharper tip isn't one for faces, mm. */
  private static final double LEAST_TIP_MM = 0.2;

  private static final double NOISE_MM = 1e-6;

  private final HeightField field;
  private final CellFrame frame;
  private final List<Target> targets;
  private final short[] targetOf;
  private final float[] wanted;
  private final byte[] verdicts;
  private final FaceWalls walls;
  private final BentPanel bent;
  private final RimSlack rim;
  private long matched;
  private long carvedCells;

  /**
   * Compares.
   *
   * @param field as it was cut, in the depths of the programs
   * @param walls of the same targets and panel
   * @param setup the carved area, over which the matched share is counted, and how the panel lies
   * @param tools that cut
   */
  FaceComparison(
      HeightField field, FaceWalls walls, Setup setup, List<Target> targets, List<Tool> tools) {
    this.field = field;
    this.frame = field.frame();
    this.targets = targets;
    targetOf = TargetRaster.of(frame, targets);
    wanted = new float[frame.size()];
    verdicts = new byte[frame.size()];
    this.walls = walls;
    bent = setup.bent();
    rim = new RimSlack(bent, widestFlatMm(tools));
    match(setup.carved());
    leftovers(tools);
  }

  private static double widestFlatMm(List<Tool> tools) {
    return tools.stream()
        .filter(tool -> tool.shape() == Tool.Shape.FLAT)
        .mapToDouble(Tool::radiusMm)
        .max()
        .orElse(0);
  }

  private double wanted(Target target, double x, double y) {
    if (target == null) {
      return bent == null ? 0 : bent.faceMm(x, y);
    }
    return target.lyingMm(bent, x, y, target.depthAt(x, y));
  }

  private void match(Box carved) {
    long[][] counts =
        IntStream.range(0, frame.rows())
            .parallel()
            .mapToObj(row -> matchRow(carved, row))
            .toArray(long[][]::new);
    for (long[] count : counts) {
      carvedCells += count[0];
      matched += count[1];
    }
  }

  private long[] matchRow(Box carved, int row) {
    long[] count = new long[2];
    double y = frame.centreY(row);
    for (int column = 0; column < frame.columns(); column++) {
      int i = row * frame.columns() + column;
      double x = frame.centreX(column);
      Target target = targetOf[i] < 0 ? null : targets.get(targetOf[i]);
      wanted[i] = (float) wanted(target, x, y);
      double slack = bent == null ? 0 : rim.atMm(x, y);
      double error = field.depth()[i] - wanted[i];
      if (target != null && target.face() == null) {
        error -= Math.max(-slack, Math.min(slack, error));
      }
      double allowed = target == null ? Comparison.DEPTH_MM : target.allowedMm();
      boolean same = error <= Comparison.DEPTH_MM && error >= -allowed;
      if (carved.contains(x, y)) {
        count[0]++;
        count[1] += same ? 1 : 0;
      }
      if (error > Comparison.DEPTH_MM) {
        boolean allowedThere = deeperBeside(target, x, y, field.depth()[i] - slack);
        verdicts[i] = (allowedThere ? CellVerdict.WALL : CellVerdict.GOUGED).code();
      } else if (!same) {
        verdicts[i] = CellVerdict.UNCUT.code(); // sorted out by the next step
      }
    }
    return count;
  }

  /** Whether some place within what a tool may come over a wall is to be so deep. */
  private boolean deeperBeside(Target target, double x, double y, double depth) {
    double aside = Comparison.OVER_WALL_MM + NOISE_MM;
    double enough = depth - Comparison.DEPTH_MM;
    if (target != null && target.face() != null) {
      for (double[] way : RimSlack.WAYS) {
        double px = x + aside * way[0];
        double py = y + aside * way[1];
        if (wanted(target, px, py) >= enough) {
          return true;
        }
      }
    }
    return walls.deeperWithin(x, y, aside, enough);
  }

  private void leftovers(List<Tool> tools) {
    List<FaceReach> flat = new ArrayList<>();
    FaceSurface rough = null;
    FaceSurface faces = new FaceSurface(frame, wanted, targetOf, targets);
    List<Tool> rounded = tools.stream().filter(FaceComparison::rounded).toList();
    for (Tool tool : tools) {
      if (tool.shape() == Tool.Shape.FLAT) {
        rough = rough == null ? new FaceSurface(frame, rough(), targetOf, targets) : rough;
        flat.add(reach(tool, rough, true));
      }
    }
    List<FaceReach> finishing =
        (rounded.isEmpty()
                ? tools.stream().filter(tool -> tool.shape() == Tool.Shape.FLAT).toList()
                : rounded)
            .stream().map(tool -> reach(tool, faces, false)).toList();
    IntStream.range(0, frame.rows())
        .parallel()
        .forEach(
            row -> {
              for (int column = 0; column < frame.columns(); column++) {
                int i = row * frame.columns() + column;
                if (verdicts[i] == CellVerdict.UNCUT.code()) {
                  verdicts[i] = left(flat, finishing, column, row).code();
                }
              }
            });
  }

  private static boolean rounded(Tool tool) {
    return tool.shape() == Tool.Shape.BALL
        || tool.shape() == Tool.Shape.TAPERED && tool.tipDiameterMm() >= LEAST_TIP_MM;
  }

  private FaceReach reach(Tool tool, FaceSurface surface, boolean rough) {
    double deepest = tool.fluteLengthMm() > 0 ? tool.fluteLengthMm() : Double.MAX_VALUE;
    return new FaceReach(surface, walls, ToolForm.of(tool), rough, deepest);
  }

  private float[] rough() {
    float[] depths = new float[frame.size()];
    for (int i = 0; i < depths.length; i++) {
      double x = frame.centreX(i % frame.columns());
      double y = frame.centreY(i / frame.columns());
      Target target = targetOf[i] < 0 ? null : targets.get(targetOf[i]);
      depths[i] =
          (float)
              (target == null ? wanted(null, x, y) : target.lyingMm(bent, x, y, target.roughMm()));
    }
    return depths;
  }

  private CellVerdict left(List<FaceReach> flat, List<FaceReach> finishing, int column, int row) {
    int i = row * frame.columns() + column;
    Target target = targetOf[i] < 0 ? null : targets.get(targetOf[i]);
    if (target == null) {
      return CellVerdict.AS_PLANNED; // the border can't stand too high
    }
    double x = frame.centreX(column);
    double y = frame.centreY(row);
    // A level end leaves a slope's foot higher by its rim, and roughing keeps off by it once more.
    double roughMm =
        target.lyingMm(bent, x, y, target.roughMm()) - Comparison.DEPTH_MM - 2 * rim.atMm(x, y);
    if (field.depth()[i] < roughMm && !any(flat, column, row, roughMm)
        || target.face() != null
            && !any(finishing, column, row, field.depth()[i] + target.allowedMm())) {
      return CellVerdict.UNREACHABLE;
    }
    boolean atWall =
        walls.wallWithin(
            x, y, Comparison.LEFT_ON_WALL_MM + NOISE_MM, wanted[i] - Comparison.DEPTH_MM);
    return atWall ? CellVerdict.WALL : CellVerdict.UNCUT;
  }

  private static boolean any(List<FaceReach> reaches, int column, int row, double depth) {
    for (FaceReach reach : reaches) {
      if (reach.reaches(column, row, depth)) {
        return true;
      }
    }
    return false;
  }

  @Override
  public short[] targetOf() {
    return targetOf;
  }

  @Override
  public byte[] verdicts() {
    return verdicts;
  }

  @Override
  public List<Difference> differences() {
    return new Areas(field, verdicts, i -> wanted[i]).find();
  }

  /** Figures; the worst gouge is given by how much too deep it is. */
  @Override
  public Verification verification(List<Verification.Collision> collisions, List<Bite> bites) {
    return Verification.of(
        field,
        verdicts,
        carvedCells == 0 ? 1 : (double) matched / carvedCells,
        this::deepestGouge,
        collisions,
        bites);
  }

  private double deepestGouge() {
    double worst = 0;
    for (int i = 0; i < verdicts.length; i++) {
      if (verdicts[i] == CellVerdict.GOUGED.code()) {
        worst = Math.max(worst, field.depth()[i] - wanted[i]);
      }
    }
    return worst;
  }
}
