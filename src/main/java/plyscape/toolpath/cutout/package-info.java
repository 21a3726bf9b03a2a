/**
 * What is cut besides the pockets: holes for pins, and the outline by which the piece comes free.
 *
 * <p>In: places and sizes on the panel, mm, depths positive down; one flat cutter, the machine.
 * Out: passes that start and end at safe height, and the area that they are allowed to cut. Always
 * true afterwards: no move bites deeper than the cutter's stepdown; ramps and helices are no
 * steeper than the machine's ramp angle and go down no faster than the cutter's plunge feed;
 * outside an outline's tabs its whole kerf is cut to the depth asked for.
 *
 * <p>Uses {@code toolpath.task}, {@code machine}; writes no text.
 */
package plyscape.toolpath.cutout;
