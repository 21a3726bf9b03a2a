package plyscape.report;

import plyscape.layup.PlyDepth;
import plyscape.text.Numbers;

/** What to make of a ply, in a few words. */
final class PlyVerdict {

  private PlyVerdict() {}

  /** {@code reliable}, {@code thin by 0.05 mm}, or {@code not shown}. */
  static String of(PlyDepth depth, boolean shows) {
    if (!shows) {
      return "not shown";
    }
    return depth.reliable()
        ? "reliable"
        : "thin by " + Numbers.fixed(depth.neededMm() - depth.availableMm(), 3) + " mm";
  }
}
