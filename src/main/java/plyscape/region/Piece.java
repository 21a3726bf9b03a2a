package plyscape.region;

/**
 * A part of the map as it would have been before anything was given to a neighbour.
 *
 * @param source 0 for the terrain, i for the i-th zone
 * @param ply what it would have shown
 * @param area2 twice its area, square grid units
 * @param why it was given away, or null as long as it wasn't
 */
record Piece(int source, int ply, long area2, String why) {

  /** The same, given away; the first reason stays. */
  Piece given(String reason) {
    return why != null ? this : new Piece(source, ply, area2, reason);
  }
}
