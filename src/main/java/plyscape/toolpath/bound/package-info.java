/**
 * What no plan can beat.
 *
 * <p>In: pockets and cutters; or stretches and a start. Out: {@link
 * plyscape.toolpath.bound.LowerBound}, s: the least time that clearing takes by area, whatever the
 * paths; {@link plyscape.toolpath.bound.TravelBound}, mm: the least rapid way that any order of
 * stretches needs.
 *
 * <p>Always true: no plan of the same pockets and cutters that keeps to the stepover is faster, no
 * order of the same stretches shorter. Neither looks at a plan. Uses {@code order} for points and
 * items.
 */
package plyscape.toolpath.bound;
