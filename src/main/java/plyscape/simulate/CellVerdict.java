package plyscape.simulate;

/** What is so about a cell after the cut; stored as {@link #code()} in arrays for pictures. */
public enum CellVerdict {
  /** Depth within 0.01 mm of the target, or outside the carved area and untouched. */
  AS_PLANNED,
  /** Cut too deep, more than 0.02 mm beyond any place that is to be so deep. */
  GOUGED,
  /** Left too high where a listed cutter can reach, more than 0.05 mm off the pocket's wall. */
  UNCUT,
  /** Left too high where no listed cutter can reach. */
  UNREACHABLE,
  /** Too deep or too high within what is allowed along a wall. */
  WALL;

  /** Number in arrays. */
  public byte code() {
    return (byte) ordinal();
  }
}
