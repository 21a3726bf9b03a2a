package plyscape.layup;

/**
 * A place at which a plan is judged. Immutable.
 *
 * @param ply number of the ply that is to show
 * @param at where on the panel
 * @param cutMm depth to which it is cut there, or NaN for the ply's target
 * @param sanded whether sanding reaches it
 */
public record Spot(int ply, PanelPoint at, double cutMm, boolean sanded) {}
