package plyscape.simulate;

/**
 * A stroke that touched stock where it must not. Immutable.
 *
 * @param stroke its index
 * @param kind what touched
 * @param t how far along the stroke (0 to 1) it first touched, seen from above
 * @param depthMm how deep in the stock at worst
 */
record Contact(int stroke, Kind kind, double t, double depthMm) {

  /** What touched. */
  enum Kind {
    TOOL,
    /** Nothing, if the face is flat; nearer to it than it is flat. */
    FACE,
    SHANK,
    HOLDER
  }

  /** The same stroke and part, in another band of the panel. */
  Contact with(Contact other) {
    return new Contact(stroke, kind, Math.min(t, other.t), Math.max(depthMm, other.depthMm));
  }
}
