/**
 * In which steps a cutter goes down.
 *
 * <p>In: depths of the levels, the seconds that each takes in full and as a band, what stands at
 * which depth (mm, positive down), the cutter's stepdown. Out: a {@link
 * plyscape.toolpath.depth.DepthPlan}, the steps from the top down, each with the level that bounds
 * it and the depth that it comes from.
 *
 * <p>Always true afterwards: no step goes farther below the one before it than the stepdown; every
 * level that is asked for is a step of its own; of all such sequences this one takes the least time
 * by area ({@link plyscape.toolpath.depth.DepthSequence}, exact).
 *
 * <p>Knows neither rings nor places. Uses {@code lattice} for what counts as one depth.
 */
package plyscape.toolpath.depth;
