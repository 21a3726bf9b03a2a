package plyscape.toolpath.cutout;

/**
 * How a piece is cut free. Immutable.
 *
 * @param depthMm of the cut: the panel's thickness and what goes into the spoil board
 * @param allowanceMm left between the line and the cut
 * @param tabs how many hold the piece
 * @param tabWidthMm wood of a tab along the line
 * @param tabTopMm depth of the tabs' tops
 */
public record OutlineForm(
    double depthMm, double allowanceMm, int tabs, double tabWidthMm, double tabTopMm) {

  /** Checks ranges. */
  public OutlineForm {
    if (!(depthMm > 0)
        || !(allowanceMm >= 0)
        || tabs < 0
        || !(tabWidthMm > 0)
        || !(tabTopMm >= 0 && tabTopMm < depthMm)) {
      throw new IllegalArgumentException("outline form out of range");
    }
  }
}
