package plyscape.report;

import plyscape.layup.PlyDepth;
import plyscape.layup.PlyShown;
import plyscape.text.Numbers;

/** What to make of a ply, in a few words. */
final class PlyVerdict {

  private PlyVerdict() {}

  /**
   * {@code reliable}, {@code thin by 0.05 mm} at its worst place, {@code thin where unsanded} (deep
   * enough once sanded, which may not reach all of it), or {@code not shown}.
   */
  static String of(PlyDepth depth, boolean shows) {
    if (!shows) {
      return "not shown";
    }
    if (depth.reliable()) {
      return "reliable";
    }
    PlyShown shown = depth.shown();
    double needed = shown == null ? depth.neededMm() : shown.neededWorstMm();
    double thin = Math.max(needed, depth.neededMm()) - depth.availableMm();
    if (thin > 0) {
      return "thin by " + Numbers.fixed(thin, 3) + " mm";
    }
    return shown != null && shown.unsandedShare() > 0 ? "thin where unsanded" : "thin in places";
  }
}
