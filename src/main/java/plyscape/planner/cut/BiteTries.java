package plyscape.planner.cut;

import java.util.HashMap;
import java.util.Map;
import plyscape.simulate.Bite;

/**
 * Which bites are worth mending once more: one that stays as deep at its place after it was mended
 * isn't for long, as each time adds ways over all that the time before added.
 */
final class BiteTries {

  /** Times that a bite may stay as it is. */
  private static final int MOST_IN_VAIN = 2;

  /** Bites shallower by less are the same, mm. */
  private static final double SAME_MM = 0.001;

  /** The last bite of each program, and how often it stayed. */
  private record Last(Bite bite, int inVain) {}

  private final Map<String, Last> last = new HashMap<>();

  /** Whether to mend the deepest bite that a simulation found in a program. */
  boolean worthwhile(Bite bite) {
    Last before = last.get(bite.file());
    int inVain = before != null && stays(before.bite(), bite) ? before.inVain() + 1 : 0;
    last.put(bite.file(), new Last(bite, inVain));
    return inVain <= MOST_IN_VAIN;
  }

  private static boolean stays(Bite before, Bite now) {
    return Math.abs(before.x() - now.x()) < SAME_MM
        && Math.abs(before.y() - now.y()) < SAME_MM
        && now.biteMm() > before.biteMm() - SAME_MM;
  }
}
