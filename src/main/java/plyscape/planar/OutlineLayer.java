package plyscape.planar;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Directed polylines on the grid that belong together, e.g. all outlines of one break. */
public final class OutlineLayer {

  /**
   * One polyline.
   *
   * @param x at least two
   * @param onBox whether it runs along the carved box's edge
   */
  public record Outline(int[] x, int[] y, boolean onBox) {}

  private final List<Outline> outlines = new ArrayList<>();

  /**
   * Adds the first {@code used} points; fewer than two distinct ones are no line and are left out.
   */
  public void add(int[] x, int[] y, int used, boolean onBox) {
    if (used >= 2) {
      outlines.add(new Outline(Arrays.copyOf(x, used), Arrays.copyOf(y, used), onBox));
    }
  }

  /** Adds all outlines of another layer. */
  public void addAll(OutlineLayer other) {
    outlines.addAll(other.outlines);
  }

  /** The outlines in the order in which they were added. */
  public List<Outline> outlines() {
    return outlines;
  }

  int points() {
    return outlines.stream().mapToInt(o -> o.x.length).sum();
  }
}
