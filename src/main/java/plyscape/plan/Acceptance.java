package plyscape.plan;

/** What a user may take upon themselves, where a job would be refused otherwise. */
public enum Acceptance {
  /** A measured thickness far from the nominal total. */
  THICKNESS,
  /** A top face bent by more than is usual. */
  BEND,
  /**
   * Plies that stay uncut because no cutter reaches them, and cutters that stick out too little.
   */
  SHORT_FLUTES
}
