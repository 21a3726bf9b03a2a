/**
 * Runs the stages in order and holds what they came to.
 *
 * <p>In: a checked {@link plyscape.job.Job}. Out: an immutable {@link plyscape.plan.Plan}, a type a
 * state: a {@link plyscape.plan.Landscape} is depths and regions, a {@link plyscape.plan.PanelPlan}
 * adds the G-code text, times and the outcome of the simulation; {@link
 * plyscape.plan.TiledLandscape} and {@link plyscape.plan.TiledPlan} are the same of several panels.
 * Lengths are mm on the panel, depths positive down, times s, elevations m. Always true: the
 * programs in a plan have been parsed back from their text and simulated, and neither gouge nor
 * collide; otherwise {@link plyscape.fault.VerifyFault} is thrown. Uses every package from {@code
 * layup} to {@code simulate}; nothing here writes files or prints.
 */
package plyscape.plan;
