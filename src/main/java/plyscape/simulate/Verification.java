package plyscape.simulate;

import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleSupplier;

/**
 * Outcome of cutting the written programs in simulation and comparing with the plan; areas in mm2
 * over the carved area. Immutable.
 *
 * @param cellMm side of a simulation cell
 * @param matchedShare share of cells whose depth is within 0.01 mm of their target
 * @param gougedMm2 area cut deeper than its target, more than 0.02 mm beyond a region's wall
 * @param gougeMaxMm how far the worst gouge reaches sideways beyond the 0 offset of a wall, mm; 0
 *     when none
 * @param uncutMm2 area that the smallest tool can reach and that was left too high (off walls by
 *     0.05 mm)
 * @param unreachableMm2 area that no listed tool can reach
 * @param collisions rapids through stock, cuts beyond flute length or travel, spindle off: each
 *     with its place
 * @param bites the deepest bite of each program that cut anything, in cutting order
 */
public record Verification(
    double cellMm,
    double matchedShare,
    double gougedMm2,
    double gougeMaxMm,
    double uncutMm2,
    double unreachableMm2,
    List<Collision> collisions,
    List<Bite> bites) {

  /**
   * Wood left standing where a cutter reaches that still passes: specks are sanded off without
   * being seen. mm2.
   */
  private static final double UNCUT_ALLOWED_MM2 = 0.5;

  /** One collision: program, line, panel place and depth, and what is wrong. */
  public record Collision(String file, int line, double x, double y, double depthMm, String what) {}

  /**
   * Figures of judged cells.
   *
   * @param verdicts code of the {@link CellVerdict} of each cell
   * @param gougeMaxMm the worst gouge; asked only when there is one
   */
  static Verification of(
      HeightField field,
      byte[] verdicts,
      double matchedShare,
      DoubleSupplier gougeMaxMm,
      List<Collision> collisions,
      List<Bite> bites) {
    long[] counts = new long[CellVerdict.values().length];
    for (byte verdict : verdicts) {
      counts[verdict]++;
    }
    double area = field.cellAreaMm2();
    long gouged = counts[CellVerdict.GOUGED.code()];
    return new Verification(
        Math.max(field.frame().cellX(), field.frame().cellY()),
        matchedShare,
        gouged * area,
        gouged == 0 ? 0 : gougeMaxMm.getAsDouble(),
        counts[CellVerdict.UNCUT.code()] * area,
        counts[CellVerdict.UNREACHABLE.code()] * area,
        collisions,
        bites);
  }

  /** The deepest bite of all, mm; 0 when nothing was cut. */
  public double biteMaxMm() {
    return bites.stream().mapToDouble(Bite::biteMm).max().orElse(0);
  }

  /** The largest share that a bite had of its cutter's stepdown; over 1 it was too deep. */
  public double biteMaxShare() {
    return bites.stream().mapToDouble(Bite::share).max().orElse(0);
  }

  /** Bites over the stepdown, one a program, the worst by its share first. */
  public List<Bite> bitesTooDeep() {
    return bites.stream()
        .filter(Bite::tooDeep)
        .sorted(Comparator.comparingDouble(Bite::share).reversed())
        .toList();
  }

  /**
   * Whether more wood is left standing, where a cutter reaches, than sanding takes off.
   *
   * @param saidMm2 what the plan itself said it would leave, mm2
   */
  public boolean leavesWood(double saidMm2) {
    return uncutMm2 > saidMm2 + UNCUT_ALLOWED_MM2;
  }

  /** Whether G-code of this outcome may be written: no gouge, no collision, no bite too deep. */
  public boolean safe() {
    return gougedMm2 == 0 && collisions.isEmpty() && bitesTooDeep().isEmpty();
  }
}
