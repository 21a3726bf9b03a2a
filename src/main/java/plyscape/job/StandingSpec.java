package plyscape.job;

import plyscape.job.yaml.Keys;

/**
 * What wood left standing has to be like, and what becomes of what is weaker. Immutable.
 *
 * @param leastWidthMm narrower fins and posts are weak
 * @param slenderness greatest height over width; common practice, no source
 * @param cure what becomes of weak parts
 */
public record StandingSpec(double leastWidthMm, double slenderness, Cure cure) {

  /** What becomes of weak parts. */
  public enum Cure {
    /** They stay, with a warning. */
    TELL,
    /** They go to the neighbour below. */
    CUT,
    /** Their walls move out to the least width. */
    WIDEN
  }

  /** What is asked of standing wood when nothing is set. */
  public static final StandingSpec USUAL = new StandingSpec(0.8, 2.5, Cure.TELL);

  /** Checks both numbers. */
  public StandingSpec {
    if (!(leastWidthMm >= 0) || !(slenderness > 0)) {
      throw new IllegalArgumentException(
          "no rule for standing wood: " + leastWidthMm + " mm, " + slenderness);
    }
  }

  /** Reads the key {@code standing} of a job. */
  static StandingSpec read(Keys job) {
    Keys keys = job.child("standing", "least_width", "slenderness", "cure");
    return new StandingSpec(
        keys.number("least_width", USUAL.leastWidthMm, Keys.Range.mm(0, 20)),
        keys.number("slenderness", USUAL.slenderness, Keys.Range.of(0.2, 50, "times")),
        keys.choice("cure", USUAL.cure, Cure.values()));
  }
}
