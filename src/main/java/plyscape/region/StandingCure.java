package plyscape.region;

import java.util.List;
import plyscape.grid.Box;
import plyscape.standing.StandingRule;
import plyscape.standing.Terrace;

/**
 * What is done about weak standing wood. Immutable.
 *
 * @param panel all wood, the border that is never cut included, panel mm
 * @param terraces the face of every ply of the layup
 * @param rule what is weak
 * @param kind what becomes of it
 */
public record StandingCure(Box panel, List<Terrace> terraces, StandingRule rule, Kind kind) {

  /** Ways to deal with weak parts. */
  public enum Kind {
    /** They stay. */
    TELL,
    /** They are given to the neighbour below. */
    CUT,
    /** Their walls are moved out to the least width. */
    WIDEN
  }

  /** Keeps its own list. */
  public StandingCure {
    terraces = List.copyOf(terraces);
  }
}
