package plyscape.bend;

import java.util.Objects;
import java.util.Optional;
import plyscape.layup.Depths;

/**
 * How one panel lies on the table and how its plies lie in it. Immutable.
 *
 * @param topMap its top face as probed, where it was
 * @param faceMm height of a flat panel's top face in the work coordinates of the map, mm
 * @param bend depths of the flat plan to depths of this panel; null where the two are the same
 */
public record PanelShape(Optional<TopMap> topMap, double faceMm, Bend bend) {

  /** Flat, and everywhere the same. */
  public static final PanelShape FLAT = new PanelShape(Optional.empty(), 0, null);

  /** Checks that a map comes with a bend. */
  public PanelShape {
    Objects.requireNonNull(topMap);
    if (topMap.isPresent() && bend == null) {
      throw new IllegalArgumentException("a map that bends nothing");
    }
  }

  /**
   * The shape of a panel.
   *
   * @param flat depths that the flat plan goes by
   * @param placed depths of this panel
   */
  public static PanelShape of(Optional<TopMap> topMap, double faceMm, Depths flat, Depths placed) {
    if (topMap.isEmpty() && !placed.byPlace()) {
      return FLAT;
    }
    TopFace top = topMap.map(map -> map.over(faceMm)).orElse(TopFace.FLAT);
    return new PanelShape(topMap, faceMm, Bend.of(flat, placed, top));
  }

  /** Whether the panel is flat and everywhere the same. */
  public boolean flat() {
    return bend == null;
  }

  /** Highest place of the top face over that of a flat panel, mm, at least 0. */
  public double risesMm() {
    return topMap.map(map -> Math.max(0, map.highMm() - faceMm)).orElse(0.0);
  }
}
