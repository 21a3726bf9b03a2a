package plyscape.job;

/**
 * What is cut besides the landscape. Immutable.
 *
 * @param lettering letters and signs over all zones
 * @param pins holes, or null
 * @param outline along which the piece comes free, or null
 */
public record Additions(LetteringSpec lettering, PinsSpec pins, OutlineSpec outline) {

  /** Nothing. */
  public static final Additions NONE = new Additions(LetteringSpec.NONE, null, null);
}
