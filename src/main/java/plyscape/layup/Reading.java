package plyscape.layup;

/**
 * One reading of the depth of a ply's edge, off a test cut or the panel's edge. Immutable.
 *
 * @param row row of the file it stands in, from 1, for messages
 * @param plyNumber the ply
 * @param top whether its top was read (where its colour begins), else its bottom
 * @param depthMm what was read, mm below the top face
 * @param toleranceMm plus or minus (3 sigma) of this reading, or 0 when not stated
 */
public record Reading(int row, int plyNumber, boolean top, double depthMm, double toleranceMm) {

  /** Interface of the layer stack that was read. */
  int interfaceIndex() {
    return top ? LayerStack.topOf(plyNumber) : LayerStack.bottomOf(plyNumber);
  }
}
