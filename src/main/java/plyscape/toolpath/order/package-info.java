/**
 * The order of work: pieces of all steps of a cutter in one tour.
 *
 * <p>In: the pieces of a cutter, step by step, and where the machine stands. Out: the pieces one by
 * one ({@link plyscape.toolpath.order.PieceOrder}), open ones turned where that is shorter.
 *
 * <p>Always true afterwards: each piece comes once; nothing is cut before what {@code Precedence}
 * says must come earlier (what lies over it, the ring inside it, what surrounds a small island);
 * the tour is no longer than the best that was found by nearest neighbours and improved by moving
 * stretches, by themselves and after a shake ({@link plyscape.toolpath.order.TourOrder}); the same
 * input gives the same order.
 *
 * <p>The tour itself knows only points, costs and precedence ({@link
 * plyscape.toolpath.order.TourItem}, {@link plyscape.toolpath.order.TravelCost}). Uses {@code
 * cover} and what that uses, and the machine's rapids.
 */
package plyscape.toolpath.order;
