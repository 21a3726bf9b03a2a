package plyscape.standing;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Polygon;

/**
 * A fin or post that is likely to break. Immutable; the polygon is never changed.
 *
 * @param ply number of the ply on top of it
 * @param area where it stands, panel mm
 * @param at a place in the middle of it, panel mm
 * @param widthMm diameter of the largest disk that fits into it
 * @param heightMm from its face down to the deepest face beside it
 */
public record WeakPart(int ply, Polygon area, Coordinate at, double widthMm, double heightMm) {

  /** How many times taller than wide it is. */
  public double slenderness() {
    return heightMm / widthMm;
  }
}
