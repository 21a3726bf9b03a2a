package plyscape.terrain;

import plyscape.fault.JobFault;
import plyscape.fault.Warnings;
import plyscape.job.GroundCover.Voids;
import plyscape.text.Numbers;
import plyscape.text.Template;

/** Says what becomes of ground that has no value, and refuses to make up most of a landscape. */
public final class VoidCheck {

  /** A panel of which more is made up than known isn't what was meant. */
  private static final double MOST_SHARE = 0.5;

  private static final String CURE =
      "terrain.voids: leave (not cut), a ply's name, or fill if it is meant";

  private VoidCheck() {}

  /**
   * Adds warnings.
   *
   * @throws JobFault if more than half of the carved ground has no value and nobody said what to do
   */
  public static void check(Terrain terrain, Voids rule, Warnings warnings) {
    VoidCells voids = terrain.voids();
    if (voids.mask() == null) {
      return;
    }
    String share = Numbers.fixed(100 * voids.share(), voids.share() < 0.1 ? 1 : 0) + " %";
    boolean unsaid = rule.rule() == Voids.Rule.FILL_SMALL;
    if (unsaid && voids.share() > MOST_SHARE) {
      throw new JobFault(
          share + " of the carved ground has no value in " + terrain.file(),
          "crop to where the raster has values, or set " + CURE);
    }
    if (unsaid && !voids.small()) {
      warnings.add(
          "voids-large",
          Template.fill(
              "%s of the carved ground has no value%s, and is filled from around as if it were real"
                  + " land (hatched in the picture); set %s",
              share, voids.deep() ? ", some of it far from any that has" : "", CURE),
          terrain.file());
    } else if (unsaid || rule.rule() == Voids.Rule.FILL) {
      warnings.add(
          "voids-filled",
          voids.count() == 0
              ? share + " of the carved ground lies beyond the raster and was filled from its edge"
              : voids.count() + " void cells in the crop were filled from around them",
          terrain.file());
    }
  }
}
