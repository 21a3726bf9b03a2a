package plyscape.simulate;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.machine.Tool;

/**
 * Compares a cut surface with the targets (contract, sections 8 and 9): what matches, what is cut
 * too deep, what is left.
 *
 * <p>A cell is judged at its centre. Cut too deep by more than 0.01 mm it is a gouge unless some
 * place within 0.02 mm of it is to be that deep; left too high by more than 0.01 mm it is uncut
 * when a cutter can reach it and it is more than 0.05 mm off its pocket's wall. The targets'
 * outlines are taken exactly, not as cells.
 */
final class Comparison implements Judgement {

  /** Depths nearer than this are the same (contract, section 8). */
  static final double DEPTH_MM = 0.01;

  /** How far a tool's edge may come over a wall (section 9). */
  static final double OVER_WALL_MM = 0.02;

  /** How much may be left on a wall (section 9). */
  static final double LEFT_ON_WALL_MM = 0.05;

  /** Float and rounding noise in distances, mm. */
  private static final double NOISE_MM = 1e-6;

  private final HeightField field;
  private final CellFrame frame;
  private final short[] targetOf;
  private final byte[] verdicts;
  private final double[] depths;
  private final Walls walls;
  private final double[] reachRadii;
  private long matched;
  private long carvedCells;

  /**
   * Compares.
   *
   * @param carved over which the matched share is counted
   * @param tools of which the smallest with flutes long enough decides what can be reached
   */
  Comparison(HeightField field, Box panel, Box carved, List<Target> targets, List<Tool> tools) {
    this.field = field;
    this.frame = field.frame();
    this.targetOf = TargetRaster.of(frame, targets);
    this.verdicts = new byte[frame.size()];
    this.depths = targets.stream().mapToDouble(Target::depthMm).toArray();
    this.walls = new Walls(panel, targets);
    this.reachRadii = targets.stream().mapToDouble(t -> smallest(tools, t.depthMm())).toArray();
    match(carved);
    gouges();
    leftovers();
  }

  private static double smallest(List<Tool> tools, double depth) {
    return tools.stream()
        .filter(t -> t.fluteLengthMm() >= depth || t.fluteLengthMm() <= 0)
        .mapToDouble(t -> t.shape() == Tool.Shape.FLAT ? t.radiusMm() : 0)
        .min()
        .orElse(Double.POSITIVE_INFINITY);
  }

  private double target(int cell) {
    return targetOf[cell] < 0 ? 0 : depths[targetOf[cell]];
  }

  private void match(Box carved) {
    long[][] counts =
        IntStream.range(0, frame.rows())
            .parallel()
            .mapToObj(
                row -> {
                  long[] count = new long[2];
                  boolean rowIn =
                      frame.centreY(row) >= carved.minY() && frame.centreY(row) <= carved.maxY();
                  for (int column = 0; column < frame.columns(); column++) {
                    int i = row * frame.columns() + column;
                    double error = field.depth()[i] - target(i);
                    boolean same = Math.abs(error) <= DEPTH_MM;
                    if (rowIn
                        && frame.centreX(column) >= carved.minX()
                        && frame.centreX(column) <= carved.maxX()) {
                      count[0]++;
                      count[1] += same ? 1 : 0;
                    }
                    if (!same) { // sorted out by the next two steps
                      verdicts[i] = (error > 0 ? Verdict.GOUGED : Verdict.UNCUT).code();
                    }
                  }
                  return count;
                })
            .toArray(long[][]::new);
    for (long[] count : counts) {
      carvedCells += count[0];
      matched += count[1];
    }
  }

  private void gouges() {
    IntStream.range(0, frame.rows())
        .parallel()
        .forEach(
            row -> {
              for (int column = 0; column < frame.columns(); column++) {
                int i = row * frame.columns() + column;
                if (verdicts[i] == Verdict.GOUGED.code()
                    && walls.deeperWithin(
                        frame.centreX(column),
                        frame.centreY(row),
                        OVER_WALL_MM + NOISE_MM,
                        field.depth()[i] - DEPTH_MM)) {
                  verdicts[i] = Verdict.WALL.code();
                }
              }
            });
  }

  private void leftovers() {
    Reach reach = null;
    for (int t = 0; t < depths.length; t++) {
      int level = t;
      if (IntStream.range(0, frame.size()).parallel().noneMatch(i -> isLeft(i, level))) {
        continue;
      }
      reach = reach == null ? new Reach(frame, targetOf, depths, walls) : reach;
      boolean none = Double.isInfinite(reachRadii[t]);
      Reach here = reach;
      here.turnTo(depths[t], none ? 0 : reachRadii[t]);
      IntStream.range(0, frame.rows())
          .parallel()
          .forEach(
              row -> {
                for (int column = 0; column < frame.columns(); column++) {
                  int i = row * frame.columns() + column;
                  if (isLeft(i, level)) {
                    verdicts[i] =
                        none
                            ? Verdict.UNREACHABLE.code()
                            : left(here, column, row, depths[level]).code();
                  }
                }
              });
    }
  }

  private boolean isLeft(int cell, int level) {
    return targetOf[cell] == level && verdicts[cell] == Verdict.UNCUT.code();
  }

  private Verdict left(Reach reach, int column, int row, double level) {
    double wall =
        walls.wallDistance(frame.centreX(column), frame.centreY(row), LEFT_ON_WALL_MM, level);
    boolean nearWall = wall <= LEFT_ON_WALL_MM;
    if (!reach.reaches(column, row, nearWall)) {
      return Verdict.UNREACHABLE;
    }
    return nearWall ? Verdict.WALL : Verdict.UNCUT;
  }

  /** Figures of a finished comparison, without collisions. */
  @Override
  public Verification verification(List<Verification.Collision> collisions) {
    return Verification.of(
        field,
        verdicts,
        carvedCells == 0 ? 1 : (double) matched / carvedCells,
        this::farthestGouge,
        collisions);
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
    return new Areas(field, verdicts, this::target).find();
  }

  /**
   * How far a gouge reaches beyond the nearest place that is to be as deep, mm; where nothing is to
   * be that deep, how much too deep it is. At most a sample of each area's cells is measured
   * exactly, the farthest from its edge among them.
   */
  private double farthestGouge() {
    double[] distinct = Arrays.stream(depths).distinct().sorted().toArray();
    double worst = 0;
    for (int k = 0;
        k <= distinct.length;
        k++) { // gouges that need a place of at least distinct[k]; last: deeper than all
      double atLeast = k < distinct.length ? distinct[k] : Double.POSITIVE_INFINITY;
      double above = k == 0 ? Double.NEGATIVE_INFINITY : distinct[k - 1];
      int far = -1;
      double most = -1;
      float[] distance =
          k < distinct.length ? new CellDistance(frame).from(i -> target(i) >= atLeast) : null;
      for (int i = 0; i < verdicts.length; i++) {
        double need = field.depth()[i] - DEPTH_MM;
        if (verdicts[i] != Verdict.GOUGED.code() || need <= above || need > atLeast) {
          continue;
        }
        double d = distance == null ? field.depth()[i] - target(i) : distance[i];
        if (d > most) {
          most = d;
          far = i;
        }
      }
      if (far >= 0) {
        double exact =
            distance == null
                ? most
                : walls.distanceToDepth(
                    frame.centreX(far % frame.columns()),
                    frame.centreY(far / frame.columns()),
                    atLeast);
        worst = Math.max(worst, exact);
      }
    }
    return worst;
  }
}
