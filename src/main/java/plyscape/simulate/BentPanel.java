package plyscape.simulate;

import java.util.List;

/**
 * A panel as it lies (src/contract.md, section 11): where its top face is at a place, and how deep
 * each ply's target is there. Heights and depths in mm. Immutable.
 *
 * @param top heights of its top face over that of a flat panel, or null where it is flat
 * @param plies targets by place from the top down, none at 0; empty where they are the same
 *     everywhere
 * @param bottom its bottom face by place, or null where it is equally thick
 */
public record BentPanel(ProbedTop top, List<Level> plies, Level bottom) {

  /**
   * Target depth of one ply below the top face: falls evenly over the panel, but for a bow.
   *
   * @param flatMm in the flat plan, as targets are given
   * @param originMm at the panel's lower left corner
   * @param perX change a mm of X
   * @param perY change a mm of Y
   * @param perSquare change a mm squared of X and of Y
   */
  public record Level(double flatMm, double originMm, double perX, double perY, double perSquare) {

    /** A level that falls evenly. */
    public Level(double flatMm, double originMm, double perX, double perY) {
      this(flatMm, originMm, perX, perY, 0);
    }

    /** Depth at a place, mm. */
    public double depthMm(double x, double y) {
      return Math.max(0, originMm + perX * x + perY * y + perSquare * (x * x + y * y));
    }

    /** How steeply it falls at a place, mm a mm. */
    double slope(double x, double y) {
      return Math.hypot(perX + 2 * perSquare * x, perY + 2 * perSquare * y);
    }
  }

  /** Copies the plies, whose flat depths rise. */
  public BentPanel {
    plies = List.copyOf(plies);
    for (int i = 0; i < plies.size(); i++) {
      if (!(plies.get(i).flatMm() > (i == 0 ? 0 : plies.get(i - 1).flatMm()))) {
        throw new IllegalArgumentException("depths must rise from ply to ply: " + plies);
      }
    }
  }

  /** Depth of the uncut top face below that of a flat panel; negative where it stands higher. */
  public double faceMm(double x, double y) {
    return top == null ? 0 : -top.heightMm(x, y);
  }

  /** Height of the highest place of the top face over a flat panel's, at least 0. */
  public double risesMm() {
    return top == null ? 0 : Math.max(0, top.highestMm());
  }

  /**
   * Depth in the flat plan that a depth at a place stands for, linear between the plies' targets:
   * the uncut face is 0, each ply's target there its own.
   *
   * @param depthMm below the top face of a flat panel, as programs have it
   */
  public double flatMm(double x, double y, double depthMm) {
    double below = depthMm - faceMm(x, y);
    double here = 0;
    double flat = 0;
    if (below <= 0) {
      return below;
    }
    for (Level level : plies) {
      double next = level.depthMm(x, y);
      if (below <= next) {
        return flat + (level.flatMm() - flat) * (below - here) / (next - here);
      }
      here = next;
      flat = level.flatMm();
    }
    if (bottom != null) {
      double next = bottom.depthMm(x, y);
      return below <= next
          ? flat + (bottom.flatMm() - flat) * (below - here) / (next - here)
          : bottom.flatMm() + below - next;
    }
    return flat + below - here;
  }

  /**
   * Depth below the top face of a flat panel, as programs have it, that a depth of the flat plan
   * stands for at a place: what {@link #flatMm} undoes.
   */
  public double belowMm(double x, double y, double flatMm) {
    double here = 0;
    double flat = 0;
    if (flatMm <= 0) {
      return flatMm + faceMm(x, y);
    }
    for (Level level : plies) {
      double next = level.depthMm(x, y);
      if (flatMm <= level.flatMm()) {
        return here + (next - here) * (flatMm - flat) / (level.flatMm() - flat) + faceMm(x, y);
      }
      here = next;
      flat = level.flatMm();
    }
    if (bottom != null) {
      double next = bottom.depthMm(x, y);
      double at =
          flatMm <= bottom.flatMm()
              ? here + (next - here) * (flatMm - flat) / (bottom.flatMm() - flat)
              : next + flatMm - bottom.flatMm();
      return at + faceMm(x, y);
    }
    return here + flatMm - flat + faceMm(x, y);
  }
}
