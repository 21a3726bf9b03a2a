package plyscape.layup.calibration;

import plyscape.layup.LayerStack;
import plyscape.layup.PanelPoint;

/**
 * One reading of the depth of a ply's edge, off a test cut or the panel's edge. Immutable.
 *
 * @param row row of the file it stands in, from 1, for messages
 * @param top whether its top was read (where its colour begins), else its bottom
 * @param depthMm what was read, mm below the top face
 * @param toleranceMm plus or minus (3 sigma) of this reading alone, or 0 when not stated
 * @param at where on the panel, or null where that isn't known
 * @param cut whether it was read off a cut, whose zero all readings of the place share
 */
public record Reading(
    int row,
    int plyNumber,
    boolean top,
    double depthMm,
    double toleranceMm,
    PanelPoint at,
    boolean cut) {

  /** The same with a tolerance. */
  Reading within(double otherMm) {
    return new Reading(row, plyNumber, top, depthMm, otherMm, at, cut);
  }

  /** Interface of the layer stack that was read. */
  int interfaceIndex() {
    return top ? LayerStack.topOf(plyNumber) : LayerStack.bottomOf(plyNumber);
  }

  /** What was read, the same for readings that repeat each other. */
  ReadEdge edge() {
    return new ReadEdge(at, interfaceIndex());
  }

  /**
   * An edge at a place.
   *
   * @param at place or null
   * @param interfaceIndex of the layer stack
   */
  record ReadEdge(PanelPoint at, int interfaceIndex) {}
}
