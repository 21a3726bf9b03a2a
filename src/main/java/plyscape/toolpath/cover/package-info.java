/**
 * Which stretches of rings a step needs, given what stands.
 *
 * <p>In: a step, its rings, and the panel as the steps before leave it ({@link
 * plyscape.toolpath.cover.PlannedFloor}, {@link plyscape.toolpath.cover.StepNodes}). Out: a {@link
 * plyscape.toolpath.cover.StepWork}, the pieces of the step, inner ones first.
 *
 * <p>Always true afterwards: every node that the step is to clear and that the cutter reaches is
 * under a piece, except what was given on purpose to a smaller cutter that follows ({@code
 * RestWorth}); no stretch is kept that clears next to nothing.
 *
 * <p>What nodes don't show, ledges and ridges of less than a lattice step, is kept beside them in
 * {@link plyscape.toolpath.cover.ThinParts}.
 *
 * <p>Whether something is reached is asked of {@link plyscape.toolpath.cover.Reach}, whether a wall
 * needs another round of {@code WallRest}. Says nothing about the order of pieces. Uses {@code
 * ring}, {@code depth} and what those use.
 */
package plyscape.toolpath.cover;
