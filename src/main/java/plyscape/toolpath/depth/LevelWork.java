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

  /**
   * How fast a cutter works.
   *
   * @param clearingMm2PerS ground cleared a second
   * @param wallMmPerS along walls, on top of clearing; infinite when the wall run is the last
   *     clearing ring
   * @param entryS seconds for each separate place: entry, travel there, starting and stopping
   */
  public record Rates(double clearingMm2PerS, double wallMmPerS, double entryS) {

    /**
     * Seconds for a place or places: area, length of its walls, count of separate places; 0 where
     * there is no area.
     */
    public double seconds(double areaMm2, double wallMm, int places) {
      return areaMm2 <= 0 ? 0 : areaMm2 / clearingMm2PerS + wallMm / wallMmPerS + places * entryS;
    }
  }
}
