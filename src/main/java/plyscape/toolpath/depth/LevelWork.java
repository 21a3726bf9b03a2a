package plyscape.toolpath.depth;

/**
 * What one cutter has to do at one pocket level, in seconds, for {@link DepthSequence}. Immutable.
 *
 * @param depthMm target depth of the level, positive down
 * @param fullS time of one cut at this level over all that the cutter reaches in the pocket, walls
 *     and entries included
 * @param exposedS time of one cut over what shows of this level only; 0 when nothing of it does
 */
public record LevelWork(double depthMm, double fullS, double exposedS) {

  /** Checks that all are finite and not negative. */
  public LevelWork {
    if (!(depthMm > 0)
        || !(fullS >= 0)
        || !(exposedS >= 0)
        || !Double.isFinite(depthMm + fullS + exposedS)) {
      throw new IllegalArgumentException(
          "bad level work: " + depthMm + " mm, " + fullS + " s, " + exposedS + " s");
    }
  }
}
