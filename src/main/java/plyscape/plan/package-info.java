/**
 * Runs the stages in order and holds the finished plan.
 *
 * <p>In: a checked {@link plyscape.job.Job}. Out: an immutable {@link plyscape.plan.Plan} with
 * depths, regions, G-code text, times and the outcome of the simulation. Lengths are mm on the
 * panel, depths positive down, times s, elevations m. Always true: the programs in a plan have been
 * parsed back from their text and simulated, and neither gouge nor collide; otherwise {@link
 * plyscape.fault.VerifyFault} is thrown. Uses every package from {@code layup} to {@code simulate};
 * nothing here writes files or prints.
 */
package plyscape.plan;
