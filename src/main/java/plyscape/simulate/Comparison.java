package plyscape.simulate;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import plyscape.grid.Box;
import plyscape.grid.CellFrame;
import plyscape.machine.Tool;

/**
 * Compares a cut surface with the targets (src/contract.md, sections 8 and 9): what matches, what
 * is cut too deep, what is left.
 *
 * <p>A cell is judged at its centre. Cut too deep by more than 0.01 mm it is a gouge unless some
 * place within 0.02 mm of it is to be that deep; left too high by more than 0.01 mm it is uncut
 * when a cutter can reach it and it is more than 0.05 mm off its pocket's wall. The targets'
 * outlines are taken exactly, not as cells.
 */
final class Comparison implements Judgement {

  /** Depths nearer than this are the same (src/contract.md, section 8). */
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
  private final double[] slacks;
  private final Walls walls;
  private final double[] reachRadii;

  /** Rows in which some cell isn't as it should be. */
  private final boolean[] differs;

  private long matched;
  private long carvedCells;

  /**
   * Compares.
   *
   * @param walls of the same targets
   * @param carved over which the matched share is counted
   * @param tools of which the smallest with flutes long enough decides what can be reached
   */
  Comparison(HeightField field, Walls walls, Box carved, List<Target> targets, List<Tool> tools) {
    this.field = field;
    this.frame = field.frame();
    this.targetOf = TargetRaster.of(frame, targets);
    this.verdicts = new byte[frame.size()];
    this.depths = targets.stream().mapToDouble(Target::depthMm).toArray();
    this.slacks = targets.stream().mapToDouble(Target::slackMm).toArray();
    this.walls = walls;
    this.reachRadii = targets.stream().mapToDouble(t -> smallest(tools, t.depthMm())).toArray();
    this.differs = new boolean[frame.rows()];
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

  private double slack(int cell) {
    return targetOf[cell] < 0 ? 0 : slacks[targetOf[cell]];
  }

  private void match(Box carved) {
    Row[] rows =
        IntStream.range(0, frame.rows())
            .parallel()
            .mapToObj(row -> match(row, carved))
            .toArray(Row[]::new);
    for (int row = 0; row < rows.length; row++) {
      carvedCells += rows[row].carved;
      matched += rows[row].matched;
      differs[row] = rows[row].differs;
    }
  }

  private record Row(int carved, int matched, boolean differs) {}

  private Row match(int row, Box carved) {
    float[] depth = field.depth();
    boolean rowIn = frame.centreY(row) >= carved.minY() && frame.centreY(row) <= carved.maxY();
    int in = 0;
    int same = 0;
    int others = 0;
    for (int column = 0; column < frame.columns(); column++) {
      int i = row * frame.columns() + column;
      double error = depth[i] - target(i);
      boolean equal = error <= DEPTH_MM && error >= -DEPTH_MM - slack(i);
      if (rowIn
          && frame.centreX(column) >= carved.minX()
          && frame.centreX(column) <= carved.maxX()) {
        in++;
        same += equal ? 1 : 0;
      }
      if (!equal) { // sorted out by the next two steps
        others++;
        verdicts[i] = (error > 0 ? CellVerdict.GOUGED : CellVerdict.UNCUT).code();
      }
    }
    return new Row(in, same, others > 0);
  }

  /** The rows in which something differs. */
  private IntStream differing() {
    return IntStream.range(0, frame.rows()).filter(row -> differs[row]).parallel();
  }

  private void gouges() {
    differing()
        .forEach(
            row -> {
              for (int column = 0; column < frame.columns(); column++) {
                int i = row * frame.columns() + column;
                if (verdicts[i] == CellVerdict.GOUGED.code()
                    && walls.deeperWithin(
                        frame.centreX(column),
                        frame.centreY(row),
                        OVER_WALL_MM + NOISE_MM,
                        field.depth()[i] - DEPTH_MM)) {
                  verdicts[i] = CellVerdict.WALL.code();
                }
              }
            });
  }

  private void leftovers() {
    int[][] left = differing().mapToObj(this::left).toArray(int[][]::new);
    PocketReach reach = null;
    for (int t = 0; t < depths.length; t++) {
      int level = t;
      if (Arrays.stream(left).noneMatch(cells -> any(cells, level))) {
        continue;
      }
      reach = reach == null ? new PocketReach(frame, targetOf, depths, walls) : reach;
      boolean none = Double.isInfinite(reachRadii[t]);
      PocketReach here = reach;
      here.turnTo(depths[t], none ? 0 : reachRadii[t]);
      Arrays.stream(left)
          .parallel()
          .forEach(
              cells -> {
                for (int i : cells) {
                  if (targetOf[i] == level) {
                    CellVerdict verdict =
                        none
                            ? CellVerdict.UNREACHABLE
                            : left(here, i % frame.columns(), i / frame.columns(), depths[level]);
                    verdicts[i] = verdict.code();
                  }
                }
              });
    }
  }

  /** Cells of a row that are left too high. */
  private int[] left(int row) {
    int[] cells = new int[16];
    int count = 0;
    for (int i = row * frame.columns(); i < (row + 1) * frame.columns(); i++) {
      if (verdicts[i] == CellVerdict.UNCUT.code() && targetOf[i] >= 0) {
        if (count == cells.length) {
          cells = Arrays.copyOf(cells, 2 * count);
        }
        cells[count++] = i;
      }
    }
    return Arrays.copyOf(cells, count);
  }

  private boolean any(int[] cells, int level) {
    for (int i : cells) {
      if (targetOf[i] == level) {
        return true;
      }
    }
    return false;
  }

  private CellVerdict left(PocketReach reach, int column, int row, double level) {
    double wall =
        walls.wallDistance(frame.centreX(column), frame.centreY(row), LEFT_ON_WALL_MM, level);
    boolean nearWall = wall <= LEFT_ON_WALL_MM;
    if (!reach.reaches(column, row, nearWall)) {
      return CellVerdict.UNREACHABLE;
    }
    return nearWall ? CellVerdict.WALL : CellVerdict.UNCUT;
  }

  /** Figures of a finished comparison. */
  @Override
  public Verification verification(List<Verification.Collision> collisions, List<Bite> bites) {
    return Verification.of(
        field,
        verdicts,
        carvedCells == 0 ? 1 : (double) matched / carvedCells,
        this::farthestGouge,
        collisions,
        bites);
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
        if (verdicts[i] != CellVerdict.GOUGED.code() || need <= above || need > atLeast) {
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
