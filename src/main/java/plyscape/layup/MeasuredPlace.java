package plyscape.layup;

import plyscape.fault.Place;

/**
 * Ply bottoms measured at one place of the panel. Immutable.
 *
 * @param at the place
 * @param bottoms what was read there, not empty
 * @param tile name of the panel of a tiled job, or "" for any
 * @param where where the user gave it, for messages
 */
public record MeasuredPlace(PanelPoint at, Bottoms bottoms, String tile, Place where) {

  /** Checks that something was read. */
  public MeasuredPlace {
    if (bottoms.isEmpty()) {
      throw new IllegalArgumentException("nothing measured at " + at);
    }
  }
}
