package plyscape.layup;

import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.text.Numbers;
import plyscape.text.Template;

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

  /**
   * Checks that the place lies on a panel.
   *
   * @throws InputFault if not
   */
  void requireOn(double widthMm, double heightMm) {
    if (!at.on(widthMm, heightMm)) {
      boolean swapped = new PanelPoint(at.yMm(), at.xMm()).on(widthMm, heightMm);
      throw new InputFault(
          where,
          Template.fill(
              "measured at %s, outside the panel of %.3t x %.3t mm", at, widthMm, heightMm),
          swapped
              ? "are x and y swapped?"
              : "places are mm from the panel's lower left corner; one in its waste may lie up to "
                  + Numbers.trimmed(PanelPoint.WASTE_MM, 0)
                  + " mm outside");
    }
  }
}
