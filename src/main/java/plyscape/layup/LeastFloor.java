package plyscape.layup;

/**
 * Wood left under the cut where it is least. Immutable.
 *
 * @param floorMm how much
 * @param at where
 * @param cutMm depth to which it is cut there
 */
public record LeastFloor(double floorMm, PanelPoint at, double cutMm) {}
