package plyscape.machine;

/**
 * How long a list of moves takes and how far it goes. Immutable but for the array, which callers
 * don't change.
 *
 * @param cutS seconds of all G1 G2 G3 moves
 * @param rapidS seconds of all G0 moves
 * @param cutMm length of all G1 G2 G3 moves, depth changes counted
 * @param rapidMm length of all G0 moves
 * @param moveS seconds of each move, in their order
 */
public record Times(double cutS, double rapidS, double cutMm, double rapidMm, double[] moveS) {

  /** All of it, s. */
  public double totalS() {
    return cutS + rapidS;
  }
}
