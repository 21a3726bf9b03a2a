package plyscape.toolpath.slot;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import plyscape.toolpath.lattice.Lattice;

/** Chooses the stretches of narrow places that a cutter has to cut down to a level's floor. */
public final class SlotChoice {

  /** Stretches nearer than this to each other are one, mm: lifting would take longer. */
  private static final double GAP_MM = 6;

  /** Room to ramp down is given to shorter stretches where the slot has it, mm. */
  private static final double LEAST_MM = 5;

  /**
   * Stretches are led on by this, in radii, so that the cutter gets out of the wood at open ends.
   */
  private static final double OUT = 1.5;

  /** So much more than the radius counts as cleared: the walls' own tolerance, mm. */
  public static final double CLEARED_MM = 0.03;

  private final Lattice lattice;
  private final double radius;

  /** For one cutter. */
  public SlotChoice(Lattice lattice, double radiusMm) {
    this.lattice = lattice;
    radius = radiusMm;
  }

  /**
   * The stretches of slots in which something stands.
   *
   * @param stands whether a lattice node is to be cut
   * @param leastMm2 less wood than this is left to a later cutter
   */
  public List<SlotWay> choose(List<SlotWay> slots, IntPredicate stands, double leastMm2) {
    List<SlotWay> chosen = new ArrayList<>();
    for (SlotWay slot : slots) {
      int n = slot.size();
      double[] wanted = new double[n];
      for (int i = 0; i < n; i++) {
        wanted[i] = standsMm(slot, i, stands);
      }
      int from = 0;
      while (from < n) {
        if (wanted[from] <= 0) {
          from++;
          continue;
        }
        int to = stretchEnd(slot, wanted, from);
        if (area(slot, wanted, from, to) >= leastMm2) {
          chosen.add(widened(slot, from, to));
        }
        from = to + 1;
      }
    }
    return chosen;
  }

  private static int stretchEnd(SlotWay slot, double[] wanted, int from) {
    int to = from;
    double gap = 0;
    for (int i = from + 1; i < wanted.length; i++) {
      gap += slot.wayMm(i - 1, i);
      if (gap > GAP_MM) {
        break;
      }
      if (wanted[i] > 0) {
        to = i;
        gap = 0;
      }
    }
    return to;
  }

  private static double area(SlotWay slot, double[] wanted, int from, int to) {
    double sum = 0;
    for (int i = from; i <= to; i++) {
      sum += wanted[i] * (i + 1 < wanted.length ? slot.wayMm(i, i + 1) : slot.wayMm(i - 1, i));
    }
    return sum;
  }

  private SlotWay widened(SlotWay slot, int first, int last) {
    int from = first;
    int to = last;
    double length = 0;
    for (int i = from; i < to; i++) {
      length += slot.wayMm(i, i + 1);
    }
    double out = 0;
    while (from > 0 && out < OUT * radius) {
      from--;
      out += slot.wayMm(from, from + 1);
    }
    length += out;
    out = 0;
    while (to < slot.size() - 1 && out < OUT * radius) {
      to++;
      out += slot.wayMm(to - 1, to);
    }
    length += out;
    while (length < LEAST_MM && (from > 0 || to < slot.size() - 1)) {
      if (from > 0) {
        from--;
        length += slot.wayMm(from, from + 1);
      }
      if (to < slot.size() - 1) {
        to++;
        length += slot.wayMm(to - 1, to);
      }
    }
    return slot.part(from, to);
  }

  /** Width across a section that stands, mm. */
  private double standsMm(SlotWay slot, int i, IntPredicate stands) {
    int j = i + 1 < slot.size() ? i + 1 : i - 1;
    double dx = slot.x()[j] - slot.x()[i];
    double dy = slot.y()[j] - slot.y()[i];
    double d = Math.max(1e-9, Math.hypot(dx, dy));
    double half = radius + slot.roomMm(i) / 2 - 0.5 * lattice.stepMm();
    int parts = Math.max(1, (int) Math.ceil(half / lattice.stepMm()));
    int count = 0;
    for (int p = -parts; p <= parts; p++) {
      double off = half * p / parts;
      int node = lattice.nearest(slot.x()[i] - off * dy / d, slot.y()[i] + off * dx / d);
      count += stands.test(node) ? 1 : 0;
    }
    return 2 * half * count / (2 * parts + 1);
  }
}
