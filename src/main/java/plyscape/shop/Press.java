package plyscape.shop;

/** How the stack is pressed. */
public enum Press {
  /** A screw or jack press between platens. */
  JACKS,
  /** Thick boards and clamps. */
  CLAMPS,
  /** A bag: never more than the air's own 0.1013 MPa. */
  VACUUM;

  /** What a bag really gives, 0.08 to 0.095 (common practice). */
  static final double VACUUM_MPA = 0.09;
}
